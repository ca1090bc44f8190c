import { describe, expect, it } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { Problem } from "../../src/cells/problem.ts";
import { day } from "../../src/reading/days.ts";
import { confidence, count, wholeDays } from "../../src/reading/numbers.ts";
import {
  asNumbers,
  block,
  column,
  gappedColumn,
  gappedColumnOrNone,
  leavingOut,
  one,
  oneOr,
  oneOrNone,
  type Parameters,
} from "../../src/reading/parameter.ts";
import { type Argument, readArguments } from "../../src/reading/readArguments.ts";
import { asHandedOver, choice, tag, text, yesNo } from "../../src/reading/words.ts";

const read = (parameters: Parameters, ...given: Argument[]) => readArguments(parameters, given, { dayOffset: 0 });
const down = (...cells: Cell[]): Cell[][] => cells.map((cell) => [cell]);
const across = (...cells: Cell[]): Cell[][] => [cells];

const twoColumns = { lame: column(count(), "lame"), seen: column(count(), "seen") };

function refusal(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
  throw new Error("nothing was refused");
}

describe("columns", () => {
  it("skips rows that are blank throughout and keeps where the others stood", () => {
    const { values, layouts } = read(twoColumns, down(1, null, "", 2, null), down(10, "", "  ", 20, null));
    expect(values).toEqual({ lame: [1, 2], seen: [10, 20] });
    expect(layouts.get("rows")).toMatchObject({ rows: new Uint32Array([1, 4]), height: 4 });
  });

  it("reads one row as it reads one column", () => {
    const { values, layouts } = read(twoColumns, across(1, 2), across(10, 20));
    expect(values).toEqual({ lame: [1, 2], seen: [10, 20] });
    expect(layouts.get("rows")?.lying).toBe(true);
  });

  it.each([
    ["plain numbers alone", down(1, -0, 3), down(10, 20, 30)],
    ["a blank row and blank ends", down(1, null, 3, ""), down(10, "", 30, null)],
    ["numbers kept as text", down(1, " 2 ", 3), down("10", 20, 30)],
    ["one row", across(1, 2), across(10, 20)],
    ["single cells", 1, 10],
    ["blank throughout", down(null, ""), down(null, null)],
  ])("gives numbers alone as the same numbers: %s", (_, lame, seen) => {
    const alone = { lame: asNumbers(twoColumns.lame), seen: asNumbers(twoColumns.seen) };
    const { values, layouts } = read(alone, lame, seen);
    const usual = read(twoColumns, lame, seen);
    expect(values).toEqual({
      lame: Float64Array.from(usual.values.lame as number[]),
      seen: Float64Array.from(usual.values.seen as number[]),
    });
    expect(layouts).toEqual(usual.layouts);
  });

  it("refuses in a column of numbers alone what it refuses in another", () => {
    const alone = { lame: asNumbers(twoColumns.lame), seen: asNumbers(twoColumns.seen) };
    for (const cell of [null, "?", 2.5, -1, 1e10, true, { error: "#N/A" } as const])
      expect(refusal(() => read(alone, down(1, cell), down(10, 20)))).toBe(
        refusal(() => read(twoColumns, down(1, cell), down(10, 20))),
      );
  });

  it("leaves rows out of a column of numbers alone", () => {
    const alone = { lame: leavingOut(asNumbers(twoColumns.lame)), seen: leavingOut(asNumbers(twoColumns.seen)) };
    const { values, leftOut } = read(alone, down(1, 2, 3), down(10, "?", 30));
    expect(values).toEqual({ lame: Float64Array.of(1, 3), seen: Float64Array.of(10, 30) });
    expect(leftOut?.rows).toBe(1);
  });

  it("reads text numbers with a point", () => {
    expect(read(twoColumns, down("12", " 3 "), down("40.0", 50)).values).toEqual({ lame: [12, 3], seen: [40, 50] });
  });

  it.each([
    ["3,5", '"3,5" is not a number'],
    ["5%", '"5%" is not a number'],
    ["1e999", '"1e999" is not a number'],
    [true, "TRUE is not a number"],
    [2.5, "2.5 is not a whole number"],
    [-1, "-1 is below 0"],
    [Number.NaN, "NaN is not a number"],
    [Number.POSITIVE_INFINITY, "Infinity is not a number"],
    [{ error: "#DIV/0!" } as const, "the cell holds #DIV/0!; mend that cell first"],
  ])("refuses %j as a count with its row", (cell, fault) => {
    expect(refusal(() => read(twoColumns, down(1, cell), down(10, 10)))).toContain(`lame, row 2: ${fault}`);
  });

  it("refuses a gap in a row that holds a record", () => {
    expect(refusal(() => read(twoColumns, down(1, null), down(10, 20)))).toBe(
      "lame, row 2: it is blank, but the row holds a record; enter a whole number of sheep, 0 or more",
    );
  });

  it("takes ranges of unlike height when nothing filled hangs over", () => {
    expect(read(twoColumns, down(1, 2, null, null, null), down(10, 20)).values).toEqual({
      lame: [1, 2],
      seen: [10, 20],
    });
  });

  it("refuses ranges of unlike height when something would be lost", () => {
    expect(refusal(() => read(twoColumns, down(1, 2, 3), down(10, 20)))).toBe(
      "seen: it has 2 rows, but lame has 3; give ranges of the same height",
    );
  });

  it("refuses a range of two columns", () => {
    expect(
      refusal(() =>
        read(
          twoColumns,
          [
            [1, 2],
            [3, 4],
          ],
          down(10, 20),
        ),
      ),
    ).toBe("lame: the range is 2 columns wide; give one column");
  });

  it("names no row for a single cell", () => {
    expect(refusal(() => read(twoColumns, "x", 20))).toMatch(/^lame: "x" is not a number/);
  });

  it("hands on gaps where they are answers, and nothing for a column left out", () => {
    const parameters = { due: gappedColumn(day, "due"), done: gappedColumnOrNone(day, "done") };
    expect(read(parameters, down(46000, null, 46002)).values).toEqual({ due: [46000, 46002], done: undefined });
    expect(read(parameters, down(46000, 46001), down(null, 46005)).values).toEqual({
      due: [46000, 46001],
      done: [undefined, 46005],
    });
  });

  it("lets one cell stand for every row where that is meant, without filling blank rows", () => {
    const parameters = {
      treated: gappedColumn(day, "t"),
      withdrawal_days: gappedColumn(wholeDays, "w", { repeats: true }),
    };
    const { values, layouts } = read(parameters, down(46000, null, 46002), 28);
    expect(values).toEqual({ treated: [46000, 46002], withdrawal_days: [28, 28] });
    expect(layouts.get("rows")?.rows).toEqual(new Uint32Array([1, 3]));
  });

  it("takes an object that the spreadsheet hands over for the cell it stands for, wherever it stands", () => {
    const cellOf = (object: unknown): Cell => (object as { readonly means: Cell }).means;
    const meaning = (means: Cell): Cell => ({ means }) as unknown as Cell;
    const readWith = (parameters: Parameters, ...given: Argument[]) =>
      readArguments(parameters, given, { dayOffset: 0, cellOf }).values;
    const parameters = {
      one: one(count(), "o"),
      lame: column(count(), "l"),
      seen: column(count(), "s"),
      cells: block(asHandedOver, "b"),
      none: gappedColumnOrNone(day, "n", { group: "others" }),
    };
    const given = [meaning(3), down(1, meaning(2), meaning(null)), down(4, 5), [[null, meaning("x")]], meaning(null)];
    expect(readWith(parameters, ...given)).toEqual({
      one: 3,
      lame: [1, 2],
      seen: [4, 5],
      cells: [[null, "x"]],
      none: undefined,
    });
    expect(refusal(() => readWith(twoColumns, down(1, meaning({ error: "#REF!" })), down(4, 5)))).toBe(
      "lame, row 2: the cell holds #REF!; mend that cell first",
    );
  });

  it("hands a block without objects on as it is", () => {
    const cells = [[1, null, "a"]];
    const { values } = readArguments({ cells: block(asHandedOver, "b") }, [cells], {
      dayOffset: 0,
      cellOf: () => null,
    });
    expect(values.cells).toBe(cells);
  });

  it("keeps groups of columns apart", () => {
    const parameters = { sale: column(tag, "s", { group: "sale" }), tags: column(tag, "t") };
    const { values } = read(parameters, down("1", "2", "3"), down("9"));
    expect((values.sale as unknown[]).length).toBe(3);
    expect((values.tags as unknown[]).length).toBe(1);
  });

  it("takes 0 for a blank where 0 can be no record: dates, tags", () => {
    expect(read({ d: gappedColumn(day, "d"), t: gappedColumn(tag, "t") }, down(46000, 0), down("1", 0)).values).toEqual(
      {
        d: [46000],
        t: [{ key: "1", shown: "1", spelling: 0, apart: {} }],
      },
    );
  });

  it("takes no blank row below a cell that is refused for a record", () => {
    const cells = [down("a", "b", null, "c"), down(1, { error: "#N/A" }, null, 2)];
    expect(() => read({ t: column(text(), "t"), n: column(count(), "n") }, ...cells)).toThrow(
      "n, row 2: the cell holds #N/A; mend that cell first",
    );
  });

  it("reads a whole column of a sheet whose records end early", () => {
    const height = 1_048_576;
    const whole = (filled: readonly Cell[]): Cell[][] =>
      Array.from({ length: height }, (_, row) => [filled[row] ?? null]);
    const { values, layouts } = read(twoColumns, whole([1, 2]), whole([10, 20]));
    expect(values).toEqual({ lame: [1, 2], seen: [10, 20] });
    expect(layouts.get("rows")?.height).toBe(2);
  });
});

describe("single cells", () => {
  const parameters = {
    first: one(count(), "first"),
    sure: oneOr(confidence, 0.95, "sure"),
    size: oneOrNone(count(), "size"),
  };

  it("uses what stands when an argument is left out, null, or a blank cell", () => {
    const expected = { first: 1, sure: 0.95, size: undefined };
    expect(read(parameters, 1).values).toEqual(expected);
    expect(read(parameters, [[1]], null, [[null]]).values).toEqual(expected);
    expect(read(parameters, 1, "", " ").values).toEqual(expected);
  });

  it("refuses a range, a missing argument, and too many arguments", () => {
    expect(refusal(() => read(parameters, down(1, 2)))).toBe("first: a range of 2 by 1 cells was given; give one cell");
    expect(refusal(() => read(parameters))).toBe("first: it is left out; enter a whole number of sheep, 0 or more");
    expect(refusal(() => read(parameters, 1, 0.95, 3, 4))).toBe(
      "4 arguments were given, but this function takes at most 3: first, sure, size",
    );
  });
});

describe("words", () => {
  it.each([
    [true, true],
    ["Yes", true],
    [" y ", true],
    [1, true],
    ["FALSE", false],
    ["no", false],
    ["N", false],
    [0, false],
  ] as const)("reads %j as %j", (cell, value) => {
    expect(read({ answer: one(yesNo, "a") }, cell).values.answer).toBe(value);
  });

  it("reads a choice whatever its capitals, and lists the choices otherwise", () => {
    const parameters = { how: one(choice("whole days", "from the hour"), "how") };
    expect(read(parameters, " Whole Days ").values.how).toBe("whole days");
    expect(refusal(() => read(parameters, "hours"))).toBe(
      'how: "hours" is not a choice here; enter one of: "whole days", "from the hour"',
    );
  });

  it("keeps a group called 0", () => {
    expect(read({ groups: column(text(), "g") }, down(0, "a")).values.groups).toEqual(["0", "a"]);
  });
});

describe("dates", () => {
  const parameters = { on: one(day, "on") };

  it("reads serials and ISO text, and leaves the hour out", () => {
    expect(read(parameters, 46095.7).values.on).toBe(46095);
    expect(read(parameters, "2026-03-14").values.on).toBe(46095);
  });

  it.each([["14/03/2026"], ["03/04"], ["14 March 2026"], [12], [80000], [true], [-5], ["46095"]])(
    "refuses %j",
    (cell) => {
      expect(refusal(() => read(parameters, cell))).toMatch(
        /^on: .* is not a date.*; enter a real date, or text such as 2026-03-14$/,
      );
    },
  );

  it("reads the serials of a workbook in the 1904 system", () => {
    expect(readArguments(parameters, [46095 - 1462], { dayOffset: 1462 }).values.on).toBe(46095);
  });
});
