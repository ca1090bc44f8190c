// How often signals against the same month, verdicts on a target and the line of all groups hold, by simulation with a
// seed. Run by hand, a minute: npx tsx tests/references/gathers/seasonAndTarget.ts
// Writes the tables beside it; docs/methods/counting.md and watching.md take them in when they are made.
import { prevalenceByGroup } from "../../../src/core/counting/prevalenceByGroup.ts";
import { targetCheck } from "../../../src/core/counting/targetCheck.ts";
import { lameWatch } from "../../../src/core/watching/lameWatch.ts";
import { markdownRows as rows } from "../../../src/build/methods/markdownRows.ts";
import { percent as percentOf } from "../../../src/build/methods/percent.ts";
import { drawsFrom } from "./draws.ts";
import { of, points, spreads, times, write } from "./simulated.ts";

const { binomial, shareOf } = drawsFrom(1811);
const percent = (part: number): string => percentOf(part, 1);

// The share rises and falls by half with the season.
const inMonth = (month: number): number => 0.05 * (1 + 0.5 * Math.sin((2 * Math.PI * month) / 12));
write(
  "season",
  rows(
    ["years before", "spread of the true shares", 'beyond a limit, "month"', 'beyond a limit, "all"', 'five times the usual share is seen, "month"'],
    [1, 2, 3, 5].flatMap((years) =>
      spreads.map((correlation) => {
        let [month, all, caught] = [0, 0, 0];
        for (let turn = 0; turn < times; turn++) {
          // A gather a month; the last is in a month that goes round the year with the turns.
          const count = years * 12 + 1;
          const start = turn % 12;
          const days = of(count, (index) => 46_000 + Math.round(30.4375 * (start + index)));
          const seen = of(count, () => 100);
          const lame = seen.map((n, index) => binomial(n, shareOf(inMonth(start + index), correlation)));
          const beyond = (counts: readonly number[], usualLevel: "month" | "all"): number => {
            const last = lameWatch(days, counts, seen, { baselineGathers: count - 1, usualLevel }).at(-1);
            return /limit/.test(last?.signal ?? "") ? 1 : 0;
          };
          month += beyond(lame, "month");
          all += beyond(lame, "all");
          const much = binomial(100, Math.min(1, 5 * inMonth(start + count - 1)));
          caught += beyond([...lame.slice(0, -1), much], "month");
        }
        return [String(years), points(correlation), ...[month, all, caught].map((found) => percent(found / times))];
      }),
    ),
  ),
);

write(
  "target",
  rows(
    ["gathers of 100", "spread of their true shares", "settled though the truth is the target", "settled on the wrong side, truth 4 %", "settled on the right side, truth 2 %", "said of these counts only, the truth is the target"],
    [1, 2, 3, 5, 12].flatMap((gathers) =>
      spreads.map((correlation) => {
        let [either, wrong, right, ofCounts] = [0, 0, 0, 0];
        const seen = of(gathers, () => 100);
        const verdict = (truth: number): string =>
          targetCheck(
            seen.map((n) => binomial(n, shareOf(truth, correlation))),
            seen,
            { target: 0.05, confidence: 0.95 },
          );
        for (let turn = 0; turn < times; turn++) {
          const onTarget = verdict(0.05);
          if (/^(?:below|above) target$/.test(onTarget)) either++;
          if (/in these counts/.test(onTarget)) ofCounts++;
          if (verdict(0.04) === "above target") wrong++;
          if (verdict(0.02) === "below target") right++;
        }
        return [String(gathers), points(correlation), ...[either, wrong, right, ofCounts].map((found) => percent(found / times))];
      }),
    ),
  ),
);

write(
  "groups",
  rows(
    ["gathers of two groups of 100", "spread of their true shares", "range of a group holds 3 %", 'range of "all" holds 5.5 %'],
    [2, 3, 5, 12].flatMap((gathers) =>
      spreads.map((correlation) => {
        let [one, all] = [0, 0];
        const groups = of(2 * gathers, (index) => (index % 2 === 0 ? "ewes" : "lambs"));
        const seen = groups.map(() => 100);
        const dates = groups.map((_, index) => 46_000 + 30 * Math.floor(index / 2));
        for (let turn = 0; turn < times; turn++) {
          const lame = groups.map((group) => binomial(100, shareOf(group === "ewes" ? 0.03 : 0.08, correlation)));
          const lines = prevalenceByGroup(groups, lame, seen, { confidence: 0.95, dates });
          const holds = (index: number, truth: number): number => {
            const { low = 1, high = 0 } = lines[index] ?? {};
            return low <= truth && truth <= high ? 1 : 0;
          };
          one += holds(0, 0.03);
          all += holds(2, 0.055);
        }
        return [String(gathers), points(correlation), percent(one / times), percent(all / times)];
      }),
    ),
  ),
);
