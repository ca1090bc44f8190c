import { type Cell, isBlankCell, showCell } from "../../cells/cell.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { cases } from "../../core/animals/cases.ts";
import { fieldReader } from "../../core/records/fieldChecks.ts";
import { recordCheck } from "../../core/records/recordCheck.ts";
import { cases as casesTable } from "../tables/cases.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { medicines as medicinesTable } from "../tables/settingsTables.ts";
import { type CareYear, type CaseRow, careByYear, type WrittenDay } from "./careByYear.ts";
import { dayReader } from "./dayReader.ts";
import { cellUnder, type FoundRecords } from "./findRecords.ts";

/** The columns without which cases and medicines say nothing. */
export const neededInCases = ["seen", "tag"] as const satisfies readonly KeyOf<typeof casesTable>[];
export const neededInMedicines = ["medicine", "mgPerMl", "antibiotic"] as const satisfies readonly KeyOf<
  typeof medicinesTable
>[];

type DayKey = "seen" | "treated" | "soundOn" | "leftFlock";

/** One course of an antibiotic; the mg are undefined where the book does not say how much or how strong. */
interface Course {
  readonly day: number;
  readonly mg: number | undefined;
}

interface CaseReading {
  /** The first day of each case. */
  readonly begun: readonly number[];
  readonly courses: readonly Course[];
  /** Courses of antibiotic without a day that can be read. */
  readonly coursesWithoutDay: number;
  /** What was done about the cases, by the year in which they began. */
  readonly care: ReadonlyMap<number, CareYear>;
  /** Rows without a tag or a day that can be read, which are in no case. */
  readonly inNoCase: number;
  /** Findings of the check of the records. */
  readonly findings: number;
}

export interface CaseOptions {
  readonly asOf: number | undefined;
  readonly dayOffset: number;
  readonly gapDays: number;
}

/** Reads the cases and what was given for them. */
export function readCases(
  { headings, rows }: FoundRecords,
  medicines: FoundRecords | undefined,
  options: CaseOptions,
): CaseReading {
  const under = cellUnder(casesTable, headings);
  const strengthOf = strengths(medicines);
  const ofAnimals: CaseRow[] = [];
  let inNoCase = 0;
  const courses: Course[] = [];
  let coursesWithoutDay = 0;
  const readDay = dayReader(options.dayOffset);
  const readTag = fieldReader("tag", options);
  const written = (cells: readonly Cell[], key: DayKey): WrittenDay =>
    isBlankCell(under(cells, key)) ? undefined : (dayUnder(cells, key) ?? "unread");
  const dayUnder = (cells: readonly Cell[], key: DayKey) => readDay(under(cells, key));
  for (const { cells } of rows) {
    const treated = dayUnder(cells, "treated");
    const seen = dayUnder(cells, "seen") ?? treated;
    const key = readTag(under(cells, "tag")).value;
    if (seen !== undefined && typeof key === "string") {
      const lesion = under(cells, "lesion");
      ofAnimals.push({
        tag: { key, shown: key },
        day: seen,
        seen: written(cells, "seen"),
        treated: written(cells, "treated"),
        soundOn: written(cells, "soundOn"),
        leftOn: written(cells, "leftFlock"),
        lesion: isBlankCell(lesion) ? undefined : showCell(lesion),
      });
    } else if (!isBlankCell(under(cells, "tag")) || isBlankCell(under(cells, "group"))) inNoCase++;
    const given = under(cells, "medicine");
    const on = treated ?? seen;
    if (isBlankCell(given)) continue;
    const strength = strengthOf(String(given));
    if (strength === "no antibiotic") continue;
    if (on === undefined) {
      coursesWithoutDay++;
      continue;
    }
    const ml = numberIn(under(cells, "ml"));
    // A whole group: each of its animals was given the ml.
    const animals = isBlankCell(under(cells, "tag")) ? (numberIn(under(cells, "animals")) ?? 1) : 1;
    courses.push({ day: on, mg: ml === undefined || strength === undefined ? undefined : ml * strength * animals });
  }
  const { findings } = recordCheck(
    headings,
    rows.map(({ cells }) => cells),
    options,
  );
  return {
    begun: Array.from(
      cases(
        ofAnimals.map(({ tag }) => tag),
        ofAnimals.map(({ day }) => day),
        options.gapDays,
      ),
      ({ first }) => first,
    ),
    care: careByYear(ofAnimals, options.gapDays, options.asOf),
    inNoCase,
    courses,
    coursesWithoutDay,
    findings: findings.length,
  };
}

const plain = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();

// What is not said to be no antibiotic counts as one, as the book itself counts it.
function strengths(medicines: FoundRecords | undefined): (name: string) => number | "no antibiotic" | undefined {
  const known = new Map<string, number | "no antibiotic" | undefined>();
  const under = cellUnder(medicinesTable, medicines?.headings ?? []);
  for (const { cells } of medicines?.rows ?? []) {
    const [name, strength, antibiotic] = neededInMedicines.map((key) => under(cells, key));
    if (isBlankCell(name)) continue;
    const isNone = typeof antibiotic === "string" && plain(antibiotic) === "no";
    known.set(plain(String(name)), isNone ? "no antibiotic" : numberIn(strength ?? null));
  }
  return (name) => known.get(plain(name));
}
