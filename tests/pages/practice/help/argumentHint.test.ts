import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { argumentHint } from "../../../../src/pages/practice/help/argumentHint.ts";

const hint = (before: string) => argumentHint(before, catalogue);

describe("argumentHint", () => {
  it("tells of the argument that the caret is in, with an example of the function's own", () => {
    const first = hint("=FOOT.CLEARDATE(");
    expect(first?.functionName).toBe("FOOT.CLEARDATE");
    expect(first?.argument).toBe("treated");
    expect(first?.example).toMatch(/^For example/);
    expect(hint("=FOOT.CLEARDATE(B2,")?.argument).not.toBe("treated");
  });
  it("leaves out what stands in inner brackets, texts and constants", () => {
    expect(hint('=FOOT.CLEARDATE(IF(A1="a,b(",1,2')?.argument).toBe("treated");
    expect(hint("=FOOT.CLEARDATE(SUM({1,2;3,4")?.argument).toBe("treated");
    expect(hint('=FOOT.CLEARDATE("half a te')?.argument).toBe("treated");
    expect(hint("=1+(FOOT.FLOCKPREV((2")?.functionName).toBe("FOOT.FLOCKPREV");
  });
  it("says so when there are no more arguments, and nothing outside of functions", () => {
    expect(hint("=FOOT.FLOCKPREV(1,2,3,4,5,6,7,8,9")?.sentence).toMatch(/^It takes no more than/);
    expect(hint("=FOOT.FLOCKPREV(1,2)+")).toBeUndefined();
    expect(hint("=SOMETHING(1,")).toBeUndefined();
    expect(hint("FOOT.FLOCKPREV(1,")).toBeUndefined();
  });
  it("has a sentence for every argument of every function", () => {
    for (const definition of catalogue)
      for (const [place, name] of Object.keys(definition.parameters).entries()) {
        const found = hint(`=FOOT.${definition.name}(${",".repeat(place)}`);
        expect(found?.argument).toBe(name);
        expect(found?.sentence).toMatch(/\S.*[.?]$/);
      }
  });
});
