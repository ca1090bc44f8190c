import fc from "fast-check";
import { expect, test } from "vitest";
import { flockRank } from "../../src/core/benchmarking/flockRank.ts";
import { betterThanOthers } from "../../src/workbooks/comparison/betterThanOthers.ts";

test("is what FLOCKRANK gives each flock among the others, to the last digit", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 2, maxLength: 40 }), (shares) => {
      const ranked = shares.map((share) => ({ rank: 1 + shares.filter((other) => other < share).length }));
      const one = shares.map((share, index) => flockRank(share, shares.toSpliced(index, 1), true));
      expect(betterThanOthers(ranked)).toEqual(one);
    }),
  );
});
