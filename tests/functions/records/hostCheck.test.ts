import { describe, expect, it } from "vitest";
import { hostCheckFunction } from "../../../functions/records/hostCheck.ts";
import { recordCheckFunction } from "../../../functions/records/recordCheck.ts";
import { dayOf, days1904 } from "../../../src/cells/day.ts";
import { evaluate } from "../../../src/definition/evaluate.ts";

const day = dayOf("2026-03-14");

// An example cannot hold a lone blank cell that every spreadsheet hands over alike.
describe("HOSTCHECK", () => {
  it("tells a lone blank cell from an argument left out", () => {
    const asNothing = evaluate(hostCheckFunction, [null, day]);
    expect(asNothing.ok && asNothing.cells[1]?.[1]).toBe("a blank");
    const leftOut = evaluate(hostCheckFunction, [undefined, day]);
    expect(leftOut).toMatchObject({ ok: false, message: "blank_cell: it is left out; give a range" });
  });

  it("reads the date as the workbook counts", () => {
    const outcome = evaluate(hostCheckFunction, [[[""]], day - days1904], { dateSystem: 1904 });
    expect(outcome.ok && outcome.cells.at(-1)?.[2]).toBe("it is read as 14 Mar 2026, counted from 1904");
  });

  it("refuses a range of dates", () => {
    expect(evaluate(hostCheckFunction, [[[""]], [[day], [day]]])).toMatchObject({
      message: "date_cell: a range was given; give one cell that holds a date",
    });
  });
});

describe("RECORDCHECK", () => {
  it("counts dates as the workbook does", () => {
    const call = [[["Tag", "Treated", "Withdrawal"]], [["042", day - days1904, 28]], "2026-03-13"];
    const future = evaluate(recordCheckFunction, call, { dateSystem: 1904 });
    expect(future.ok && future.cells.at(-1)).toEqual([
      1,
      "Treated",
      "14 Mar 2026 is in the future",
      "look at day, month and year again",
    ]);
    const past = evaluate(recordCheckFunction, call);
    expect(past.ok && past.cells.at(-1)?.[2]).toBe("nothing found wrong in 1 record");
  });

  it("refuses two heading rows", () => {
    expect(evaluate(recordCheckFunction, [[["Tag"], ["Tag"]], [["042"]]])).toMatchObject({
      message: "headings: 2 rows were given; give the one heading row",
    });
  });
});
