import { caseTableFunction } from "../../functions/animals/caseTable.ts";
import { repeatAnimalsFunction } from "../../functions/animals/repeatAnimals.ts";
import { saleCheckFunction } from "../../functions/dates/saleCheck.ts";
import { recordCheckFunction } from "../../functions/records/recordCheck.ts";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { medianTimes } from "./medianTimes.ts";
import type { BenchReport } from "./report.ts";
import { showRatio, showTime } from "./show.ts";

const records = 100_000;
const animals = 20_000;

/** Reading 100,000 case records, against one bare pass over the same rows. */
export async function bench(): Promise<BenchReport> {
  const { tags, dates, days, rows } = recordColumns();
  const sale = Array.from({ length: 2000 }, (_, index): Cell[] => [tagOf(index * 11)]);
  const calls = {
    CASETABLE: answered(caseTableFunction, [tags, dates]),
    REPEATS: answered(repeatAnimalsFunction, [tags, dates]),
    SALECHECK: answered(saleCheckFunction, [sale, dayOf("2026-06-01"), tags, dates, days]),
    RECORDCHECK: answered(recordCheckFunction, [[headings], rows, dayOf("2027-01-01")]),
  };
  const times = await medianTimes({ bare: () => barePass(tags, dates), ...calls }, 3000);
  return {
    title: "100,000 case records",
    rows: (Object.keys(calls) as (keyof typeof calls)[]).map((name) => ({
      function: name,
      time: showTime(times[name]),
      "time, bare pass = 1": showRatio(times[name], times.bare),
    })),
    notes: [
      `${records.toLocaleString("en-GB")} records of ${animals.toLocaleString("en-GB")} invented animals, in no order, as a worksheet hands them over; SALECHECK with 2,000 sale tags, RECORDCHECK over ${headings.length} columns. Reading and checking every cell is in the time.`,
      `The bare pass looks each row's tag up in a Map and keeps its latest date: ${showTime(times.bare)}.`,
    ],
  };
}

/** A call that must succeed, so that a refusal is not taken for speed. */
const answered = (definition: AnyFunction, given: Parameters<typeof evaluate>[1]) => () => {
  const outcome = evaluate(definition, given);
  if (!outcome.ok) throw new Error(`${definition.name}: ${outcome.message}`);
  return outcome;
};

function barePass(tags: readonly (readonly Cell[])[], dates: readonly (readonly Cell[])[]): Map<Cell, number> {
  const latest = new Map<Cell, number>();
  for (let row = 0; row < tags.length; row++) {
    const tag = tags[row]?.[0] ?? null;
    const date = dates[row]?.[0] as number;
    const before = latest.get(tag);
    if (before === undefined || date > before) latest.set(tag, date);
  }
  return latest;
}

const tagOf = (animal: number): string => `ZZ 0 ${100_000 + (animal % 7)} ${String(animal % animals).padStart(5, "0")}`;

const headings = [
  "Tag",
  "Seen lame",
  "Treated",
  "Foot",
  "Lesion",
  "Score",
  "Medicine",
  "Dose ml",
  "Withdrawal",
  "Recheck",
];
const feet = ["LF", "RF", "LH", "RH", "LF, RH"] as const;
const lesions = ["footrot", "scald", "CODD", "WLA", "foot rot"] as const;

function recordOf(row: number): Cell[] {
  const seen = dayOf("2025-01-01") + ((row * 104_729) % 541);
  const word = row % 5;
  const medicine = `medicine ${row % 3}`;
  const ml = 4 + (row % 50) / 10;
  const tag = tagOf((row * 7919) % animals);
  return [tag, seen, seen + (row % 2), feet[word] ?? null, lesions[word] ?? null, word, medicine, ml, 28, seen + 8];
}

function recordColumns() {
  const first = dayOf("2025-01-01");
  const rows = Array.from({ length: records }, (_, row) => row);
  return {
    // Built anew for each row, as a workbook's cells are: equal tags are equal text, not the same object.
    tags: rows.map((row): Cell[] => [tagOf((row * 7919) % animals)]),
    dates: rows.map((row): Cell[] => [first + ((row * 104_729) % 500)]),
    rows: rows.map(recordOf),
    days: rows.map((row): Cell[] => [row % 3 === 0 ? 28 : 35]),
  };
}
