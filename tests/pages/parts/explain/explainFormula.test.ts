import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import type { Cells } from "../../../../src/cells/cell.ts";
import { dayOf } from "../../../../src/cells/day.ts";
import { evaluate } from "../../../../src/definition/evaluate.ts";
import { callsIn } from "../../../../src/pages/parts/explain/callsIn.ts";
import { cellsGiven, type FoundCells } from "../../../../src/pages/parts/explain/cellsGiven.ts";
import { cellToMend } from "../../../../src/pages/parts/explain/cellToMend.ts";
import { askedOf, type CellAnswer, explainFormula } from "../../../../src/pages/parts/explain/explainFormula.ts";
import { columnLetters } from "../../../../src/workbook/address.ts";

const column = (...cells: Cells[number]): Cells => cells.map((cell) => [cell]);

/** Works a formula of one call out as a host would, and explains it. */
function explain(formula: string, sheet: Readonly<Record<string, FoundCells>> = {}) {
  const found = new Map(Object.entries(sheet));
  const [call] = callsIn(formula) ?? [];
  const definition = catalogue.find(({ name }) => `FOOT.${name}` === call?.name);
  let answer: CellAnswer = { cells: [[{ error: "#NAME?" }]] };
  if (definition && call) {
    const outcome = evaluate(
      definition,
      call.given.map((typed) => cellsGiven(typed, found)?.known),
    );
    answer = outcome.ok
      ? { cells: outcome.cells }
      : { cells: [[{ error: outcome.code }]], message: `${outcome.message}` };
  }
  return explainFormula(formula, catalogue, found, answer);
}

describe("explainFormula", () => {
  it("says what a function answers, what each argument means and holds, and what came of it", () => {
    const { calls, answer, failed, hint, mends } = explain("=FOOT.FLOCKPREV(B2:B7,C2:C7)", {
      "B2:B7": { address: "Gathers!B2:B7", cells: column(3, 0, 2, null, 1, 4) },
      "C2:C7": { address: "Gathers!C2:C7", cells: column(20, 20, 20, null, 20, 20) },
    });
    expect(calls).toHaveLength(1);
    expect(calls[0]).toMatchObject({
      name: "FOOT.FLOCKPREV",
      answers: "The share of the sheep looked at that were lame.",
      inside: undefined,
      surplus: undefined,
    });
    expect(calls[0]?.arguments[0]).toEqual({
      name: "lame",
      meaning: "Lame sheep at each gather (a cell or a column)",
      given: "B2:B7",
      holds: "6 cells: 3, 0, 2, blank, 1, …",
      calls: [],
    });
    expect([answer, failed, hint, mends]).toEqual(["It gives 10.0%.", false, undefined, []]);
  });

  it("leads from the sentence of an error to the cell to mend, also where the range is a table's column", () => {
    const { answer, failed, mends } = explain("=FOOT.FLOCKPREV(Gathers[Lame],Gathers[Seen])", {
      "Gathers[Lame]": { address: "'Our gathers'!C5:C8", cells: column(3, 2, "two", 1) },
      "Gathers[Seen]": { address: "'Our gathers'!D5:D8", cells: column(20, 20, 20, 20) },
    });
    expect([answer, failed]).toEqual([expect.stringMatching(/^#VALUE!: lame, row 3: "two"/), true]);
    expect(mends).toEqual([{ cell: "'Our gathers'!C7", place: "lame, row 3" }]);
  });

  it("leads to a lone cell, and to the first row that an answer leaves out", () => {
    const lone = explain("=FOOT.CLEARDATE(B2,28)", { B2: { address: "Cases!B2", cells: [["12/3"]] } });
    expect(lone.mends).toEqual([{ cell: "Cases!B2", place: "treated" }]);
    const leftOut = explain("=FOOT.LESIONMIX(F2:F5)", {
      "F2:F5": { address: "Cases!F2:F5", cells: column("scald", { error: "#REF!" }, "footrot", "CODD") },
    });
    expect(leftOut.mends).toEqual([{ cell: "Cases!F3", place: expect.stringMatching(/, row 2$/) }]);
  });

  it("shows days as days, what stands for an argument left out, and what was given too much", () => {
    const { calls, answer } = explain("=FOOT.RECHECKDUE(B2,,9)", {
      B2: { address: "Cases!B2", cells: [[dayOf("2026-02-10")]] },
    });
    expect(calls[0]?.arguments[0]?.holds).toBe("Holds 10 Feb 2026.");
    expect(calls[0]?.arguments[1]).toMatchObject({ name: "after_days", given: undefined });
    expect(calls[0]?.arguments[1]?.holds).toMatch(/^Left out, it is \d+\.$/);
    expect(calls[0]?.surplus).toBe("It takes 2 arguments; too much: 9.");
    expect(answer).toMatch(/^#VALUE!: /);
    expect(explain("=FOOT.RECHECKDUE(DATE(2026,2,10))").answer).toMatch(/^It gives \d+ Feb 2026\.$/);
  });

  it("tells of functions around it, and gives the answer as the sheet shows it", () => {
    const found = new Map([["B2", { address: "B2", cells: [[dayOf("2026-02-10")]] }]]);
    const { calls, answer } = explainFormula('=IF(B2="","",IFERROR(FOOT.CLEARDATE(B2,28),"?"))', catalogue, found, {
      cells: [["?"]],
    });
    expect(calls.map(({ name, inside }) => [name, inside])).toEqual([
      ["FOOT.CLEARDATE", "It stands inside IF, then IFERROR."],
    ]);
    expect(answer).toBe("It gives ?.");
  });

  it.each([
    ['=IFERROR(FOOT.CLEARDATE(B2,28),"")', "It gives 11 Mar 2026."],
    ['=IF(B2="","",IFERROR( FOOT.CLEARDATE(B2,28) ,"?"))', "It gives 11 Mar 2026."],
    ["=FOOT.CLEARDATE(B2,28)", "It gives 11 Mar 2026."],
    // These make another number of it, or only look at it.
    ["=IFERROR(FOOT.CLEARDATE(B2,28)-TODAY(),0)", "It gives 46092."],
    ["=IF(FOOT.CLEARDATE(B2,28)>TODAY(),46092,0)", "It gives 46092."],
    ["=YEAR(FOOT.CLEARDATE(B2,28))", "It gives 46092."],
    ["=1*(FOOT.CLEARDATE(B2,28))", "It gives 46092."],
  ])("%s: shows a day as a day where the function's answer is that of the cell", (formula, answer) => {
    // 10 February 2026 and 28 whole days, by the calendar.
    const found = new Map([["B2", { address: "B2", cells: [[dayOf("2026-02-10")]] }]]);
    expect(explainFormula(formula, catalogue, found, { cells: [[dayOf("2026-03-11")]] }).answer).toBe(answer);
  });

  it("explains a function that stands in another inside the argument it stands in, and leads to the row of its cells", () => {
    const found = new Map([
      ["A2:A4", { address: "Cases!A2:A4", cells: column("x", "y", "z") }],
      ["B2:B4", { address: "Cases!B2:B4", cells: column(46063, 46063, 46063) }],
    ]);
    const formula = "=FOOT.NOTCLEAR(TODAY(),A2:A4,IF(1,FOOT.RECHECKDUE(B2:B4),0),28)";
    const { calls } = explainFormula(formula, catalogue, found, { cells: [["x"]] });
    expect(calls.map(({ name }) => name)).toEqual(["FOOT.NOTCLEAR"]);
    const [outer] = calls;
    expect(outer?.arguments.map((argument) => argument.calls.map(({ name, inside }) => [name, inside]))).toEqual(
      outer?.arguments.map((_, index) => (index === 2 ? [["FOOT.RECHECKDUE", "It stands inside IF."]] : [])),
    );
    const direct = explainFormula("=FOOT.CLEARDATE(FOOT.RECHECKDUE(B2:B4),28)", catalogue, found, {
      cells: [[{ error: "#VALUE!" }]],
      message: "treated, row 3: it is a text",
    });
    expect(direct.mends).toEqual([{ cell: "Cases!B4", place: "treated, row 3" }]);
  });

  it("says what a function said whose error another keeps from the cell, and leads to the row", () => {
    const found = new Map([["B2:B4", { address: "Cases!B2:B4", cells: column(46063, "x", 46063) }]]);
    const { answer, caught, failed, mends } = explainFormula(
      '=IFERROR(FOOT.CLEARDATE(B2:B4,28),"")',
      catalogue,
      found,
      {
        cells: [[""]],
        message: 'treated, row 2: "x" is not a date',
      },
    );
    expect([answer, failed]).toEqual(["It gives blank.", false]);
    expect(caught).toBe(
      'A function inside gave an error, which is kept from the cell: treated, row 2: "x" is not a date',
    );
    expect(mends).toEqual([{ cell: "Cases!B3", place: "treated, row 2" }]);
  });

  it("answers an unknown name with the nearest, a missing FOOT. and a semicolon", () => {
    expect(explain("=FOOT.FLOKPREV(2,20)")).toMatchObject({
      calls: [],
      hint: "There is no FOOT.FLOKPREV. Was FOOT.FLOCKPREV meant?",
    });
    expect(explain("=FLOCKPREV(2,20)").hint).toBe("There is no FLOCKPREV. Was FOOT.FLOCKPREV meant?");
    expect(explain("=FOOT.FLOCKPREV(2;20)").hint).toBe("Here a comma stands between what is given, not a semicolon.");
    expect(explain("=FOOT.XYZXYZ(2)").hint).toBe(
      "There is no FOOT.XYZXYZ. The list of functions has the names there are.",
    );
    expect(explain('=FOOT.ABOUT("').hint).toBe("The formula cannot be read; a quote mark or a bracket may be missing.");
  });

  it("knows the spelling that workbooks store", () => {
    expect(explainFormula("=_xldudf_FOOT_ABOUT()", catalogue, new Map(), { cells: [["x"]] }).calls[0]?.name).toBe(
      "FOOT.ABOUT",
    );
  });

  it("explains every argument of every function without a gap", () => {
    for (const { name, parameters } of catalogue) {
      const given = Object.keys(parameters).map((_, at) => `${columnLetters(at)}2:${columnLetters(at)}9`);
      const formula = `=FOOT.${name}(${given.join(",")})`;
      expect(askedOf(formula, catalogue)).toEqual(given);
      const [call] = explain(
        formula,
        Object.fromEntries(given.map((text) => [text, { address: text, cells: column(1) }])),
      ).calls;
      for (const { meaning, holds } of call?.arguments ?? [])
        expect(`${meaning} ${holds}`, name).toMatch(/^.+ Holds .+\.$/);
      expect(call?.gives).not.toBe("");
    }
  });
});

describe("callsIn", () => {
  it("parts arguments by comma or semicolon, at their own depth", () => {
    expect(callsIn('=A(B(1,2);{1,2;3,4},"a,b",,(3+4))')).toEqual([
      { name: "A", given: ["B(1,2)", "{1,2;3,4}", '"a,b"', "", "(3+4)"], inside: [], within: undefined, alone: true },
      { name: "B", given: ["1", "2"], inside: ["A"], within: { call: 0, argument: 0 }, alone: true },
    ]);
    expect(callsIn("A()")).toMatchObject([{ name: "A", given: [], inside: [] }]);
    expect(callsIn("A(1,")).toMatchObject([{ name: "A", given: ["1", ""], inside: [] }]);
    expect(callsIn('"')).toBeUndefined();
  });
});

describe("askedOf", () => {
  it("asks for references, names and columns of tables, and not for values or calls", () => {
    const asked = askedOf(
      "=FOOT.NOTCLEAR(as_of, Cases[Tag], 'My flock'!$B$2:$B$9, TODAY(), B2*2, TRUE)+FOOT.FLOCKPREV(\"B2\", 28)+SUM(Z1:Z9)",
      catalogue,
    );
    expect(asked).toEqual(["as_of", "Cases[Tag]", "'My flock'!$B$2:$B$9"]);
  });
});

describe("cellToMend", () => {
  it.each([
    ["B2:B9", 1, "B2"],
    ["Cases!$B$2:$B$300", 3, "Cases!B4"],
    ["B2:F2", 3, "D2"],
    ["B:B", 7, "B7"],
    ["A2:C9", 2, "A3:C3"],
    ["B2:B9", 9, undefined],
    ["as_of", 1, undefined],
  ])("%s, row %i", (address, row, cell) => {
    expect(cellToMend(address, row)).toBe(cell);
  });
});

describe("cellsGiven", () => {
  it.each([
    ["-0.5e1", { known: -5 }],
    ['"say ""hold"""', { known: 'say "hold"' }],
    ["true", { known: true }],
    ["", { known: undefined }],
    ["DATE(2026;3;14)", { known: 46095 }],
    ["DATE(2026,14,40)", undefined],
    ["TODAY()", undefined],
    ["B2", undefined],
  ])("%s", (typed, given) => {
    expect(cellsGiven(typed, new Map())).toEqual(given);
  });
});
