import { describe, expect, it } from "vitest";
import { columnLetters, placeText } from "../../../src/workbook/address.ts";
import { FormulaTree } from "../../../src/workbook/formula/formulaTree.ts";
import { parseFormula } from "../../../src/workbook/formula/parseFormula.ts";
import { RowPattern } from "../../../src/workbook/formula/rowPattern.ts";
import { shiftFormula } from "../../../src/workbook/formula/shiftFormula.ts";
import { storedSpelling } from "../../../src/workbook/formula/storedSpelling.ts";
import { buildWorkbook, recalculated, rowsOf } from "../buildWorkbook.ts";

const isDefined = (word: string): boolean => ["place", "cases"].includes(word);
const row = 6;

const copied = [
  "FOOT.CLEARDATE(A7,B7)",
  'foot.flockprev(A1, b$2)&"A7"&LOG10(A7)',
  "SUM(A$1:A7,$B7,A8:A$20,C5:C9)",
  "SUM(A7:A$9)/COUNT(A:A)",
  "Data!A7+'A7'!B6+A7!B6",
  "-A7%+(A6 A5:B9)",
  "IF(TRUE,SUM((A1,A7)),{1,2;3,4})",
  "LET(x,A7,x+1)",
  "SUM(A7:INDEX(B1:B9,2))",
  "XFD7+ANCHORARRAY(A7)+SORT(A7:A9)",
];

/** Without what is only of use for moving it on. */
const shown = (node: unknown): string => JSON.stringify(node, (key, value) => (key === "moving" ? undefined : value));

describe("a formula copied down a column", () => {
  const sheets = new Map([
    ["data", 0],
    ["a7", 1],
  ]);
  it.each(copied)("is known by its pattern, with its tree, its reads and its spelling: %s", (formula) => {
    const pattern = RowPattern.of(formula, row, isDefined);
    const tree = new FormulaTree(parseFormula(`=${formula}`, 0, sheets), row);
    for (const down of [0, 1, 3, 93, 100_000]) {
      const below = shiftFormula(formula, down, 0);
      expect(pattern?.fits(below, row + down)).toBe(true);
      const own = new FormulaTree(parseFormula(`=${below}`, 0, sheets), row + down);
      expect(shown(tree.nodeIn(row + down))).toBe(shown(own.nodeIn(row + down)));
      expect(shown(tree.readsIn(row + down))).toBe(shown(own.readsIn(row + down)));
      expect(pattern?.stored(below, row + down)).toBe(storedSpelling(below));
    }
  });

  it("is known above the row that it was read in, where its references do not leave the sheet", () => {
    const pattern = RowPattern.of("A7+A5", row, isDefined);
    expect(pattern?.fits("A3+A1", 2)).toBe(true);
    expect(pattern?.fits("A2+A0", 1)).toBe(false);
    expect(RowPattern.of("A1048576", 1_048_574, isDefined)?.fits("A1048577", 1_048_575)).toBe(false);
  });

  it.each([
    ["A7+B7", "A8+B7"],
    ["A7+B7", "A8+C8"],
    ["A7+B7", "A8+B8+1"],
    ["A7+B7", "A8+B80"],
    ["A7+B7", "A8+B08"],
    ["A$7", "A$8"],
    ['A7&"B7"', 'A8&"B8"'],
    ["LOG10(A7)", "LOG11(A8)"],
    ["SUM(7:7)", "SUM(8:8)"],
    ["Data!A7", "data!A8"],
    ["1", "2"],
  ])("is not taken for another: %s is not %s", (formula, below) => {
    expect(RowPattern.of(formula, row, isDefined)?.fits(below, row + 1)).toBe(false);
  });

  it.each(["PLACE+A7", "Cases", "Cases[Days]+A7", "[@Days]", "_xlfn.LET(_xlpm.x7,A7,_xlpm.x7)", "A7 !B7", "A7+?"])(
    "may mean something else below where it hangs on more than its row: %s",
    (formula) => {
      expect(RowPattern.of(formula, row, isDefined)).toBeUndefined();
    },
  );

  it("comes to the same as where no formula like it stands above", async () => {
    const height = 8;
    const lines = Array.from({ length: height }, (_, at) => at + 1);
    const cells = Object.fromEntries(
      lines.flatMap((line) => [
        [`A${line}`, 46_000 + 3 * line],
        [`B${line}`, line],
        [`C${line}`, line % 3],
      ]),
    );
    const formulas = [
      (line: number) => `FOOT.CLEARDATE(A${line},B${line})`,
      (line: number) => `SUM(B$1:B${line})+SUM(B${line}:B$4)`,
      (line: number) => `IF(C${line}=0,"C${line}",Data!B${line}&place)`,
      (line: number) => `COUNTIF($C$1:C${line},C${line})+SUM(OFFSET(B${line},0,0,2,1))`,
      (line: number) => `SUMIF(C${line}:C${line + 2},">0",B${line})`,
      (line: number) => `INDIRECT("B"&ROW())+INDIRECT("B3")+B${line}`,
    ];
    // In a column each, or each formula in a column of its own.
    const book = (columnOf: (formula: number, line: number) => number) => {
      const all: [string, string][] = lines.flatMap((line) =>
        formulas.map((formula, at): [string, string] => [
          placeText({ row: line - 1, column: columnOf(at, line) }),
          `=${formula(line)}`,
        ]),
      );
      return buildWorkbook({
        names: '<definedName name="place">Data!C2</definedName>',
        sheets: [
          { name: "One", rows: rowsOf({ ...cells, ...Object.fromEntries(all) }) },
          { name: "Data", rows: rowsOf(cells) },
        ],
      });
    };
    const down = await recalculated(book((formula) => 3 + formula));
    const apart = await recalculated(book((formula, line) => 3 + formula * height + line));
    formulas.forEach((formula, at) => {
      for (const line of lines)
        expect([formula(line), down.at(`${columnLetters(3 + at)}${line}`)]).toEqual([
          formula(line),
          apart.at(`${columnLetters(3 + at * height + line)}${line}`),
        ]);
    });
    expect(down.at("D2")).toBe(46_009);
    expect(down.at("E3")).toBe(1 + 2 + 3 + 3 + 4);
  });
});
