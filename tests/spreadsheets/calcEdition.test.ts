import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import { placeText } from "../../src/workbook/address.ts";
import type { ComparisonContent, FlockYear } from "../../src/workbooks/comparison/comparisonContent.ts";
import { emptyComparison } from "../../src/workbooks/comparison/emptyComparison.ts";
import { flockComparison } from "../../src/workbooks/comparison/flockComparison.ts";
import { inventedComparison } from "../../src/workbooks/comparison/inventedComparison.ts";
import {
  sheetNames as comparisonNames,
  placedComparison,
  roomFor,
} from "../../src/workbooks/comparison/placedComparison.ts";
import type { BookContent } from "../../src/workbooks/footBook/bookContent.ts";
import { sheetNames } from "../../src/workbooks/footBook/bookSheets.ts";
import { emptyBook } from "../../src/workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { placedCases, placedGathers } from "../../src/workbooks/footBook/placedRecords.ts";
import { onDay } from "../../src/workbooks/onDay.ts";
import type { RecordOf } from "../../src/workbooks/tables/defineTable.ts";
import type { visitGroups, weighed } from "../../src/workbooks/tables/visitTables.ts";
import { emptyVisit } from "../../src/workbooks/visitSheet/emptyVisit.ts";
import {
  placedFound,
  placedGroups,
  placedWeighed,
  sheetNames as visitNames,
} from "../../src/workbooks/visitSheet/placedVisit.ts";
import { visitSheet } from "../../src/workbooks/visitSheet/visitSheet.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import type { PlacedTable } from "../../src/workbooks/writing/placeTable.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import type { CalcVersion } from "./calcProgram.ts";
import { differences, identical } from "./differences.ts";
import { type Calc, startCalc, type Typed } from "./startCalc.ts";

const made = "2026-06-30";
const asOf = dayOf(made);

/** Records as a person types them, cell by cell. */
const typing = <K extends string>(
  sheet: string,
  placed: PlacedTable<K>,
  records: readonly Readonly<Partial<Record<K, Cell | undefined>>>[],
): readonly Typed[] =>
  records.flatMap((record, index) =>
    (Object.entries(record) as [K, Cell | undefined][]).flatMap(([key, value]): Typed[] => {
      const { top: row, left: column } = placed.column(key);
      return value === undefined || value === null
        ? []
        : [[sheet, placeText({ row: row + index, column }), value as number | string]];
    }),
  );

/** Sixty cases of forty animals: treated or not, looked at again or not, with days, without, and in words. */
const cases: BookContent["cases"] = Array.from({ length: 60 }, (_, index) => {
  const seen = asOf - 75 + index;
  return {
    seen,
    ...(index % 7 === 3 ? {} : { treated: seen + (index % 3) }),
    tag: `ZZ 0123456 ${String((index % 40) + 1).padStart(5, "0")}`,
    group: index % 2 === 0 ? "Ewes" : "Tups",
    foot: "LF",
    lesion: (["footrot", "scald", "white line abscess", "CODD"] as const)[index % 4],
    treatment: "injection",
    ...(index % 5 === 0 ? { withdrawalDays: index % 10 === 0 ? 60 : undefined } : { withdrawalDays: 28 }),
    ...(index % 2 === 0 ? { lookedAgain: seen + 9, soundOn: seen + 9 } : {}),
    ...(index === 50 ? { withdrawalDays: "not known" } : {}),
  };
});
const gathers: BookContent["gathers"] = ["2026-04-10", "2026-05-10", "2026-06-10"].flatMap((day, index) => [
  { date: dayOf(day), group: "Ewes", lookedAt: 100 + index, lame: 6 - index },
  { date: dayOf(day), group: "Tups", lookedAt: 12, lame: index },
]);

const empty = emptyBook({ made });
const filled: BookContent = { ...empty, asOf, cases, gathers };
const bookTyped: readonly Typed[] = [
  [sheetNames.settings, "B5", asOf],
  ...typing(sheetNames.gathers, placedGathers, gathers),
  ...typing(sheetNames.cases, placedCases, cases),
];

const weights: readonly RecordOf<typeof weighed>[] = Array.from({ length: 70 }, (_, index) => ({
  animal: `04${index + 100}`,
  kg: 45 + index,
}));
const groups: readonly RecordOf<typeof visitGroups>[] = [{ group: "Ewes", sheep: 120, lookedAt: 80, lame: 6 }];
const found = [
  { lesion: "footrot", cases: 4, severe: "yes" },
  { lesion: "white line abscess", cases: 2 },
];
const medicine = { name: "invented", mgPerKg: 20, mgPerMl: 200, mostPerSite: 5, bottleMl: 50, route: "under the skin" };
const visitDay = dayOf("2026-06-01");
const visit = {
  ...emptyVisit({ made }),
  day: visitDay,
  groups,
  found,
  weighed: weights,
  medicine: { ...medicine, withdrawalDays: 28 },
};
const visitTyped: readonly Typed[] = [
  [visitNames.visit, "B5", visitDay],
  ...typing(visitNames.visit, placedGroups, groups),
  ...typing(visitNames.visit, placedFound, found),
  ...[medicine.name, 20, 200, 5, 50, medicine.route, 28].map(
    (value, index): Typed => [visitNames.doses, `B${4 + index}`, value],
  ),
  ...typing(visitNames.doses, placedWeighed, weights),
];

// One flock too few of which is known stands among them.
const flocks: readonly FlockYear[] = inventedComparison(7)
  .flocks.slice(0, 10)
  .map((flock, index) => (index === 3 ? { ...flock, lame: undefined } : flock));
const emptyRound = emptyComparison({ made });
const { flocks: placedFlocks, gathers: placedFlockGathers } = placedComparison(roomFor(emptyRound));
const chosen = flocks[4]?.flock ?? "";
const round: ComparisonContent = { ...emptyRound, year: 2026, flocks, chosen };
const roundTyped: readonly Typed[] = [
  [comparisonNames.flocks, "B4", 2026],
  [comparisonNames.one, "B3", chosen],
  ...typing(
    comparisonNames.flocks,
    placedFlocks,
    flocks.map(({ gathers: _, ...flock }) => flock),
  ),
  ...typing(
    comparisonNames.gathers,
    placedFlockGathers,
    flocks.flatMap(({ flock, gathers: those = [] }) =>
      those.map(({ day: date, ...counts }) => ({ flock, date, ...counts })),
    ),
  ),
];

const books = [
  {
    name: "Flock foot book",
    plan: () => flockFootBook(empty, "libreoffice"),
    whole: () => flockFootBook(filled),
    typed: bookTyped,
  },
  {
    name: "Visit sheet",
    plan: () => visitSheet(emptyVisit({ made }), "libreoffice"),
    whole: () => visitSheet(visit),
    typed: visitTyped,
  },
  {
    name: "Flock comparison",
    plan: () => flockComparison(emptyRound, "libreoffice"),
    whole: () => flockComparison(round),
    typed: roundTyped,
  },
] as const;

describe.each(books)("the empty $name for LibreOffice, filled there", ({ name, plan, whole, typed }) => {
  let book: Uint8Array;
  let expected: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    book = (await onDay(asOf, () => workedOut(plan()))).bytes;
    const cells = sheetCells((await onDay(asOf, () => workedOut(whole()))).bytes);
    // The first sheet tells one edition from the other.
    expected = new Map([...cells].filter(([address]) => !address.startsWith("Start!")));
  });

  describe.each<CalcVersion>(["7.4", "25.2"])("version %s", (version) => {
    let calc: Calc;
    beforeAll(async () => {
      calc = await startCalc(version);
    });
    afterAll(() => calc.stop());

    it("gives every answer that the edition for Excel gives when it is worked out", async () => {
      const path = join(calc.folder, `${name}.xlsx`);
      writeFileSync(path, book);
      const { Start, ...sheets } = (await calc.readTyped(path, typed)).sheets;
      expect(expected.size).toBeGreaterThan(500);
      expect(Start?.flat().join(" ")).not.toMatch(/Not installed|Not worked out/);
      // The sheet for Excel was made with its weights, and has them all on paper.
      const told = differences(sheets, expected, identical);
      expect(told.filter((line) => !line.includes("Printed up to row"))).toEqual([]);
    });
  });
});

describe("a list that is longer than its room", () => {
  it("fills its room and says in the last row how many lines more there are, here and there", async () => {
    const many = Array.from({ length: 1100 }, (_, index) => ({
      seen: asOf - 3,
      treated: asOf - 3,
      tag: `ZZ 0123456 ${String(index + 1).padStart(5, "0")}`,
      withdrawalDays: 28,
    }));
    const { bytes } = await onDay(asOf, () => workedOut(flockFootBook({ ...filled, cases: many }, "libreoffice")));
    const saved = sheetCells(bytes);
    expect(saved.get(`${sheetNames.today}!A1006`)).toBe("ZZ 0123456 00999");
    expect(saved.get(`${sheetNames.today}!A1007`)).toBe("and 101 more");
    expect(saved.get(`${sheetNames.today}!A4`)).toBe("999 waiting, 0 not known, and 101 more");
    const calc = await startCalc("25.2");
    try {
      const path = join(calc.folder, "many.xlsx");
      writeFileSync(path, bytes);
      // Typed into, it is worked out there.
      const { sheets } = await calc.readTyped(path, [[sheetNames.settings, "B5", asOf]]);
      const listed = (sheets[sheetNames.today] ?? []).slice(7).map(([cell]) => cell);
      expect(listed.slice(0, 999)).toEqual(many.slice(0, 999).map(({ tag }) => tag));
      expect(listed[999]).toBe("and 101 more");
      expect(sheets[sheetNames.today]?.[3]?.[0]).toBe("999 waiting, 0 not known, and 101 more");
    } finally {
      await calc.stop();
    }
  });
});
