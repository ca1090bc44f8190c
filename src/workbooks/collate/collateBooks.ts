import { nameKey } from "../../core/words/nameKey.ts";
import { columnLetters } from "../../workbook/address.ts";
import type { BookLine, ComparisonContent, FlockYear } from "../comparison/comparisonContent.ts";
import { usualTarget } from "../usualTarget.ts";
import { type FlockDone, flockDone } from "./flockDone.ts";
import { type FlockRecord, isUnwritten, type YearRecord } from "./flockRecord.ts";

/** One file: what was read out of it, or why it cannot be used. */
export interface ReadBook {
  readonly file: string;
  readonly read: FlockRecord | { readonly reason: string };
}

interface Wanted {
  /** Left out: the latest year in which more than half of the books have gathers. */
  readonly year: number | undefined;
  /** Whether flocks are named by letters only, and files not at all. */
  readonly letters: boolean;
  readonly made: string;
  /** Left out: 2 %. A flock with a target of its own keeps it. */
  readonly target?: number | undefined;
}

interface Usable {
  readonly file: string;
  readonly flock: string;
  readonly record: FlockRecord;
}

/** A flock of the comparison, with what only its own page may say. */
interface CollatedFlock extends Usable {
  /** By which the pages of the others, and a comparison that names none, call it. */
  readonly letter: string;
}

export interface Collated {
  readonly content: ComparisonContent;
  /** In the order of the flocks of the content. */
  readonly flocks: readonly CollatedFlock[];
  readonly year: number;
  /** A line a file, by the names of the files, whatever the workbook says. */
  readonly books: readonly BookLine[];
  /** Which flock each letter stands for; empty where flocks are named. */
  readonly key: readonly Pick<CollatedFlock, "letter" | "flock" | "file">[];
}

/**
 * Puts the flocks of many books side by side for one year.
 *
 * @returns undefined when no book has a gather in any year, or in the year wanted
 */
export function collateBooks(
  read: readonly ReadBook[],
  { year: wantedYear, letters, made, target }: Wanted,
): Collated | undefined {
  const usable = read.flatMap(({ file, read: record }): readonly Usable[] =>
    "reason" in record ? [] : [{ file, flock: record.flock ?? file.replace(/\.[^.]*$/, ""), record }],
  );
  const year = wantedYear ?? usualYear(usable);
  if (year === undefined) return undefined;
  const chosen = withoutTwins(usable.filter(({ record }) => (record.years.get(year)?.gathers ?? 0) > 0));
  if (chosen.size === 0) return undefined;
  const lettered = [...chosen.values()].sort(byFigures((book: Usable) => shownFigures(book, year)));
  const letterOf = new Map(lettered.map(({ file }, index) => [file, columnLetters(index)]));
  const inOrder = letters ? lettered : [...chosen.values()].sort(byName);
  const books = read.map((book) => lineFor(book, usable, chosen, year));
  const flocks = inOrder.map((book) => ({ ...book, letter: letterOf.get(book.file) ?? "" }));
  return {
    year,
    books,
    flocks,
    key: letters ? flocks.map(({ letter, flock, file }) => ({ letter, flock, file })) : [],
    content: {
      made,
      invented: false,
      year,
      target: target ?? usualTarget,
      flocks: flocks.map(({ record, letter, flock }) => flockYear(record, year, letters ? letter : flock)),
      done: inOrder.map(({ record }) => flockDone(record, year)),
      chosen: undefined,
      books: letters ? withoutNames(books, letterOf) : books,
    },
  };
}

function usualYear(usable: readonly Usable[]): number | undefined {
  const counts = new Map<number, number>();
  for (const { record } of usable)
    for (const [year, { gathers }] of record.years) if (gathers > 0) counts.set(year, (counts.get(year) ?? 0) + 1);
  const common = [...counts].filter(([, count]) => count * 2 > usable.length).map(([year]) => year);
  const years = common.length > 0 ? common : [...counts.keys()];
  return years.length === 0 ? undefined : Math.max(...years);
}

// Of two books of one flock the one written in last stands.
function withoutTwins(usable: readonly Usable[]): ReadonlyMap<string, Usable> {
  const chosen = new Map<string, Usable>();
  for (const book of usable) {
    const other = chosen.get(nameKey(book.flock));
    if (!other || book.record.latest > other.record.latest) chosen.set(nameKey(book.flock), book);
  }
  return chosen;
}

// Farm 2 before Farm 10, and letters with accents among the others; the same on every machine.
const order = new Intl.Collator("en", { numeric: true });

const byName = (one: Usable, other: Usable): number => order.compare(nameKey(one.flock), nameKey(other.flock));

/** In the order of the first figure in which two differ. */
const byFigures =
  <T>(figuresOf: (item: T) => readonly (number | undefined)[]) =>
  (one: T, other: T): number => {
    const others = figuresOf(other);
    const differences = figuresOf(one).map((figure, index) => (figure ?? -1) - (others[index] ?? -1));
    return differences.find((difference) => difference !== 0) ?? 0;
  };

// Letters in the order of the names would tell too much, even among flocks of one share. This is all that is shown of a
// flock, so two that are equal in it could change places without a difference.
const shownFigures = (book: Usable, year: number): readonly (number | undefined)[] => [
  shareIn(book, year),
  ...Object.values(flockYear(book.record, year, "")).filter(
    (figure) => typeof figure === "number" || figure === undefined,
  ),
  ...[year, year - 1].flatMap((of) => countsIn(book.record.years.get(of))),
  book.record.records,
  book.record.toMend,
  usedWords(book.record) === "" ? 0 : 1,
  ...doneNumbers(flockDone(book.record, year)),
];

/** On which days they were is not shown. */
const countsIn = ({ days = new Map() }: Partial<YearRecord> = {}): readonly number[] => [
  days.size,
  ...[...days.values()]
    .map(({ lookedAt, lame }) => [lookedAt, lame] as const)
    .sort(([seen, lame], [otherSeen, otherLame]) => seen - otherSeen || lame - otherLame)
    .flat(),
];

function doneNumbers({ newCases, inTime, sound, mgPcu, lesions, withoutLesion, inNoCase }: FlockDone) {
  const figures = [newCases, inTime, sound, mgPcu].flatMap(({ value, low, high, of, words, leftOut }) => [
    value,
    low,
    high,
    of,
    leftOut,
    ...spelled(words),
  ]);
  const mix = lesions.flatMap(({ name, cases }) => [cases, ...spelled(name)]);
  return [withoutLesion, inNoCase, ...figures, lesions.length, ...mix];
}

/** A text as numbers, the length first, so that two lists of figures part before one ends. */
const spelled = (text: string): readonly number[] => [
  text.length,
  ...Array.from(text, (letter) => letter.codePointAt(0) ?? 0),
];

function shareIn({ record }: Usable, year: number): number {
  const { lame = 0, lookedAt = 0 } = record.years.get(year) ?? {};
  return lookedAt === 0 ? 0 : lame / lookedAt;
}

function flockYear(record: FlockRecord, year: number, flock: string): FlockYear {
  const now = record.years.get(year);
  const before = record.years.get(year - 1);
  const hadGathers = before !== undefined && before.gathers > 0;
  return {
    flock,
    lookedAt: now?.lookedAt,
    lame: now?.lame,
    lookedAtBefore: hadGathers ? before.lookedAt : undefined,
    lameBefore: hadGathers ? before.lame : undefined,
    gathers: [before, now].flatMap((of) => Array.from(of?.days ?? [], ([day, counts]) => ({ day, ...counts }))),
    cases: now?.cases === 0 ? undefined : now?.cases,
    // A course without a day may be of this year.
    antibioticMg: record.coursesWithoutDay > 0 || isUnwritten(now) ? undefined : now?.antibioticMg,
    breedingSheep: record.breedingSheep,
    slaughterLambs: record.slaughterLambs,
    target: record.target,
    note: undefined,
  };
}

function lineFor(
  { file, read }: ReadBook,
  usable: readonly Usable[],
  chosen: ReadonlyMap<string, Usable>,
  year: number,
): BookLine {
  if ("reason" in read)
    return { file, flock: undefined, used: false, records: undefined, toMend: undefined, words: read.reason };
  const book = usable.find((candidate) => candidate.file === file);
  const flock = book?.flock ?? file;
  const standing = chosen.get(nameKey(flock));
  const common = { file, flock, records: read.records, toMend: read.toMend };
  if (standing?.file === file) return { ...common, used: true, words: usedWords(read) };
  const words =
    (read.years.get(year)?.gathers ?? 0) === 0
      ? `No gathers in ${year} in it.`
      : `The same flock as ${standing?.file}, whose gathers go on as long or longer; give two flocks two names in their settings.`;
  return { ...common, used: false, words };
}

const shown = 3;

/** The first of what was left out, and how many more there are. */
export const leftOutWords = (leftOut: readonly string[]): string =>
  `${leftOut.slice(0, shown).join("; ")}${leftOut.length > shown ? `; and ${leftOut.length - shown} more` : ""}`;

function usedWords({ leftOut, flock }: FlockRecord): string {
  const named = flock === undefined ? ["No farm is named in its settings, so it goes by the name of the file."] : [];
  const left = leftOut.length === 0 ? [] : [`Left out: ${leftOutWords(leftOut)}.`];
  return [...named, ...left].join(" ");
}

/** The lines without what gives a farm away: the names of its file, and the place that such a name has among others. */
function withoutNames(lines: readonly BookLine[], letterOf: ReadonlyMap<string, string>): readonly BookLine[] {
  const lineOf = new Map(lines.map((line) => [line.file, line]));
  const used = [...letterOf.keys()].flatMap((file) => lineOf.get(file) ?? []);
  const others = lines.filter((line) => !line.used).sort(byFigures(({ records, toMend }) => [records, toMend]));
  return [...used, ...others].map((line) => unnamed(line, letterOf.get(line.file)));
}

// Even the name of a sheet can give a farm away, so what was found in a file is said on the screen only.
const unnamed = (line: BookLine, letter: string | undefined): BookLine => ({
  ...line,
  file: "not named",
  flock: line.used ? letter : undefined,
  words: line.used
    ? line.words && "Something was left out: collate has said what."
    : "It could not be used: collate has said why.",
});
