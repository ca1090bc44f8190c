import { dayOf } from "../../cells/day.ts";
import { nameKey } from "../../core/words/nameKey.ts";
import { notCounted } from "../../workbooks/collate/doneFigure.ts";
import type { FlockDone } from "../../workbooks/collate/flockDone.ts";
import type { FlockRecord } from "../../workbooks/collate/flockRecord.ts";
import type { FlockGather, FlockYear } from "../../workbooks/comparison/comparisonContent.ts";
import type { FlockPageContent, PageLine } from "../../workbooks/flockPage/flockPageContent.ts";
import { type PageFlock, pagesOfRound } from "../../workbooks/flockPage/flockPages.ts";
import type { Compared, ComparedLine } from "./countFlocks.ts";
import type { GatherDays } from "./flockTally.ts";
import { letterFlocks } from "./letterFlocks.ts";

interface PagesWanted {
  readonly made: string;
  /** The share to stay below, for flocks without a target of their own. */
  readonly target: number;
  readonly pages: ReadonlySet<number>;
  readonly books: ReadonlyMap<string, FlockRecord>;
}

/**
 * The pages of the flocks asked for: each names its own flock, and the others go by letters.
 *
 * @param compared - one line a flock, with the names of the flocks
 */
export function comparedPages(
  compared: Compared,
  { made, target, pages, books }: PagesWanted,
): readonly FlockPageContent[] {
  const { year, lines, gathersOf } = compared;
  const letterOf = new Map(letterFlocks(compared).key.map(([letter, flock]) => [flock, letter]));
  const flocks = lines.map((line, flock): PageFlock => {
    const { leftOut, share } = line;
    const done = compared.done[flock];
    return {
      flock: line.flock,
      letter: letterOf.get(line.flock) ?? "",
      leftOut,
      noShare: share === undefined ? `no gather of ${year} can be counted` : undefined,
      done: typeof done === "string" ? unknownDone(line, done) : undefined,
    };
  });
  const content = {
    made,
    invented: false,
    year,
    target,
    flocks: lines.map((line, flock) => flockYear(line, year, gathersOf.get(flock), books.get(nameKey(line.flock)))),
    done: compared.done.map((done) => (typeof done === "string" ? noneKnown : done)),
    chosen: undefined,
    books: [],
  };
  return pagesOfRound(content, flocks, year, pages);
}

function flockYear(
  { flock, lookedAt, lame, cases }: ComparedLine,
  year: number,
  all: GatherDays = { days: [], seen: [], lame: [] },
  book: FlockRecord | undefined,
): FlockYear {
  const [from, next] = [dayOf(`${year - 1}-01-01`), dayOf(`${year + 1}-01-01`)];
  const gathers = all.days
    .map((day, index): FlockGather => ({ day, lookedAt: all.seen[index] ?? 0, lame: all.lame[index] ?? 0 }))
    .filter(({ day }) => day >= from && day < next);
  const before = gathers.filter(({ day }) => day < dayOf(`${year}-01-01`));
  const sum = (key: "lookedAt" | "lame") =>
    before.length === 0 ? undefined : before.reduce((total, gather) => total + gather[key], 0);
  return {
    flock,
    lookedAt,
    lame,
    lookedAtBefore: sum("lookedAt"),
    lameBefore: sum("lame"),
    gathers,
    cases,
    antibioticMg: undefined,
    breedingSheep: book?.breedingSheep,
    slaughterLambs: book?.slaughterLambs,
    target: book?.target,
    note: undefined,
  };
}

const notKnown = notCounted("");

const noneKnown: FlockDone = {
  newCases: notKnown,
  inTime: notKnown,
  sound: notKnown,
  lesions: [],
  withoutLesion: 0,
  mgPcu: notKnown,
  inNoCase: 0,
};

function unknownDone({ cases }: ComparedLine, why: string): readonly PageLine[] {
  const not = (label: string): PageLine => ({
    label,
    value: undefined,
    look: "besidePercent",
    words: `not counted: ${why}`,
  });
  return [
    {
      label: "Cases that began in the year",
      value: cases,
      look: "besideCount",
      words:
        cases === undefined ? "not counted: there are no case records of this flock" : "of all animals of the flock",
    },
    not("Treated in time, sound, lesions"),
    not("Antibiotics, mg/PCU"),
  ];
}
