import { describe, expect, it } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { savedAnswers } from "../../src/workbook/savedAnswers.ts";
import { buildWorkbook, rowsOf, type WorkbookToBuild } from "./buildWorkbook.ts";

const saved = (cells: string, more: Partial<WorkbookToBuild> = {}) =>
  savedAnswers(openWorkbook(buildWorkbook({ sheets: [{ name: "One", rows: `<row r="1">${cells}</row>` }], ...more })));
const answered = '<c r="A1"><f>1+1</f><v>2</v></c>';

describe("the answers a workbook was saved with", () => {
  it.each([
    ["a formula without one", `${answered}<c r="B1"><f>1+2</f></c>`],
    ["a formula with an empty one", `${answered}<c r="B1"><f>1+2</f><v/></c>`],
    ["a function that was not there", '<c r="A1" t="e"><f>_xldudf_FOOT_FLOCKPREV(1,20)</f><v>#NAME?</v></c>'],
    ["the day", '<c r="A1"><f>TODAY()</f><v>46095</v></c>'],
    ["the hour", '<c r="A1"><f>IF(1,now ( ),2)</f><v>46095.5</v></c>'],
    ["chance", '<c r="A1"><f>RANDBETWEEN(1,6)</f><v>4</v></c>'],
  ])("are not shown where there is %s", (_, cells) => {
    expect(saved(cells)).toBe("not to be shown");
  });

  // ECMA-376 Part 1 §18.2.2, calcPr.
  it.each(['fullCalcOnLoad="1"', 'fullCalcOnLoad="true"', 'forceFullCalc="1"', 'calcCompleted="0"'])(
    "are not shown where the file says %s",
    (asked) => {
      expect(saved(answered, { calculation: `<calcPr calcId="191029" ${asked}/>` })).toBe("not to be shown");
    },
  );

  it("are not shown where a name goes by the day", () => {
    const names = '<definedName name="as_of">TODAY()</definedName>';
    expect(saved('<c r="A1"><f>as_of</f><v>46095</v></c>', { names })).toBe("not to be shown");
  });

  it.each([
    ["a number", answered],
    ["an empty text", '<c r="A1" t="str"><f>""</f><v></v></c>'],
    ["an error of its own", '<c r="A1" t="e"><f>1/0</f><v>#DIV/0!</v></c>'],
    ["a name that holds the word", '<c r="A1"><f>Todays_list+KNOWN(1)</f><v>2</v></c>'],
  ])("are of unknown age where all have one, such as %s", (_, cells) => {
    expect(saved(cells)).toBe("of unknown age");
    expect(saved(cells, { calculation: '<calcPr calcId="191029" fullCalcOnLoad="0" calcCompleted="1"/>' })).toBe(
      "of unknown age",
    );
  });

  it("are none where there are no formulas, whatever the file asks for", () => {
    const rows = rowsOf({ A1: 4, B1: "TODAY()" });
    const book = buildWorkbook({ sheets: [{ name: "One", rows }], calculation: '<calcPr fullCalcOnLoad="1"/>' });
    expect(savedAnswers(openWorkbook(book))).toBe("no formulas");
  });
});
