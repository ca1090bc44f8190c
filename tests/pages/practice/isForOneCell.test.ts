import { expect, it } from "vitest";
import { isForOneCell } from "../../../src/pages/practice/grid/isForOneCell.ts";

it.each([
  "A1+$B$2*'My cases'!C3",
  "SUM(A1:A3)/COUNT(B:B)-1",
  "SUM(Gathers[Lame],-B1)",
  'IF(A1>0,TEXT(A1,"0%"),TRUE)',
  "ROUND(AVERAGE(A1:A3),1)",
  '"A1:A3"&"{1}"',
])("%s gives one value", (formula) => {
  expect(isForOneCell(formula)).toBe(true);
});

it.each([
  "SUM(A1:A3*B1:B3)",
  "SUM(-Gathers[Lame])",
  "SUM(IF(A1:A3>0,1))",
  "A1:A3",
  "Gathers[Lame]",
  "ROUND(A1:A3,0)",
  "groups",
  "{1,2}",
  "SORT(A1:A3)",
  "D5#",
  "FOOT.PREVRANGE(4,20)",
  "LET(x,1,x+1)",
  'COUNTIF(A1:A3,"x")',
])("%s may give more than one, or works on ranges inside", (formula) => {
  expect(isForOneCell(formula)).toBe(false);
});
