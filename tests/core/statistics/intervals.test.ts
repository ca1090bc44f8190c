import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../src/cells/problem.ts";
import { exactInterval } from "../../../src/core/statistics/exactInterval.ts";
import { finiteFlockInterval } from "../../../src/core/statistics/finiteFlockInterval.ts";
import type { Interval } from "../../../src/core/statistics/interval.ts";
import { jeffreysInterval } from "../../../src/core/statistics/jeffreysInterval.ts";
import { intervalMethods, proportionInterval } from "../../../src/core/statistics/proportionInterval.ts";
import { wilsonInterval } from "../../../src/core/statistics/wilsonInterval.ts";
import { expectNear } from "../near.ts";

// R 4.2 stats: qbeta for exact and Jeffreys, Wilson's formula; the printed four decimals of Newcombe 1998 (Stat Med 17:857) agree.
const worked: [x: number, n: number, wilson: number[], exact: number[], jeffreys: number[]][] = [
  [81, 263, [0.2552885199, 0.366209577], [0.2527367456, 0.3676219226], [0.254521935, 0.3656474992]],
  [15, 148, [0.0623863995, 0.1604872417], [0.0578440101, 0.1616504903], [0.060448517, 0.1576431435]],
  [0, 20, [0, 0.1611251581], [0, 0.168433471], [0, 0.1166389829]],
  [1, 29, [0.0061132143, 0.1717552188], [0.0008726469, 0.1776442955], [0.0037461736, 0.150077686]],
  [6, 300, [0.0091976316, 0.0429396208], [0.007374162, 0.0430210827], [0.0083899727, 0.0407557591]],
];

const isInterval = ({ low, high }: Interval, [l = NaN, h = NaN]: number[]) => {
  expect(low).toBeCloseTo(l, 10);
  expect(high).toBeCloseTo(h, 10);
};

describe("intervals for a share", () => {
  it.each(worked)("%i of %i, 95 %%", (x, n, wilson, exact, jeffreys) => {
    isInterval(wilsonInterval(x, n, 0.95), wilson);
    isInterval(exactInterval(x, n, 0.95), exact);
    isInterval(jeffreysInterval(x, n, 0.95), jeffreys);
  });

  // Lame sheep counted in open data: Lewis et al 2022, Front Vet Sci 9:1027020.
  it("14 of 94", () => isInterval(wilsonInterval(14, 94, 0.95), [0.0908404796, 0.2345988506]));

  // A limit of .00177 for 1 of 29 is what libraries with a changed Wilson interval give: the plain one is meant.
  it("leaves Wilson's limit unchanged at one lame", () =>
    expect(wilsonInterval(1, 29, 0.95).low).toBeGreaterThan(0.006));

  // Equal-tail inversion of phyper, R 4.2 stats.
  it.each([
    [3, 20, 100, 5, 35],
    [0, 20, 100, 0, 15],
    [15, 148, 400, 27, 59],
    [10, 100, 100, 10, 10],
  ])("%i of %i in a flock of %i", (x, n, N, low, high) => {
    expect(finiteFlockInterval(x, n, N, 0.95)).toEqual({ low: low / N, high: high / N });
  });

  it("uses Wilson unless told, and the finite interval when the flock is known", () => {
    expect(proportionInterval(3, 20, { confidence: 0.9 })).toEqual(wilsonInterval(3, 20, 0.9));
    expect(proportionInterval(3, 20, { confidence: 0.9, method: "exact" })).toEqual(exactInterval(3, 20, 0.9));
    expect(proportionInterval(3, 20, { confidence: 0.95, flockSize: 100 })).toEqual({ low: 0.05, high: 0.35 });
  });

  it("refuses a flock smaller than the sheep seen", () => {
    expect(() => proportionInterval(3, 20, { confidence: 0.95, flockSize: 19 })).toThrow(Problem);
    expect(() => proportionInterval(3, 20, { confidence: 0.95, flockSize: 19 })).toThrow(
      "flock_size: 19 is fewer than the 20 sheep seen",
    );
  });
});

const confidences = fc.double({ min: 0.5, max: 0.9999, noNaN: true });
const counts = fc.integer({ min: 1, max: 5000 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

describe.each(Object.entries(intervalMethods))("%s", (_, interval) => {
  it("holds the share and stays within 0 and 1", () => {
    fc.assert(
      fc.property(counts, confidences, ([x, n], confidence) => {
        const { low, high } = interval(x, n, confidence);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(x / n);
        expect(high).toBeGreaterThanOrEqual(x / n);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("mirrors when sound and lame change places", () => {
    fc.assert(
      fc.property(counts, confidences, ([x, n], confidence) => {
        const one = interval(x, n, confidence);
        const other = interval(n - x, n, confidence);
        expect(one.low).toBeCloseTo(1 - other.high, 12);
        expect(one.high).toBeCloseTo(1 - other.low, 12);
      }),
    );
  });

  it("narrows as more sheep are seen, widens with confidence", () => {
    fc.assert(
      fc.property(counts, confidences, ([x, n], confidence) => {
        const width = ({ low, high }: Interval) => high - low;
        const here = width(interval(x, n, confidence));
        expect(width(interval(2 * x, 2 * n, confidence))).toBeLessThan(here);
        expect(width(interval(x, n, (1 + confidence) / 2))).toBeGreaterThan(here);
      }),
    );
  });
});

describe("finite flock", () => {
  const flocks = fc
    .integer({ min: 1, max: 800 })
    .chain((N) => fc.tuple(fc.constant(N), fc.integer({ min: 1, max: N })))
    .chain(([N, n]) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n), fc.constant(N)));

  it("lies within what the flock can hold, around the share, and mirrors", () => {
    fc.assert(
      fc.property(flocks, confidences, ([x, n, N], confidence) => {
        const { low, high } = finiteFlockInterval(x, n, N, confidence);
        expect(Math.round(low * N)).toBeGreaterThanOrEqual(x);
        expect(Math.round(high * N)).toBeLessThanOrEqual(N - (n - x));
        // Whole sheep: the share itself may fall between two of them.
        expect(low * N).toBeLessThan((x / n) * N + 1);
        expect(high * N).toBeGreaterThan((x / n) * N - 1);
        const mirrored = finiteFlockInterval(n - x, n, N, confidence);
        expect(Math.round(mirrored.low * N)).toBe(N - Math.round(high * N));
      }),
    );
  });

  it("is the share itself when the whole flock was seen", () => {
    fc.assert(
      fc.property(counts, confidences, ([x, n], confidence) => {
        expect(finiteFlockInterval(x, n, n, confidence)).toEqual({ low: x / n, high: x / n });
      }),
    );
  });

  it("comes near the exact interval in a very large flock", () => {
    const finite = finiteFlockInterval(12, 200, 1e7, 0.95);
    const { low, high } = exactInterval(12, 200, 0.95);
    expectNear(finite.low, low, 1e-4);
    expectNear(finite.high, high, 1e-4);
  });
});
