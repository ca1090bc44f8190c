import { expect, it } from "vitest";
import { keptAsText } from "../../../src/pages/taskPane/keptAsText.ts";

it.each([
  ['=IFERROR(__xludf.DUMMYFUNCTION("FOOT_ABOUT()"),"Soundfold")', "=FOOT_ABOUT()"],
  ['=IFERROR(@__xludf.DUMMYFUNCTION("FOOT_SCORES(A1:A3,""locomotion"")"), 0.05)', '=FOOT_SCORES(A1:A3,"locomotion")'],
  ['=IFERROR(__xludf.DUMMYFUNCTION("""COMPUTED_VALUE"""),12)', '="COMPUTED_VALUE"'],
])("%s is the last answer of %s", (formula, kept) => {
  expect(keptAsText(formula)).toBe(kept);
});

it.each([
  ['=IFERROR(FOOT.ABOUT(),"__xludf.DUMMYFUNCTION")'],
  ['=1+IFERROR(__xludf.DUMMYFUNCTION("FOOT_ABOUT()"),1)'],
  ["=IFERROR(__xludf.DUMMYFUNCTION(A1),1)"],
  ["__xludf.DUMMYFUNCTION"],
  [12],
])("%s is none", (formula) => {
  expect(keptAsText(formula)).toBeUndefined();
});
