import { expect, it } from "vitest";
import { typedAgain } from "../../../src/pages/taskPane/typedAgain.ts";

it.each([
  ["=_xldudf_FOOT_ABOUT()", "=FOOT.ABOUT()"],
  ["=foot.flockprev(A1,B1)", "=FOOT.FLOCKPREV(A1,B1)"],
  [
    '=IFERROR(_xldudf_FOOT_FLOCKPREV(A1,B1),"_xldudf_FOOT_FLOCKPREV(")',
    '=IFERROR(FOOT.FLOCKPREV(A1,B1),"_xldudf_FOOT_FLOCKPREV(")',
  ],
  ["=Other.xla!_xldudf_FOOT_ABOUT()", "=FOOT.ABOUT()"],
  ["='C:\\my add-ins\\Other.xla'!_xldudf_FOOT_ABOUT()&Flock!A1", "=FOOT.ABOUT()&Flock!A1"],
  ["=1+[2]!_xldudf_FOOT_ABOUT()", "=1+FOOT.ABOUT()"],
  ["=1+[2]Other.xla!_xlfn._xldudf_FOOT_ABOUT()", "=1+FOOT.ABOUT()"],
  ["=@_xldudf_FOOT_ABOUT()&FOOT.ABOUT()", "=@FOOT.ABOUT()&FOOT.ABOUT()"],
])("%s is entered as %s", (formula, again) => {
  expect(typedAgain(formula)).toBe(again);
});

it.each([["=SUM(A1)"], ["=OTHER.NAME(A1)"], ['="FOOT.ABOUT()"'], ["FOOT.ABOUT()"], [12], [""], ['=FOOT.ABOUT("']])(
  "%s is left alone",
  (formula) => {
    expect(typedAgain(formula)).toBeUndefined();
  },
);

it("a name that the workbook defines itself is left alone, beside a function of ours", () => {
  const theirs = new Set(["foot_total"]);
  expect(typedAgain("=FOOT_TOTAL(A1)", theirs)).toBeUndefined();
  expect(typedAgain("=foot_total(A1)+foot_about()", theirs)).toBe("=foot_total(A1)+FOOT.ABOUT()");
});
