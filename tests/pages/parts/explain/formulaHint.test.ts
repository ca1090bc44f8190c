import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { formulaHint } from "../../../../src/pages/parts/explain/formulaHint.ts";

const names = catalogue.map(({ name }) => name);
const hint = (formula: string) => formulaHint(formula, names);

describe("formulaHint", () => {
  it("names the nearest function for a misspelt one, and none where none is near", () => {
    expect(hint("=FOOT.FLOKPREV(2,20)")).toBe("There is no FOOT.FLOKPREV. Was FOOT.FLOCKPREV meant?");
    expect(hint("=1+foot.cleardat(B2,28)")).toBe("There is no foot.cleardat. Was FOOT.CLEARDATE meant?");
    expect(hint("=FOOT.XYZXYZ(2)")).toBeUndefined();
  });
  it("adds FOOT. where it was left out or written otherwise, and leaves the spreadsheet's own functions alone", () => {
    expect(hint("=FLOCKPREV(2,20)")).toBe("There is no FLOCKPREV. Was FOOT.FLOCKPREV meant?");
    expect(hint("=FOOT_FLOCKPREV(2,20)")).toBe("There is no FOOT_FLOCKPREV. Was FOOT.FLOCKPREV meant?");
    expect(hint("=SUM(A1:A3)")).toBeUndefined();
    expect(hint('=FOOT.FLOCKPREV("a;FLOCKPREV(",20)')).toBeUndefined();
  });
  it("tells of a semicolon between arguments, and not of one between rows of constants", () => {
    expect(hint("=FOOT.FLOCKPREV(2;20)")).toBe("Here a comma stands between what is given, not a semicolon.");
    expect(hint("=SUM({1;2})")).toBeUndefined();
  });
});
