import { type RecordField, recordField } from "../../core/records/recordFields.ts";
import { cases } from "../tables/cases.ts";
import type { KeyOf, Table } from "../tables/defineTable.ts";
import { gathers } from "../tables/gathers.ts";

type CaseKey = KeyOf<typeof cases>;
type GatherKey = KeyOf<typeof gathers>;

/** Where each column goes: a key of the table, the note, or nowhere since the person said so. */
export type Goes<K extends string> = K | "to the note" | "left out";

export type Matched =
  | { readonly kind: "cases"; readonly columns: readonly Goes<CaseKey>[] }
  | { readonly kind: "gathers"; readonly columns: readonly Goes<GatherKey>[] };

/** Headings of their own by what the person says they mean: a heading of the book, or "-" to leave the column out. */
export type Matches = ReadonlyMap<string, string>;

/** Headings are compared without capitals and needless spaces. */
export const plainHeading = (heading: string): string => heading.trim().replace(/\s+/g, " ").toLowerCase();

/** What RECORDCHECK reads, by where it stands in the book. A day that a treatment began is not that of the last dose. */
const keyOfField: Readonly<Partial<Record<RecordField, CaseKey>>> = {
  tag: "tag",
  group: "group",
  "number treated": "animals",
  "seen lame": "seen",
  treated: "treated",
  "sound on": "soundOn",
  "left flock": "leftFlock",
  lesion: "lesion",
  foot: "foot",
  score: "score",
  product: "medicine",
  batch: "batch",
  dose: "ml",
  "withdrawal days": "withdrawalDays",
  recheck: "recheckDue",
  "looked again": "lookedAgain",
};

/** How the columns of a gather are called beside the headings of the book: common practice, no source. */
const gatherWords: Readonly<Record<string, GatherKey>> = {
  day: "date",
  "date of gather": "date",
  "gather date": "date",
  mob: "group",
  seen: "lookedAt",
  "sheep seen": "lookedAt",
  "number seen": "lookedAt",
  "sheep looked at": "lookedAt",
  "number looked at": "lookedAt",
  "lame sheep": "lame",
  "number lame": "lame",
  notes: "note",
};

const noteWords: ReadonlySet<string> = new Set(["note", "notes", "remark", "remarks", "comment", "comments"]);

/**
 * What the columns under a heading row are: the headings of the foot book first, then those the person explained, then
 * those that RECORDCHECK knows. Of two columns for the same thing the first stands, and the other goes to the note.
 *
 * @returns undefined where the headings are neither those of cases nor those of gathers
 * @example
 * matchHeadings(["Date", "Seen", "Lame"], new Map())?.kind // → "gathers"
 */
export function matchHeadings(headings: readonly string[], matches: Matches): Matched | undefined {
  const ofGathers = keysOf(gathers, headings, matches, (heading) => gatherWords[plainHeading(heading)]);
  const hasGather = (key: GatherKey): boolean => ofGathers.includes(key);
  const ofCases = keysOf(cases, headings, matches, caseKey);
  const has = (key: CaseKey): boolean => ofCases.includes(key);
  if (hasGather("date") && hasGather("lookedAt") && hasGather("lame") && !has("tag"))
    return { kind: "gathers", columns: ofGathers };
  const ofWhom = has("tag") || (has("group") && has("animals"));
  return ofWhom && (has("seen") || has("treated")) ? { kind: "cases", columns: ofCases } : undefined;
}

function caseKey(heading: string): CaseKey | undefined {
  const field = recordField(heading);
  return noteWords.has(plainHeading(heading)) ? "note" : field && keyOfField[field];
}

function keysOf<K extends string>(
  table: Table<K>,
  headings: readonly string[],
  matches: Matches,
  otherwise: (heading: string) => K | undefined,
): readonly Goes<K>[] {
  const known = new Map(table.keys.map((key) => [plainHeading(table.columns[key].heading), key]));
  const taken = new Set<K>();
  const found: Goes<K>[] = new Array(headings.length).fill("to the note");
  const take = (keyFor: (heading: string) => K | "left out" | undefined): void =>
    headings.forEach((heading, index) => {
      if (found[index] !== "to the note" || heading === "") return;
      const key = keyFor(heading);
      if (key === undefined || (key !== "left out" && taken.has(key))) return;
      if (key !== "left out") taken.add(key);
      found[index] = key;
    });
  // What the person says goes before what is guessed, and the book's own headings before similar ones.
  take((heading) => {
    const meant = matches.get(plainHeading(heading));
    return meant === "-" ? "left out" : meant === undefined ? undefined : known.get(plainHeading(meant));
  });
  take((heading) => (matches.has(plainHeading(heading)) ? undefined : known.get(plainHeading(heading))));
  take((heading) => (matches.has(plainHeading(heading)) ? undefined : otherwise(heading)));
  return found;
}
