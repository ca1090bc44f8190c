import { expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import type { Cell, Cells, ErrorCode } from "../../../../src/cells/cell.ts";
import { dayOf, days1904 } from "../../../../src/cells/day.ts";
import { refusal } from "../../../../src/hosts/excel/refusal.ts";
import type { Found } from "../../../../src/pages/parts/explain/cellsGiven.ts";
import { explainFormula } from "../../../../src/pages/parts/explain/explainFormula.ts";
import { sentenceFor } from "../../../../src/pages/parts/explain/sentenceFor.ts";

const refuses = refusal(catalogue);
const column = (...cells: Cell[]): Cells => cells.map((cell) => [cell]);
const found: Found = new Map([
  ["B2:B4", { address: "Gathers!B2:B4", cells: column(3, 21, 2) }],
  ["C2:C4", { address: "Gathers!C2:C4", cells: column(20, 20, 20) }],
]);
const days = { today: dayOf("2026-03-14"), dayOffset: 0 };
const sentence = (formula: string, error: ErrorCode = "#VALUE!"): string | undefined =>
  sentenceFor(formula, error, found, refuses, days);
const tooMany = "lame, row 2: 21 is more than the 20 seen; enter the lame sheep among those seen";

it("is the sentence of the function that refuses, and leads to its row", () => {
  const formula = "=FOOT.FLOCKPREV(B2:B4,C2:C4)";
  expect(sentence(formula)).toBe(tooMany);
  const answer = { cells: [[{ error: "#VALUE!" as const }]], message: sentence(formula) };
  expect(explainFormula(formula, catalogue, found, answer).mends).toEqual([
    { cell: "Gathers!B3", place: "lame, row 2" },
  ]);
});

it("is that of the innermost function, through whatever lets an error through", () => {
  expect(sentence('=IF(A1="","",FOOT.FLOCKPREV(B2:B4,C2:C4)*100)')).toBe(tooMany);
  expect(sentence("=_xldudf_FOOT_PREVCI(FOOT.FLOCKPREV(B2:B4,C2:C4),100)")).toBe(tooMany);
});

it.each([
  ["the function does not refuse", "=FOOT.FLOCKPREV(2,20)"],
  ["the error is another one", "=FOOT.FLOCKPREV(B2:B4,C2:C4)", "#N/A"],
  ["its error is caught", "=IFERROR(FOOT.FLOCKPREV(B2:B4,C2:C4),NA()*1)"],
  ["a range is not known", "=FOOT.FLOCKPREV(B2:B5,C2:C4)"],
  ["an argument is worked out by another function", "=FOOT.FLOCKPREV(SUM(B2:B4)+99,20)"],
  ["there is no such function", "=FOOT.FLOKPREV(B2:B4,C2:C4)"],
  ["it cannot be read", '=FOOT.FLOCKPREV("'],
] as const)("is not known where %s", (_, formula, error: ErrorCode = "#VALUE!") => {
  expect(sentence(formula, error)).toBeUndefined();
});

it("knows today, and the days of a workbook that counts from 1904", () => {
  const given: (readonly unknown[])[] = [];
  const heard = (formula: string, dayOffset: number) =>
    sentenceFor(
      formula,
      "#VALUE!",
      new Map(),
      (_, cells) => {
        given.push(cells);
        return undefined;
      },
      { today: days.today, dayOffset },
    );
  heard("=FOOT.CLEARDATE(TODAY(),DATE(2026,2,10))", 0);
  heard("=FOOT.CLEARDATE(TODAY(),DATE(2026,2,10))", days1904);
  // 14 March 2026 is 46095 where days are counted from 1900, as the sheet's own DATE gives it, and 44633 from 1904.
  expect(given).toEqual([
    [46095, 46063],
    [44633, 44601],
  ]);
});

it("shows the days of a workbook that counts from 1904 as they are", () => {
  const treated: Found = new Map([["B2", { address: "A!B2", cells: [[44601]] }]]);
  const explained = explainFormula("=FOOT.CLEARDATE(B2,28)", catalogue, treated, { cells: [[44630]] }, days1904);
  expect(explained.calls[0]?.arguments[0]?.holds).toBe("Holds 10 Feb 2026.");
  expect(explained.answer).toBe("It gives 11 Mar 2026.");
});
