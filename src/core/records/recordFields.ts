/** What a column of a treatment record holds. */
export const recordFields = [
  "tag",
  "seen lame",
  "treated",
  "sound on",
  "left flock",
  "lesion",
  "foot",
  "score",
  "weight",
  "product",
  "dose",
  "withdrawal days",
  "clear date",
  "recheck",
] as const;

export type RecordField = (typeof recordFields)[number];

/**
 * The words by which a heading is known. Common practice, no source. A heading is read from the longest words down, so
 * "withdrawal end" is a clear date and "date seen lame" is not taken for a treatment date.
 */
const words: Readonly<Record<RecordField, readonly string[]>> = {
  tag: ["ear tag", "tag", "eid", "animal id", "animal number", "sheep id"],
  "seen lame": ["seen lame", "date seen", "first seen", "found lame", "lame on", "lame since"],
  treated: ["treated", "date treated", "treatment date", "date of treatment", "last dose", "date given"],
  "sound on": ["sound on", "date sound", "sound since", "recovered", "healed"],
  "left flock": ["left flock", "left the flock", "date left", "date sold"],
  lesion: ["lesion", "diagnosis", "foot problem", "condition", "disease"],
  foot: ["foot", "feet", "leg"],
  score: ["locomotion score", "lameness score", "lesion score", "score"],
  weight: ["weight"],
  product: ["product", "medicine", "drug"],
  dose: ["dose", "volume", "amount given", "ml given"],
  "withdrawal days": ["withdrawal", "withdrawal days", "withdrawal period"],
  "clear date": ["clear date", "clear on", "withdrawal end", "withdrawal ends", "withdrawal until", "safe from"],
  recheck: ["recheck", "check again", "look again", "second look", "next look", "review date"],
};

/** Words that say enough only when they are the whole heading: a date of birth is no treatment date. */
const wholeHeadings: Readonly<Record<string, RecordField>> = {
  animal: "tag",
  ewe: "tag",
  sheep: "tag",
  date: "treated",
  day: "treated",
  seen: "seen lame",
  sound: "sound on",
  "left on": "left flock",
  "sold on": "left flock",
  "died on": "left flock",
  "culled on": "left flock",
  kg: "weight",
  ml: "dose",
  clear: "clear date",
};

// What is said about a thing is not the thing: the batch of a product, the day on which a second look was done.
const others = [
  "batch",
  "done",
  "note",
  "notes",
  "remark",
  "remarks",
  "comment",
  "comments",
  "supplier",
  "price",
  "cost",
  "by",
  "per",
  "birth",
];

const plain = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .replace(/\bre check/, "recheck")
    .trim();

const longestFirst = recordFields
  .flatMap((field) => words[field].map((word) => ({ field, word: ` ${word} ` })))
  .sort((a, b) => b.word.length - a.word.length);

/**
 * What a column holds, by its heading; undefined when the heading says nothing that is known.
 *
 * @example
 * recordField("Ear tag No.") // → "tag"
 * recordField("Withdrawal (days)") // → "withdrawal days"
 * recordField("Date of birth") // → undefined
 */
export function recordField(heading: string): RecordField | undefined {
  const read = plain(heading);
  if (Object.hasOwn(wholeHeadings, read)) return wholeHeadings[read];
  const parts = new Set(read.split(" "));
  if (others.some((word) => parts.has(word))) return undefined;
  return longestFirst.find(({ word }) => ` ${read} `.includes(word))?.field;
}
