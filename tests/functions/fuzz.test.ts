import { describe, expect, it } from "vitest";
import { runFuzz } from "../fuzz/runFuzz.ts";

// `npm run fuzz` makes a million of these, with a new seed each time.
const calls = 12_000;

describe("functions under any cells", () => {
  const seed = 20_260_314;

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
    60_000,
  );
});
