import { describe, expect, it } from "vitest";
import { patternFor } from "../../src/writing/format.ts";

describe("the number format of a result", () => {
  it("shows the hour of a date that has one, and only of that", () => {
    expect(patternFor("date", 46091)).toBe("d mmm yyyy");
    expect(patternFor("date", 46091.4375)).toBe("d mmm yyyy hh:mm");
    expect(patternFor("share", 0.25)).toBe("0.0%");
  });

  it("leaves words alone", () => {
    expect(patternFor("date", "no withdrawal days")).toBe("General");
  });
});
