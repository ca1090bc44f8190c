import { describe, expect, it } from "vitest";
import { runFuzz } from "../fuzz/runFuzz.ts";
import { runSlips } from "../fuzz/tagSlips.ts";

// `npm run fuzz` makes a million of these, with a new seed each time.
const calls = 12_000;

const seed = 20_260_314;

describe("a slip in the tag of an animal in withdrawal, or lame", () => {
  it("never lets it go unnamed, whether in the records or where it is asked for", () => {
    const { made, breaches } = runSlips(4000, seed);
    expect(breaches).toEqual([]);
    for (const [slip, times] of made) expect([slip, times > 50]).toEqual([slip, true]);
  }, 300_000);
});

describe("functions under any cells", () => {
  it.each([calls])(
    "finds nothing wrong in %i calls",
    (wanted) => {
      const report = runFuzz({ seed, calls: wanted });
      expect(report.violations).toEqual([]);
      expect(report.calls).toBeGreaterThanOrEqual(wanted);
      for (const [name, { calls: made, answered }] of report.functions) {
        expect([name, made > 50]).toEqual([name, true]);
        // Calls that are all refused would try little.
        expect([name, answered > made * 0.15]).toEqual([name, true]);
      }
      for (const [law, checked] of report.lawsChecked) expect([law, checked > 500]).toEqual([law, true]);
    },
    300_000,
  );
});
