import { resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { dayOf } from "../../src/cells/day.ts";
import { cases } from "../../src/workbooks/tables/cases.ts";
import { columnOf } from "../workbooks/columnOf.ts";
import { type Calc, type CalcWorkbook, startCalc, type Typed } from "./startCalc.ts";

// Calc keeps an array as long as it was saved: an animal below its end is on no list, and must not pass for clear.
describe("lists that LibreOffice does not let grow", () => {
  let calc: Calc;
  beforeAll(async () => {
    calc = await startCalc("25.2");
  });
  afterAll(() => calc.stop());

  const textIn = ({ sheets }: CalcWorkbook, sheet: string, row: number, column: number) =>
    sheets[sheet]?.[row - 1]?.[column] ?? "";

  const treated = (rows: number): readonly Typed[] => [
    ["Settings", "B5", dayOf("2026-10-31")],
    ...Array.from({ length: rows }, (_, place) => place + 5).flatMap((row): Typed[] => [
      ["Cases", `A${row}`, dayOf("2026-10-20")],
      ["Cases", `B${row}`, dayOf("2026-10-20")],
      ["Cases", `${columnOf(cases, "tag")}${row}`, `04${row}`],
      ["Cases", `${columnOf(cases, "withdrawalDays")}${row}`, 28],
    ]),
  ];

  it("are said to be cut off in the foot book, and only then", async () => {
    const book = resolve("samples/flock-foot-book-empty.xlsx");
    const notices = (read: CalcWorkbook) =>
      [
        textIn(read, "Today", 5, 0),
        textIn(read, "Keep apart", 5, 0),
        textIn(read, "Cases", 2, cases.keys.length),
        textIn(read, "Today", 5, 10),
      ].map((text) => String(text).slice(0, 7));
    const one = await calc.readTyped(book, treated(1));
    expect(textIn(one, "Today", 8, 0)).toBe("045");
    expect(notices(one)).toEqual(["", "", "", ""]);
    const three = await calc.readTyped(book, treated(3));
    expect(textIn(three, "Today", 8, 0)).toBe("045");
    expect(textIn(three, "Today", 9, 0)).toBe("");
    expect(notices(three)).toEqual(["CUT OFF", "CUT OFF", "CUT OFF", ""]);
  });

  it("are said to be cut off on the visit sheet", async () => {
    const read = await calc.readTyped(resolve("samples/visit-sheet-empty.xlsx"), [
      ["Visit", "A30", "footrot"],
      ["Doses", "B4", "medicine"],
      ["Doses", "B5", 20],
      ["Doses", "B6", 200],
      ["Doses", "B34", 75],
      ["Doses", "B35", 60],
    ]);
    expect(String(textIn(read, "Care plan", 3, 1)).slice(0, 7)).toBe("CUT OFF");
    expect(String(textIn(read, "Doses", 32, 2)).slice(0, 7)).toBe("CUT OFF");
  });
});
