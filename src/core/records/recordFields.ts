/** What a column of a treatment record holds. */
export const recordFields = [
  "tag",
  "group",
  "number treated",
  "seen lame",
  "treatment started",
  "treated",
  "sound on",
  "left flock",
  "lesion",
  "reason",
  "foot",
  "score",
  "weight",
  "product",
  "batch",
  "dose",
  "withdrawal days",
  "clear date",
  "recheck",
  "looked again",
] as const;

export type RecordField = (typeof recordFields)[number];

/**
 * The words by which a heading is known: common practice, no source, and those of the medicine record that the law asks
 * for (Regulation (EU) 2019/6, Article 108, and the medicine books printed for it; read). A heading is read from the
 * longest words down, so "withdrawal end" is a clear date and "date seen lame" is not taken for a treatment date. The
 * withdrawal period runs from the last dose, so the day a treatment finished is "treated" and the day it started is not.
 */
const words: Readonly<Record<RecordField, readonly string[]>> = {
  tag: [
    "ear tag",
    "tag",
    "eid",
    "animal id",
    "animal number",
    "sheep id",
    "identity",
    "identity of animal",
    "identity of animals",
    "identity of animal treated",
    "identity of animals treated",
    "identification",
    "identification of animals treated",
    "animal treated",
    "animals treated",
  ],
  group: ["group", "mob", "group name", "management group", "class of stock", "class of sheep"],
  "number treated": [
    "number treated",
    "no treated",
    "nos treated",
    "number of animals",
    "number of animals treated",
    "no of animals",
    "no of animals treated",
    "number of sheep",
    "number of sheep treated",
    "number in group",
  ],
  "seen lame": ["seen lame", "date seen", "first seen", "found lame", "lame on", "lame since"],
  "treatment started": [
    "treatment started",
    "treatment start",
    "start of treatment",
    "date started",
    "start date",
    "first dose",
    "first treatment",
  ],
  treated: [
    "treated",
    "date treated",
    "treatment date",
    "date of treatment",
    "last dose",
    "last treatment",
    "date given",
    "date of administration",
    "date administered",
    "treatment finished",
    "treatment finish",
    "treatment ended",
    "end of treatment",
    "date finished",
    "finish date",
  ],
  "sound on": ["sound on", "date sound", "sound since", "recovered", "healed"],
  "left flock": ["left flock", "left the flock", "date left", "date sold"],
  lesion: ["lesion", "diagnosis", "foot problem", "condition", "disease"],
  reason: ["reason", "reason for treatment", "reason for use"],
  foot: ["foot", "feet", "leg"],
  score: ["locomotion score", "lameness score", "lesion score", "score"],
  weight: ["weight"],
  product: ["product", "medicine", "drug"],
  batch: ["batch", "batch of product", "batch of medicine", "product batch", "medicine batch"],
  dose: ["dose", "volume", "amount given", "ml given"],
  "withdrawal days": ["withdrawal", "withdrawal days", "withdrawal period", "wd", "wd days", "wd period"],
  "clear date": [
    "clear date",
    "clear on",
    "withdrawal end",
    "withdrawal ends",
    "withdrawal ended",
    "withdrawal until",
    "withdrawal expires",
    "withdrawal period end",
    "withdrawal period ends",
    "withdrawal period ended",
    "withdrawal period until",
    "withdrawal period expires",
    "end of withdrawal",
    "end of withdrawal period",
    "wd end",
    "wd ends",
    "wd ended",
    "wd until",
    "end of wd",
    "safe from",
  ],
  recheck: ["recheck", "check again", "look again", "second look", "next look", "review date"],
  "looked again": ["looked again", "looked at again", "checked again", "rechecked", "seen again"],
};

/** Words that say enough only when they are the whole heading: a date of birth is no treatment date. */
const wholeHeadings: Readonly<Record<string, RecordField>> = {
  animal: "tag",
  animals: "number treated",
  ewe: "tag",
  sheep: "tag",
  date: "treated",
  day: "treated",
  seen: "seen lame",
  started: "treatment started",
  finished: "treated",
  sound: "sound on",
  "left on": "left flock",
  "sold on": "left flock",
  "died on": "left flock",
  "culled on": "left flock",
  kg: "weight",
  ml: "dose",
  clear: "clear date",
};

// What is said about a thing is not the thing: the price of a product, the day on which a second look was done.
const others = [
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
  "quantity",
  "total",
  "expiry",
  "person",
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
