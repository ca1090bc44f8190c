/** Words for many sheep. Common practice, no source. Nobody calls one animal so. */
const many = new Set(
  "animals barn batch ewes everybody everyone everything field flock gimmers group head hoggets hoggs hogs lambs meadow mob ones others paddock pen rams rest shed sheep shearlings stores tegs theaves triplets tups twins wedders wethers whole yearlings".split(
    " ",
  ),
);

/** What may stand beside them. */
const beside = new Set(
  "all bottom bought breeding cull culled draft ewe far fat female finished home in lamb lame left lot low lower male near new of old other our pet present ram right stock store the them these those top treated twin upper weaned x young".split(
    " ",
  ),
);

/** Whatever follows such a word, it is no one animal. */
const manyBegin = /^(?:all|both|every|many|mixed|most|several|some|various|a few|few|the lot)(?![^\s,.:;])/;

/**
 * Whether a text names a number or a group of animals where the tag of one should stand: "23 lambs", "all ewes", "whole
 * flock", "all", "top field". Words behind a tag, as in "042 ewe", are no such thing.
 *
 * @example
 * isNumberOfAnimals("23 lambs") // → true
 * isNumberOfAnimals("all in field 3") // → true
 * isNumberOfAnimals("042 ewe") // → false
 */
export function isNumberOfAnimals(text: string): boolean {
  const small = text.trim().toLowerCase();
  if (manyBegin.test(small)) return true;
  const words = small.match(/\p{L}+|\d+/gu) ?? [];
  const number = words.findIndex((word) => /^\d{1,5}$/.test(word));
  const named = words.filter((_, place) => place !== number);
  return named.some((word) => many.has(word)) && named.every((word) => many.has(word) || beside.has(word));
}
