import type ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import { columnLetters } from "../../src/workbook/address.ts";
import { firstRecord, sheetNames } from "../../src/workbooks/footBook/bookSheets.ts";
import { placedCases } from "../../src/workbooks/footBook/placedRecords.ts";
import { cases as casesTable } from "../../src/workbooks/tables/cases.ts";
import type { KeyOf, RecordOf } from "../../src/workbooks/tables/defineTable.ts";
import { emptyFootBook, type TypedBook } from "./typedFootBook.ts";

/** The letters of a column that is worked out beside the typed ones. */
const workedLetters = (index: number): string => columnLetters(casesTable.keys.length + index);

const asOf = dayOf("2026-06-30");
const firstSeen = dayOf("2026-04-01");
const lesions = ["footrot", "scald", "white line abscess", "CODD"];
const tagOf = (animal: number): string => `ZZ 0123456 ${String(animal).padStart(5, "0")}`;

/** Fifty cases, one a day, of 25 animals: each is lame twice, 25 days apart. The first ten of them got medicine. */
const typed = (index: number): RecordOf<typeof casesTable> => {
  const seen = firstSeen + index;
  return {
    seen,
    treated: seen,
    tag: tagOf((index % 25) + 1),
    group: "Ewes",
    foot: "LF",
    lesion: lesions[index % 4] as string,
    score: 3,
    treatment: index >= 40 ? "injection" : "spray",
    ...(index >= 40 ? { medicine: "own medicine", ml: 5, withdrawalDays: 60 } : { withdrawalDays: 0 }),
    ...(index < 45 ? { lookedAgain: seen + 7, soundOn: seen + 5 } : {}),
  };
};

function typeFarm({ sheet }: TypedBook): void {
  const settings = sheet(sheetNames.settings);
  const fields: Readonly<Record<string, Cell>> = {
    B4: "Test farm",
    B5: asOf,
    B14: 300,
    B15: 200,
    A20: "Ewes",
    B20: 120,
  };
  const medicine: Readonly<Record<string, Cell>> = { A36: "own medicine", B36: 100, C36: 10, D36: 60, E36: "yes" };
  for (const [address, value] of Object.entries({ ...fields, ...medicine }))
    settings.getCell(address).value = value as ExcelJS.CellValue;
  [
    ["2026-04-10", 100, 6],
    ["2026-05-10", 110, 4],
    ["2026-06-10", 105, 3],
  ].forEach(([day, lookedAt, lame], index) => {
    const row = sheet(sheetNames.gathers).getRow(firstRecord + 1 + index);
    [dayOf(String(day)), "Ewes", lookedAt, lame].forEach((value, column) => {
      row.getCell(column + 1).value = value as ExcelJS.CellValue;
    });
  });
  sheet(sheetNames.sale).getCell("A8").value = tagOf(20);
  sheet(sheetNames.sale).getCell("A9").value = tagOf(1);
}

async function worked(book: TypedBook): Promise<ReadonlyMap<string, Cell>> {
  const { cells, summary } = await book.worked();
  expect(summary.left).toEqual([]);
  expect(summary.errors.filter(({ sheet }) => sheet !== sheetNames.picture)).toEqual([]);
  return cells;
}

const listed = (cells: ReadonlyMap<string, Cell>, sheet: string, column: string, from: number): Cell[] => {
  const found: Cell[] = [];
  for (let row = from; cells.has(`${sheet}!${column}${row}`); row++)
    found.push(cells.get(`${sheet}!${column}${row}`) as Cell);
  return found;
};

describe("fifty cases typed into the empty book", () => {
  let cells: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    const typing = await emptyFootBook();
    typeFarm(typing);
    // Thirty one under the other, a line left free, and the rest further down: all inside the table.
    for (let index = 0; index < 50; index++)
      typing.typeCase(firstRecord + 1 + index + (index < 30 ? 0 : 1), typed(index));
    cells = await worked(typing);
  }, 300_000);

  test("are each worked out beside their row", () => {
    const first = firstRecord + 1;
    const rowOf = (index: number): number => first + index + (index < 30 ? 0 : 1);
    for (const index of [0, 29, 30, 49]) {
      const { treated } = typed(index);
      const days = index >= 40 ? 61 : 0;
      expect(cells.get(`Cases!${workedLetters(0)}${rowOf(index)}`)).toBe(Number(treated) + days);
      expect(cells.get(`Cases!${workedLetters(1)}${rowOf(index)}`)).toBe(Number(treated) + 7);
      expect(cells.get(`Cases!${workedLetters(3)}${rowOf(index)}`)).toBe(index < 25 ? 1 : 2);
    }
    expect(cells.has(`Cases!${workedLetters(0)}${first + 30}`)).toBe(false);
  });

  test("fill every list", () => {
    expect(listed(cells, "Today", "A", 8)).toHaveLength(10);
    expect(cells.get("Today!A8")).toBe(tagOf(25));
    expect(listed(cells, "Today", "F", 8)).toEqual(["nothing is due"]);
    expect(listed(cells, "Today", "K", 8)).toHaveLength(5);
    expect(cells.get("Today!N8")).toBe("38 days overdue".replace("38", String(asOf - (firstSeen + 45 + 7))));
    expect(listed(cells, "Today", "P", 8)).toHaveLength(25);
    expect(new Set(listed(cells, "Today", "Q", 8))).toEqual(new Set([2]));
    expect(cells.get("May they go!E8")).toBe("hold");
    expect(cells.get("May they go!E9")).toBe("clear");
    expect(cells.get("May they go!A4")).toBe("2 tags: 1 may go, 1 may not, 0 in no record");
    expect(listed(cells, "Keep apart", "A", 8)).toHaveLength(5);
    expect(cells.get("Gathers!H6")).toBe(13);
    expect(cells.get("Picture!A4")).toBe(3 / 105);
    expect(listed(cells, "Picture", "A", 46).slice(0, 3)).toEqual(
      ["2026-04-01", "2026-05-01", "2026-06-01"].map(dayOf),
    );
    // Every fourth of fifty, the first two kinds once more.
    expect(listed(cells, "Picture", "I", 46)).toEqual([13, 13, 12, 12]);
    expect(listed(cells, "Picture", "H", 46).slice(0, 2).sort()).toEqual(["footrot", "interdigital dermatitis"]);
    // 45 of 50 were sound five days after treatment, and none was lost from sight before.
    expect(cells.get("Picture!H4")).toBeCloseTo(45 / 50, 12);
    expect(cells.get("Medicine use!B8")).toBe(10);
    expect(cells.get("Medicine use!D8")).toBe(10 * 5 * 100);
    // 75 kg for each of 300 breeding sheep and 20 kg for each of 200 lambs.
    expect(cells.get("Medicine use!E8")).toBeCloseTo((10 * 5 * 100) / (300 * 75 + 200 * 20), 12);
    expect(cells.get("Problems!A3")).toBe(0);
    expect(cells.get("Start!A2")).toBe("Test farm");
    const newCases = Array.from({ length: 12 }, (_, month) => Number(cells.get(`Picture!X${month + 5}`)));
    expect(newCases).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 30, 20, 0]);
  });
});

test("cases typed below the end of the table are told, not dropped in silence", async () => {
  const end = firstRecord + casesTable.room;
  const typing = await emptyFootBook();
  typeFarm(typing);
  typing.typeCase(firstRecord + 1, typed(0));
  for (let index = 1; index < 4; index++) typing.typeCase(end + index, typed(index + 40));
  const below = await worked(typing);
  expect(Number(below.get("Problems!A3"))).toBeGreaterThan(0);
  expect(listed(below, "Today", "A", 8)).toEqual(["every animal is clear"]);
}, 300_000);

test("a treatment of a whole group holds what may be of it, counts for each of its animals, and is no case", async () => {
  const typing = await emptyFootBook();
  typeFarm(typing);
  typing.typeCase(firstRecord + 1, typed(0));
  const lambs = { treated: asOf - 5, group: "Lambs", animals: 23, medicine: "own medicine", ml: 2, withdrawalDays: 28 };
  for (const [key, value] of Object.entries(lambs) as [KeyOf<typeof casesTable>, Cell][])
    typing.sheet(sheetNames.cases).getCell(firstRecord + 2, placedCases.column(key).left + 1).value =
      value as ExcelJS.CellValue;
  const cells = await worked(typing);
  expect(cells.get("Today!A8")).toBe("every animal of group Lambs");
  expect(cells.get("Today!B8")).toBe(asOf - 5 + 28 + 1);
  expect(cells.get("May they go!E8")).toBe("hold");
  // Two of 23 lambs and nothing else: 23 courses of 2 ml with 100 mg in each.
  expect(cells.get("Medicine use!D8")).toBe(23 * 2 * 100);
  expect(listed(cells, "Today", "F", 8)).toEqual(["nothing is due"]);
  expect(listed(cells, "Today", "K", 8)).toEqual(["nothing is due"]);
  expect(cells.get(`Cases!${workedLetters(0)}${firstRecord + 2}`)).toBe(asOf - 5 + 28 + 1);
  expect(cells.has(`Cases!${workedLetters(2)}${firstRecord + 2}`)).toBe(false);
}, 300_000);

test("what is in no total of medicines is told, and so is an injection whose ml were forgotten", async () => {
  const typing = await emptyFootBook();
  typeFarm(typing);
  for (const index of [40, 41, 42]) typing.typeCase(firstRecord + 1 + index - 40, typed(index));
  const cases = typing.sheet(sheetNames.cases);
  const cell = (key: KeyOf<typeof casesTable>, row: number) =>
    cases.getCell(firstRecord + row, placedCases.column(key).left + 1);
  // A spray, and an injection without its ml.
  cell("treatment", 2).value = "spray";
  for (const row of [2, 3]) cell("ml", row).value = null;
  const cells = await worked(typing);
  expect(cells.get("Medicine use!A4")).toBe(
    "2 treatments with an antibiotic have no ml, such as sprays, and are in no total here.",
  );
  expect(cells.get("Medicine use!B8")).toBe(1);
  expect(cells.get("Problems!C10")).toBe("Cases with an injection of a medicine, but no ml");
  expect([cells.get("Problems!A10"), cells.get("Problems!B10")]).toEqual([1, firstRecord + 3]);
}, 300_000);
