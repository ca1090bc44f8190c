import { expect, it } from "vitest";
import { typedAgain } from "../../../src/pages/taskPane/typedAgain.ts";

it.each([
  ["=_xldudf_FOOT_ABOUT()", "=FOOT.ABOUT()"],
  ["=foot.flockprev(A1,B1)", "=FOOT.FLOCKPREV(A1,B1)"],
  [
    '=IFERROR(_xldudf_FOOT_FLOCKPREV(A1,B1),"_xldudf_FOOT_FLOCKPREV(")',
    '=IFERROR(FOOT.FLOCKPREV(A1,B1),"_xldudf_FOOT_FLOCKPREV(")',
  ],
])("%s is entered as %s", (formula, again) => {
  expect(typedAgain(formula)).toBe(again);
});

it.each([["=SUM(A1)"], ["=OTHER.NAME(A1)"], ['="FOOT.ABOUT()"'], ["FOOT.ABOUT()"], [12], [""], ['=FOOT.ABOUT("']])(
  "%s is left alone",
  (formula) => {
    expect(typedAgain(formula)).toBeUndefined();
  },
);
