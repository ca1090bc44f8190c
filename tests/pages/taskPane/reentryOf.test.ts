import { expect, it } from "vitest";
import { reentryOf } from "../../../src/pages/taskPane/reentryOf.ts";

const none: ReadonlySet<string> = new Set();
const hidden = '=IFERROR(FOOT.FLOCKPREV(A1,B1),"")';

it.each([
  ["an error that shows", "=FOOT.FLOCKPREV(A1,B1)", "#NAME?", "=FOOT.FLOCKPREV(A1,B1)"],
  ["the same inside what catches other errors", "=IFNA(foot.about(),1)", "#NAME?", "=IFNA(FOOT.ABOUT(),1)"],
  ["a spelling of files under a blank", '=IFERROR(_xldudf_FOOT_FLOCKPREV(A1,B1),"")', "", hidden],
  ["a spelling of files under its last answer", "=_xldudf_FOOT_ABOUT()", "Soundfold", "=FOOT.ABOUT()"],
  ["a spelling of another program", '=IFERROR(foot_flockprev(A1,B1),"")', "", hidden],
  ["one more", '=IFERROR(SOUNDFOLD.FOOT.FLOCKPREV(A1,B1),"")', 0, hidden],
  ["the file of another add-in in front", '=IFERROR(Other.xla!_xldudf_FOOT_FLOCKPREV(A1,B1),"")', "", hidden],
])("%s is entered again, spelt as it is typed", (_, formula, shown, again) => {
  expect(reentryOf(formula, shown, none)).toEqual({ formula: again, asPrecaution: false });
});

it.each([
  [hidden],
  ["=IFERROR( foot.flockprev(A1, B1) , 0)"],
  ["=IF(ISERROR(FOOT.FLOCKPREV(A1,B1)),0,1)"],
  ['=IF(A1="","",FOOT.FLOCKPREV(A1,B1))'],
  ["=IFNA(A1,FOOT.FLOCKPREV(A1,B1))"],
  ["=SUM(1,_xlfn.IFS(A1=1,2,A1=2,(1+FOOT.FLOCKPREV(A1,B1))))"],
  ["=COUNT(FOOT.FLOCKPREV(A1,B1))"],
  ['=LET(share,FOOT.FLOCKPREV(A1,B1),IFERROR(share,""))'],
  ["=IFERROR(SUM(FOOT.FLOCKPREV({1,2},{3,4})),0)"],
])("%s may hide that it is unknown, and is entered to the letter", (formula) => {
  for (const shown of ["", 0, "#N/A"]) expect(reentryOf(formula, shown, none)).toEqual({ formula, asPrecaution: true });
});

it.each([
  ["the answer shows", "=FOOT.FLOCKPREV(A1,B1)", 0],
  ["so it does in small letters", "=foot.flockprev(A1,B1)", 0.05],
  ["another error shows", "=FOOT.FLOCKPREV(A1,B1)", "#VALUE!"],
  ["what is caught is another's", '=FOOT.ABOUT()&IFERROR(A1,"")', "Soundfold"],
  ["what is caught is its argument", "=FOOT.FLOCKPREV(IFERROR(A1,0),IF(B1>0,B1,1))", 0.05],
  ["the bracket before is closed", "=IF(A1,1,2)+(FOOT.ABOUT())", 0],
  ["the question itself is never skipped", "=IF(FOOT.FLOCKPREV(A1,B1)>0.05,1,0)", 1],
  ["IFNA lets it show", "=IFNA(FOOT.FLOCKPREV(A1,B1),0)", 0.05],
  ["a name holds what nothing catches", "=LET(share,FOOT.FLOCKPREV(A1,B1),share+1)", 1],
  ["the function is none of ours", '=IFERROR(foot_length(A1),"")', ""],
  ["it is in a text", '=IFERROR(A1,"FOOT.ABOUT()")', ""],
  ["there is no formula", 12, 12],
])("nothing is entered where %s", (_, formula, shown) => {
  expect(reentryOf(formula, shown, none)).toBeUndefined();
});

it("a name that the workbook defines itself is none of ours, though it is spelt like one", () => {
  expect(reentryOf('=IFERROR(foot_flockprev(A1,B1),"")', "", new Set(["foot_flockprev"]))).toBeUndefined();
});

it.each([
  ["FOOT_FLOCKPREV(A1,B1)", "=FOOT.FLOCKPREV(A1,B1)", "usable"],
  ['IFERROR(foot_flockprev(A1,B1),"""")', '=IFERROR(FOOT.FLOCKPREV(A1,B1),"")', "usable"],
  ["ArrayFormula(FOOT_FLOCKPREV(A1,B1))", "=ArrayFormula(FOOT.FLOCKPREV(A1,B1))", "foreign"],
])("what Google Sheets left of %s becomes a formula again", (text, formula, left) => {
  expect(reentryOf(`=IFERROR(__xludf.DUMMYFUNCTION("${text}"),0.05)`, 0.05, none)).toEqual({
    formula,
    asPrecaution: false,
    left,
  });
});

it.each([['"COMPUTED_VALUE"'], ["SPLIT(A1,B1)"], ["foot_length(A1)"]])("what it left of %s is none of ours", (text) => {
  const formula = `=IFERROR(__xludf.DUMMYFUNCTION("${text.replaceAll('"', '""')}"),1)`;
  expect(reentryOf(formula, 1, none)).toBeUndefined();
});
