/** Words for many sheep. Common practice, no source. Nobody calls one animal so. */
const many = new Set(
  "animals batch ewes flock gimmers group head hoggets hoggs hogs lambs mob rams sheep shearlings stores tegs theaves tups wedders wethers yearlings".split(
    " ",
  ),
);

/** What may stand beside them. */
const beside = new Set(
  "all breeding cull culled draft ewe fat female finished in lamb lame male old of other our pet ram rest stock store the treated weaned whole young".split(
    " ",
  ),
);

/**
 * Whether a text names a number or a group of animals where the tag of one should stand: "23 lambs", "all ewes", "whole
 * flock". Words behind a tag, as in "042 ewe", are no such thing.
 *
 * @example
 * isNumberOfAnimals("23 lambs") // → true
 * isNumberOfAnimals("042 ewe") // → false
 */
export function isNumberOfAnimals(text: string): boolean {
  const words = text.toLowerCase().match(/\p{L}+|\d+/gu) ?? [];
  const [first = ""] = words;
  const named = /^\d{1,5}$/.test(first) ? words.slice(words[1] === "x" ? 2 : 1) : words;
  return named.some((word) => many.has(word)) && named.every((word) => many.has(word) || beside.has(word));
}
