import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../src/cells/problem.ts";
import { siteMl } from "../../../src/core/treatment/siteMl.ts";

const share = (volume: number, sites: number, maxPerSiteMl?: number, markMl = 0.1) =>
  siteMl(volume, { sites, maxPerSiteMl, markMl });

describe("siteMl", () => {
  // 7.5 ml at most 5 ml a site → 2 × 3.75: common practice, worked by hand; at marks of 0.1 ml 3.75 cannot be measured.
  it("shares evenly where the marks allow", () => {
    expect(share(7.5, 2, 5, 0.05)).toEqual([3.75, 3.75]);
    expect(share(7.5, 2, 5)).toEqual([3.8, 3.7]);
    expect(share(7.5, 1)).toEqual([7.5]);
    expect(share(0.3, 3)).toEqual([0.1, 0.1, 0.1]);
    expect(share(60, 2)).toEqual([30, 30]);
  });

  it("adds sites rather than passing the most allowed, even by rounding", () => {
    expect(share(12, 2, 5)).toEqual([4, 4, 4]);
    expect(share(7.5, 2, 3.75)).toEqual([2.5, 2.5, 2.5]);
    expect(share(7.4, 2, 3.75)).toEqual([3.7, 3.7]);
    expect(share(20, 2, 2)).toEqual(new Array(10).fill(2));
  });

  it("takes a volume that carries a binary trace for what it is", () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(share(0.1 + 0.2, 3)).toEqual([0.1, 0.1, 0.1]);
  });

  it.each<[number, number, number | undefined, string]>([
    [7.53, 2, undefined, "volume_ml: 7.53 ml does not fall on a mark of 0.1 ml"],
    [0.1, 2, undefined, "volume_ml: 0.1 ml is too little to share over 2 sites"],
    [20.1, 2, 2, "max_per_site_ml: 20.1 ml at most 2 ml a site needs 11 sites"],
    [30, 2, 2, "max_per_site_ml: 30 ml at most 2 ml a site needs 15 sites"],
    [30, 2, 0.05, "max_per_site_ml: 0.05 ml is less than one mark"],
    [30, 11, undefined, "sites: 11 sites are more than 10"],
    [60.1, 2, undefined, "volume_ml: 60.1 ml for one animal cannot be right"],
  ])("refuses %d ml over %i sites at most %s", (volume, sites, most, message) => {
    expect(() => share(volume, sites, most)).toThrow(Problem);
    expect(() => share(volume, sites, most)).toThrow(message);
  });

  it("adds up exactly, is as even as the marks allow, and never passes the most", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(5, 10, 20, 25, 50),
        fc.integer({ min: 10, max: 120 }),
        fc.integer({ min: 1, max: 10 }),
        fc.option(fc.integer({ min: 100, max: 1000 }), { nil: undefined }),
        (hundredths, marks, sites, mostHundredths) => {
          const inHundredths = (ml: number): number => {
            const whole = Math.round(ml * 100);
            expect(ml).toBe(whole / 100);
            return whole;
          };
          const most = mostHundredths === undefined ? undefined : mostHundredths / 100;
          let parts: readonly number[];
          try {
            parts = share((marks * hundredths) / 100, sites, most, hundredths / 100);
          } catch (error) {
            expect(error).toBeInstanceOf(Problem);
            expect((error as Problem).message).toContain("more than 10");
            return;
          }
          const wholes = parts.map(inHundredths);
          expect(wholes.reduce((sum, part) => sum + part, 0)).toBe(marks * hundredths);
          expect(Math.max(...wholes) - Math.min(...wholes)).toBeLessThanOrEqual(hundredths);
          expect(wholes.every((part) => part > 0 && part % hundredths === 0)).toBe(true);
          expect(wholes.length).toBeGreaterThanOrEqual(sites);
          if (mostHundredths !== undefined) {
            expect(Math.max(...wholes)).toBeLessThanOrEqual(mostHundredths);
            // No site more than needed: with one fewer some part would pass the most.
            if (wholes.length > sites)
              expect(Math.ceil(marks / (wholes.length - 1)) * hundredths).toBeGreaterThan(mostHundredths);
          } else expect(wholes).toHaveLength(sites);
        },
      ),
    );
  });
});
