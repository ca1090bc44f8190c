import { describe, expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { dayOf, days1904 } from "../../../src/cells/day.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import type { Clock } from "../../../src/hosts/localClock.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { sheetCells } from "../../samples/sheetCells.ts";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";

async function answers(formulas: readonly string[], clock: Clock, date1904 = false) {
  const cells = Object.fromEntries(formulas.map((formula, index) => [`B${index + 1}`, formula]));
  const rows = rowsOf({ A1: "2026/03/01", A2: "2026-03-14", A3: "3/4/2026", A4: "none", ...cells });
  const book = openWorkbook(buildWorkbook({ date1904, sheets: [{ name: "One", rows }] }));
  const { bytes } = await recalculate(book, engineInNode(clock));
  const worked = sheetCells(bytes);
  return formulas.map((_, index): Cell | undefined => worked.get(`One!B${index + 1}`));
}

const evening = dayOf("2026-03-14") + 0.875;

describe("TODAY and NOW", () => {
  it("are the day and the hour of the clock that is handed in", async () => {
    const formulas = ["=TODAY()", "=NOW()", "=TODAY()-7", "=HOUR(NOW())", "=IF(NOW()>TODAY(),1,2)", "=INT(NOW())"];
    const day = dayOf("2026-03-14");
    expect(await answers(formulas, () => evening)).toEqual([day, day + 0.875, day - 7, 21, 1, day]);
    expect(await answers(["=YEAR(TODAY())", "=MONTH(TODAY())", "=DAY(NOW())"], () => evening)).toEqual([2026, 3, 14]);
    expect(await answers(['=TEXT(TODAY(),"yyyy-mm-dd")', "=WEEKDAY(TODAY())"], () => evening)).toEqual([
      "2026-03-14",
      7,
    ]);
  });

  it("count from 1904 in a workbook that does", async () => {
    const formulas = ["=TODAY()", "=NOW()", "=YEAR(TODAY())", "=DAY(TODAY())", "=TODAY()-DATE(2026,3,1)"];
    const day = dayOf("2026-03-14") - days1904;
    expect(await answers(formulas, () => evening, true)).toEqual([day, day + 0.875, 2026, 14, 13]);
  });

  it("are one moment in all of a workbook, even when midnight comes meanwhile", async () => {
    let asked = 0;
    const clock = () => dayOf("2026-03-14") + 0.9999 + asked++;
    const found = await answers(["=TODAY()", "=INT(NOW())", "=TODAY()", "=SUM(TODAY(),-TODAY())"], clock);
    expect(found).toEqual([found[0], found[0], found[0], 0]);
  });

  it("take nothing", async () => {
    expect(await answers(["=TODAY(1)", "=NOW(1)"], () => evening)).toEqual([{ error: "#N/A" }, { error: "#N/A" }]);
  });
});

// In which time zone it is worked out is tried in tests/cli/today.test.ts.
describe("DAY, MONTH and YEAR of a date written as text", () => {
  it("are those of the date", async () => {
    const formulas = [
      "=DAY(A1)",
      "=MONTH(A1)",
      "=YEAR(A1)",
      "=DAY(A2)",
      '=MONTH("14 Mar 2026")',
      "=SUMPRODUCT(DAY(A1:A2))",
    ];
    expect(await answers(formulas, () => evening)).toEqual([1, 3, 2026, 14, 3, 15]);
  });

  it("are refused where the text is no date, or two", async () => {
    const error = { error: "#VALUE!" };
    expect(await answers(["=DAY(A3)", "=MONTH(A4)", '=YEAR("")'], () => evening)).toEqual([error, error, error]);
    expect(await answers(["=DAY(C9)", "=DAY(46095.9)"], () => evening)).toEqual([0, 14]);
  });
});
