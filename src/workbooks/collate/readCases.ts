import { type Cell, isBlankCell } from "../../cells/cell.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { cases } from "../../core/episodes/cases.ts";
import { fieldReader } from "../../core/records/fieldChecks.ts";
import { recordCheck } from "../../core/records/recordCheck.ts";
import type { Tag } from "../../core/tags/tagKey.ts";
import type { caseHeadings, medicineHeadings } from "../footBook/bookTables.ts";
import { cellUnder, type FoundRecords } from "./findRecords.ts";

type CaseHeading = (typeof caseHeadings)[number];
type MedicineHeading = (typeof medicineHeadings)[number];

export const neededInCases = ["Seen lame", "Tag"] as const satisfies readonly CaseHeading[];
export const neededInMedicines = ["Medicine", "mg per ml", "Antibiotic"] as const satisfies readonly MedicineHeading[];

/** One course of an antibiotic; the mg are undefined where the book does not say how much or how strong. */
interface Course {
  readonly day: number;
  readonly mg: number | undefined;
}

interface CaseReading {
  /** The first day of each case. */
  readonly begun: readonly number[];
  readonly courses: readonly Course[];
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
  const under: (cells: readonly Cell[], heading: CaseHeading) => Cell = cellUnder(headings);
  const strengthOf = strengths(medicines);
  const tags: Tag[] = [];
  const days: number[] = [];
  const courses: Course[] = [];
  const readDay = fieldReader("treated", { asOf: undefined, dayOffset: options.dayOffset });
  const readTag = fieldReader("tag", options);
  const dayUnder = (cells: readonly Cell[], heading: CaseHeading): number | undefined => {
    const { value } = readDay(under(cells, heading));
    return typeof value === "number" ? Math.floor(value) : undefined;
  };
  for (const { cells } of rows) {
    const treated = dayUnder(cells, "Treated");
    const seen = dayUnder(cells, "Seen lame") ?? treated;
    const key = readTag(under(cells, "Tag")).value;
    if (seen !== undefined && typeof key === "string") {
      tags.push({ key, shown: key });
      days.push(seen);
    }
    const given = under(cells, "Medicine");
    const on = treated ?? seen;
    if (isBlankCell(given) || on === undefined) continue;
    const strength = strengthOf(String(given));
    if (strength === "no antibiotic") continue;
    const ml = numberIn(under(cells, "Dose ml"));
    courses.push({ day: on, mg: ml === undefined || strength === undefined ? undefined : ml * strength });
  }
  const { findings } = recordCheck(
    headings,
    rows.map(({ cells }) => cells),
    options,
  );
  return {
    begun: Array.from(cases(tags, days, options.gapDays), ({ first }) => first),
    courses,
    findings: findings.length,
  };
}

const plain = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();

// What is not said to be no antibiotic counts as one, as the book itself counts it.
function strengths(medicines: FoundRecords | undefined): (name: string) => number | "no antibiotic" | undefined {
  const known = new Map<string, number | "no antibiotic" | undefined>();
  const under = cellUnder(medicines?.headings ?? []);
  for (const { cells } of medicines?.rows ?? []) {
    const [name, strength, antibiotic] = neededInMedicines.map((heading) => under(cells, heading));
    if (isBlankCell(name)) continue;
    const isNone = typeof antibiotic === "string" && plain(antibiotic) === "no";
    known.set(plain(String(name)), isNone ? "no antibiotic" : numberIn(strength ?? null));
  }
  return (name) => known.get(plain(name));
}
