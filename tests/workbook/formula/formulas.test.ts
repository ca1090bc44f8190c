import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { referencesIn } from "../../../src/workbook/formula/referencesIn.ts";
import { shiftFormula } from "../../../src/workbook/formula/shiftFormula.ts";
import { storedSpelling } from "../../../src/workbook/formula/storedSpelling.ts";
import { joinTokens, tokenize } from "../../../src/workbook/formula/tokenize.ts";
import { type Surroundings, translate } from "../../../src/workbook/formula/translate.ts";
import type { Table } from "../../../src/workbook/model.ts";

describe("tokens", () => {
  it.each([
    `IF(A1="it's ""so""",'O''Brien & co'!$B$2:C3,{1,2;"a",#N/A})`,
    "Cases[[#This Row],[Tag '[ear'] '#]]+Table1[]-[1]Other!A1",
    "1.5E-3+.5%^-2<>A1#:@B:B 1:$3",
    "_xlfn.LET(_xlpm.x,Σ_2\\a?.b,x)",
  ])("join to the formula: %s", (formula) => {
    expect(joinTokens(tokenize(formula) ?? [])).toBe(formula);
  });

  it("give back any text they can read, and refuse the rest", () => {
    const piece = fc.constantFrom(
      "A1",
      "$B$2",
      '"a""b"',
      "'x y'!",
      "SUM(",
      ")",
      ",",
      "+",
      "<>",
      "1.5",
      "#REF!",
      " ",
      "[a[b]]",
      ":",
      "#",
      "é",
    );
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        const formula = pieces.join("");
        const tokens = tokenize(formula);
        if (tokens) expect(joinTokens(tokens)).toBe(formula);
      }),
    );
    expect(tokenize('"open')).toBeUndefined();
    expect(tokenize("[open")).toBeUndefined();
    expect(tokenize("A1\u0000")).toBeUndefined();
  });
});

describe("shifting", () => {
  it.each([
    ["A1+$A1+A$1+$A$1", 2, 1, "B3+$A3+B$1+$A$1"],
    ["SUM(B:B,$C:C,2:2,$3:3)", 2, 1, "SUM(C:C,$C:D,4:4,$3:5)"],
    ["\"A1\"&LOG10(A1)&'A1 x'!A1&A1!B2", 1, 0, "\"A1\"&LOG10(A2)&'A1 x'!A2&A1!B3"],
    ["XYZ2026+XFE1+A1048577+Table1[A1]+SUM(A1)", 1, 1, "XYZ2026+XFE1+A1048577+Table1[A1]+SUM(B2)"],
    ["A1", -1, 0, "A1048576"],
    ["XFD1", 0, 1, "A1"],
  ])("%s by %i rows and %i columns", (formula, rows, columns, shifted) => {
    expect(shiftFormula(formula, rows, columns)).toBe(shifted);
  });

  it("comes back when it is shifted there and back", () => {
    const cell = fc.tuple(
      fc.constantFrom("", "$"),
      fc.constantFrom("A", "BZ", "XFD"),
      fc.constantFrom("", "$"),
      fc.integer({ min: 1, max: 1048576 }),
    );
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 1 }),
        fc.integer({ min: -2000, max: 2000 }),
        fc.integer({ min: -300, max: 300 }),
        (cells, rows, columns) => {
          const formula = cells.map((parts) => parts.join("")).join("+");
          expect(shiftFormula(shiftFormula(formula, rows, columns), -rows, -columns)).toBe(formula);
        },
      ),
    );
  });
});

describe("the spelling in files", () => {
  it.each([
    ["FOOT.FLOCKPREV(A1,FOOT_TAGKEY(B1))", "_xldudf_FOOT_FLOCKPREV(A1,_xldudf_FOOT_TAGKEY(B1))"],
    ["_xlfn._xlws.filter(A1:A3,_xlfn.xlookup(1,A1,B1))", "_xlfn._xlws.FILTER(A1:A3,_xlfn.XLOOKUP(1,A1,B1))"],
    ["sort(unique(A1:A3))", "_xlfn._xlws.SORT(_xlfn.UNIQUE(A1:A3))"],
    ['SUM(A1)&"FOOT.FLOCKPREV("&filter', 'SUM(A1)&"FOOT.FLOCKPREV("&filter'],
    ["_xldudf_FOOT_FLOCKPREV(A1,B1)", "_xldudf_FOOT_FLOCKPREV(A1,B1)"],
  ])("%s", (formula, stored) => {
    expect(storedSpelling(formula)).toBe(stored);
    expect(storedSpelling(stored)).toBe(stored);
  });
});

describe("references", () => {
  it("are found with their sheets", () => {
    const sheets = new Map([
      ["one", 0],
      ["it's", 1],
    ]);
    const found = referencesIn("=SUM('It''s'!$B$2:C3,A1,\"Z9\",D:D)+IF(2:3,ROW(F7))", 0, sheets);
    expect(found.map(({ sheet, area: { top, left, bottom, right } }) => [sheet, top, left, bottom, right])).toEqual([
      [1, 1, 1, 2, 2],
      [0, 0, 0, 0, 0],
      [0, 0, 3, 1048575, 3],
      [0, 1, 0, 2, 16383],
      [0, 6, 5, 6, 5],
    ]);
  });
});

describe("the nth cell of a table's column", () => {
  const table: Table = {
    name: "Flocks",
    area: { top: 2, left: 0, bottom: 5, right: 1 },
    columns: ["Flock", "Lame"],
    headerRows: 1,
    totalsRows: 0,
  };
  const around: Surroundings = {
    sheets: [
      { name: "One", tables: [] },
      { name: "It's", tables: [table] },
    ],
    sheetByName: new Map([
      ["one", 0],
      ["it's", 1],
    ]),
    names: new Map(),
    tables: new Map([["flocks", { sheet: 1, table }]]),
    date1904: false,
    knows: () => true,
    footNames: new Set(),
  };
  const read = (formula: string, sheet: number) => translate(formula, sheet, { row: 9, column: 5 }, around).formula;

  it.each([
    ["INDEX(Flocks[Lame],1)", "='It''s'!$B$4"],
    ['LEN(INDEX(Flocks[Lame],3))&"INDEX(Flocks[Lame],1)"', "=LEN('It''s'!$B$6)&\"INDEX(Flocks[Lame],1)\""],
    // None of these is one cell of the column.
    ["INDEX(Flocks[Lame],4)", "=INDEX('It''s'!$B$4:$B$6,4)"],
    ["INDEX(Flocks[Lame],0)", "=INDEX('It''s'!$B$4:$B$6,0)"],
    ["INDEX(Flocks[Lame],1.5)", "=INDEX('It''s'!$B$4:$B$6,1.5)"],
    ["INDEX(Flocks[Lame],A1)", "=INDEX('It''s'!$B$4:$B$6,A1)"],
    ["INDEX(Flocks[Lame],2,1)", "=INDEX('It''s'!$B$4:$B$6,2,1)"],
    ["INDEX(Flocks[[Flock]:[Lame]],2)", "=INDEX('It''s'!$A$4:$B$6,2)"],
  ])("%s", (formula, engine) => {
    expect(read(formula, 0)).toBe(engine);
  });

  it("on the table's own sheet is named without it", () => {
    expect(read("INDEX(Flocks[Flock],2)", 1)).toBe("=$A$5");
  });
});
