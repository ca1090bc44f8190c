// How often the ranges of a change, of rates and of a look that errs hold, summed exactly over the counts that can come,
// and how often DRIFTWATCH calls out, by simulation with a seed. Run by hand, a minute:
//   npx tsx tests/references/gathers/twoTimes.ts
// Writes the tables beside it; docs/methods/counting.md and watching.md take them in when they are made.
import { markdownRows as rows } from "../../../src/build/methods/markdownRows.ts";
import { percent as percentOf } from "../../../src/build/methods/percent.ts";
import { prevalenceChange } from "../../../src/core/counting/prevalenceChange.ts";
import { truePrevalence } from "../../../src/core/counting/truePrevalence.ts";
import { binomialDensity } from "../../../src/core/statistics/binomialDensity.ts";
import type { Interval } from "../../../src/core/statistics/interval.ts";
import { poissonDensity } from "../../../src/core/statistics/poissonDensity.ts";
import { driftWatch } from "../../../src/core/watching/driftWatch.ts";
import { newCaseRate } from "../../../src/core/watching/newCaseRate.ts";
import { rateChange } from "../../../src/core/watching/rateChange.ts";
import { drawsFrom } from "./draws.ts";
import { of, points, spreads, times, write } from "./simulated.ts";

const { binomial, shareOf } = drawsFrom(1812);
const percent = (part: number): string => percentOf(part, 1);

/** Counts with their chances, of which those left out come less often than once in ten million. */
type Counts = readonly (readonly [count: number, chance: number])[];
const counted = (most: number, chance: (x: number) => number): Counts =>
  of(most + 1, (x) => [x, chance(x)] as const).filter(([, of]) => of > 1e-7);
const lameOf = (n: number, share: number): Counts => counted(n, (x) => binomialDensity(x, n, share));
const casesOf = (mean: number): Counts => counted(Math.ceil(mean + 12 * Math.sqrt(mean) + 12), (x) => poissonDensity(x, mean));

const holds = ({ low, high }: Interval, truth: number): boolean => low <= truth + 1e-12 && truth <= high + 1e-12;
const chanceOf = (counts: Counts, that: (x: number) => boolean): number =>
  counts.reduce((sum, [x, chance]) => sum + (that(x) ? chance : 0), 0);
const chanceOfBoth = (one: Counts, other: Counts, that: (x: number, y: number) => boolean): number =>
  one.reduce((sum, [x, chance]) => sum + chance * chanceOf(other, (y) => that(x, y)), 0);

write(
  "change",
  rows(
    ["sheep looked at each time", "share before", "share after", "range of PREVCHANGE holds the change", "p below 0.05", "three gathers each that differ by 3.8 points: range holds it", 'the same by "chance"'],
    [50, 100, 200].flatMap((n) =>
      [
        [0.05, 0.05],
        [0.1, 0.1],
        [0.1, 0.05],
        [0.05, 0.02],
      ].map(([before = 0, after = 0]) => {
        const [one, other] = [lameOf(n, before), lameOf(n, after)];
        const change = (x: number, y: number) => prevalenceChange({ lame: [x], seen: [n] }, { lame: [y], seen: [n] }, 0.95);
        const seen = of(3, () => n);
        let [held, byChance] = [0, 0];
        for (let turn = 0; turn < times; turn++) {
          const [old, now] = [before, after].map((share) => ({ seen, lame: seen.map(() => binomial(n, shareOf(share, 0.03))) }));
          if (old === undefined || now === undefined) continue;
          if (holds(prevalenceChange(old, now, 0.95), after - before)) held++;
          if (holds(prevalenceChange(old, now, 0.95, "chance"), after - before)) byChance++;
        }
        return [
          String(n),
          percent(before),
          percent(after),
          percent(chanceOfBoth(one, other, (x, y) => holds(change(x, y), after - before))),
          percent(chanceOfBoth(one, other, (x, y) => change(x, y).p < 0.05)),
          percent(held / times),
          percent(byChance / times),
        ];
      }),
    ),
  ),
);

write(
  "errs",
  rows(
    ["sheep looked at", "truly lame", "sensitivity 90 %, specificity 97 %, known", "the same, found on 50 lame and 200 sound sheep"],
    [100, 300].flatMap((n) =>
      [0.02, 0.05, 0.1].map((truth) => {
        const look = { sensitivity: 0.9, specificity: 0.97 };
        const called = truth * look.sensitivity + (1 - truth) * (1 - look.specificity);
        let held = 0;
        for (let turn = 0; turn < times; turn++) {
          const found = truePrevalence(
            [binomial(n, called)],
            [n],
            {
              sensitivity: binomial(50, look.sensitivity) / 50,
              specificity: binomial(200, look.specificity) / 200,
              sensitivityFrom: 50,
              specificityFrom: 200,
            },
            0.95,
          );
          if (holds(found, truth)) held++;
        }
        return [
          String(n),
          percent(truth),
          percent(chanceOf(lameOf(n, called), (x) => holds(truePrevalence([x], [n], look, 0.95), truth))),
          percent(held / times),
        ];
      }),
    ),
  ),
);

write(
  "rates",
  rows(
    ["cases to be expected", "range of NEWCASERATE holds the rate", "RATECHANGE, nothing changed: range holds 1", "p below 0.05", "RATECHANGE, twice as many after: range holds 2"],
    [1, 3, 10, 30].map((mean) => {
      const cases = casesOf(mean);
      const days = 1000;
      const change = (x: number, y: number) => rateChange({ cases: x, days }, { cases: y, days }, 0.95);
      // Without a case at either time there is no ratio, and RATECHANGE says so.
      const told = 1 - Math.exp(-2 * mean);
      const holdsRatio = (x: number, y: number, ratio: number): boolean => x + y > 0 && holds(change(x, y), ratio);
      return [
        String(mean),
        percent(chanceOf(cases, (x) => holds(newCaseRate(x, days, 0.95, days), mean))),
        percent(chanceOfBoth(cases, cases, (x, y) => holdsRatio(x, y, 1)) / told),
        percent(chanceOfBoth(cases, cases, (x, y) => x + y > 0 && change(x, y).p < 0.05) / told),
        percent(chanceOfBoth(cases, casesOf(2 * mean), (x, y) => holdsRatio(x, y, 2)) / (1 - Math.exp(-3 * mean))),
      ];
    }),
  ),
);

write(
  "drift",
  rows(
    ["gathers of 100", "spread of their true shares", "calls out though nothing changed", 'spread "chance"', "calls out when the share doubles halfway", 'spread "chance"'],
    [6, 12, 24].flatMap((gathers) =>
      spreads.map((correlation) => {
        const days = of(gathers, (index) => 46_000 + 30 * index);
        const seen = of(gathers, () => 100);
        const calls = (lame: readonly number[], spread: "gathers" | "chance"): number =>
          driftWatch(days, lame, seen, { weight: 0.2, width: 3, target: 0.05, spread }).some(({ signal }) => signal !== "") ? 1 : 0;
        const found = [0, 0, 0, 0];
        for (let turn = 0; turn < times; turn++) {
          const steady = seen.map((n) => binomial(n, shareOf(0.05, correlation)));
          const doubled = seen.map((n, index) => binomial(n, shareOf(index < gathers / 2 ? 0.05 : 0.1, correlation)));
          [calls(steady, "gathers"), calls(steady, "chance"), calls(doubled, "gathers"), calls(doubled, "chance")].forEach(
            (call, index) => {
              found[index] = (found[index] ?? 0) + call;
            },
          );
        }
        return [String(gathers), points(correlation), ...found.map((count) => percent(count / times))];
      }),
    ),
  ),
);
