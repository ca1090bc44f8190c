// How often the ranges and signals over several gathers hold, by simulation with a seed. Run by hand, a few minutes:
//   npx tsx tests/references/gathers/coverage.ts
// Writes the tables beside it; docs/methods/counting.md, watching.md and recovery.md take them in when they are made.
import { lameWatch } from "../../../src/core/watching/lameWatch.ts";
import { lookAgreement } from "../../../src/core/counting/lookAgreement.ts";
import { pairedChange } from "../../../src/core/counting/pairedChange.ts";
import { prevalenceRange } from "../../../src/core/counting/prevalenceRange.ts";
import { prevalenceTrend } from "../../../src/core/counting/prevalenceTrend.ts";
import { endsByDay, type Watched } from "../../../src/core/statistics/endsByDay.ts";
import { soundBy } from "../../../src/core/animals/soundBy.ts";
import { markdownRows as rows } from "../../../src/build/methods/markdownRows.ts";
import { percent as percentOf } from "../../../src/build/methods/percent.ts";
import { drawsFrom } from "./draws.ts";
import { of, points, spreads, times, write } from "./simulated.ts";

const { share: random, whole, binomial, shareOf } = drawsFrom(18);
const percent = (part: number): string => percentOf(part, 1);

write(
  "range",
  rows(
    ["gathers of 100", "spread of their true shares (5 % in the long run)", "PREVRANGE", "mean width", 'spread "chance"'],
    [2, 3, 5, 12].flatMap((gathers) =>
      spreads.map((correlation) => {
        let [ours, plain, width] = [0, 0, 0];
        const seen = of(gathers, () => 100);
        for (let turn = 0; turn < times; turn++) {
          const lame = seen.map((n) => binomial(n, shareOf(0.05, correlation)));
          const wide = prevalenceRange(lame, seen, { confidence: 0.95 });
          const narrow = prevalenceRange(lame, seen, { confidence: 0.95, spread: "chance" });
          if (wide.low <= 0.05 && 0.05 <= wide.high) ours++;
          if (narrow.low <= 0.05 && 0.05 <= narrow.high) plain++;
          width += wide.high - wide.low;
        }
        return [String(gathers), points(correlation), percent(ours / times), percent(width / times), percent(plain / times)];
      }),
    ),
  ),
);

write(
  "trend",
  rows(
    ["gathers of 100", "spread of their true shares", "PREVTREND", 'spread "chance"'],
    [2, 3, 5, 12].flatMap((gathers) =>
      spreads.map((correlation) => {
        let [ours, plain] = [0, 0];
        const seen = of(gathers, () => 100);
        const days = seen.map((_, index) => 46000 + 30 * index);
        for (let turn = 0; turn < times; turn++) {
          const lame = seen.map((n) => binomial(n, shareOf(0.05, correlation)));
          if (prevalenceTrend(days, lame, seen).p < 0.05) ours++;
          if (prevalenceTrend(days, lame, seen, "chance").p < 0.05) plain++;
        }
        return [String(gathers), points(correlation), percent(ours / times), percent(plain / times)];
      }),
    ),
  ),
);

write(
  "chart",
  rows(
    ["gathers in the baseline", "spread of the true shares", "beyond a limit, LAMEWATCH", '3sigma', 'spread "chance"', "five times the usual share is seen"],
    [3, 6, 12, 24].flatMap((base) =>
      spreads.map((correlation) => {
        let [ours, sigma, plain, caught] = [0, 0, 0, 0];
        const seen = of(base + 1, () => 100);
        const days = seen.map((_, index) => 46000 + 30 * index);
        for (let turn = 0; turn < times; turn++) {
          const lame = seen.map((n) => binomial(n, shareOf(0.05, correlation)));
          const beyond = (counts: readonly number[], choice = {}): number =>
            /limit/.test(lameWatch(days, counts, seen, { baselineGathers: base, ...choice }).at(-1)?.signal ?? "") ? 1 : 0;
          ours += beyond(lame);
          sigma += beyond(lame, { limits: "3sigma" });
          plain += beyond(lame, { spread: "chance" });
          caught += beyond([...lame.slice(0, -1), binomial(100, 0.25)]);
        }
        return [String(base), points(correlation), ...[ours, sigma, plain, caught].map((count) => percent(count / times))];
      }),
    ),
  ),
);

write(
  "recovery",
  rows(
    ["sheep", "looks", "left lame", "true share sound by day 14", "SOUNDBY holds it", "no limits given"],
    [10, 20, 40].flatMap((sheep) =>
      [1, 7, 14].flatMap((between) =>
        [0, 0.02].map((leaving) => {
          // Sound at an even rate of 0.08 a day, leaving at `leaving` a day, both by whole days.
          const rate = 0.08;
          let truth = 0;
          for (let day = 1, open = 1; day <= 14; day++) {
            truth += open * rate;
            open *= 1 - rate - leaving;
          }
          let [held, none] = [0, 0];
          for (let turn = 0; turn < times; turn++) {
            const flock = of(sheep, (): Watched => {
              let sound = 0;
              let gone = Infinity;
              for (let day = 1; sound === 0 && gone === Infinity && day < 200; day++) {
                const chance = random();
                if (chance < rate) sound = day;
                else if (chance < rate + leaving) gone = day;
              }
              const first = whole(1, between);
              let [last, look] = [0, first];
              const end = 28 + whole(0, 20);
              for (; look <= end; last = look, look += between) {
                if (gone < look) return { days: gone, end: "left" };
                if (sound > 0 && sound <= look) return { days: look, end: "sound", lameUntil: last };
              }
              return gone <= end ? { days: gone, end: "left" } : { days: last, end: "lame" };
            });
            const { low, high } = soundBy(endsByDay(flock), 14, 0.95);
            if (low === undefined || high === undefined) none++;
            else if (low <= truth && truth <= high) held++;
          }
          return [
            String(sheep),
            between === 1 ? "every day" : `every ${between} days, each sheep on days of its own`,
            leaving === 0 ? "none" : "2 in 100 a day",
            percent(truth),
            percent(held / (times - none)),
            percent(none / times),
          ];
        }),
      ),
    ),
  ),
);

write(
  "paired",
  rows(
    ["sheep seen twice", "lame that stay lame", "PAIREDCHANGE", "PREVCHANGE"].concat("mean width, PAIREDCHANGE", "mean width of two separate looks"),
    [60, 200].flatMap((sheep) =>
      [0.3, 0.6, 0.9].map((stay) => {
        // 10 % lame at the first look; of the sound 2 % become lame.
        const truth = 0.9 * 0.02 - 0.1 * (1 - stay);
        let [ours, plain, width, apart] = [0, 0, 0, 0];
        for (let turn = 0; turn < times; turn++) {
          const lame = binomial(sheep, 0.1);
          const becameSound = binomial(lame, 1 - stay);
          const becameLame = binomial(sheep - lame, 0.02);
          const paired = pairedChange({ becameLame, becameSound, seen: sheep }, 0.95);
          const after = lame - becameSound + becameLame;
          const [one, other] = [lame, after].map((x) => prevalenceRange([x], [sheep], { confidence: 0.95 }));
          if (one === undefined || other === undefined) continue;
          const [p0, p1] = [lame / sheep, after / sheep];
          const low = p1 - p0 - Math.hypot(p1 - other.low, one.high - p0);
          const high = p1 - p0 + Math.hypot(other.high - p1, p0 - one.low);
          if (paired.low <= truth && truth <= paired.high) ours++;
          if (low <= truth && truth <= high) plain++;
          width += paired.high - paired.low;
          apart += high - low;
        }
        return [String(sheep), percent(stay), percent(ours / times), percent(plain / times), percent(width / times), percent(apart / times)];
      }),
    ),
  ),
);

write(
  "lookers",
  rows(
    ["sheep", "lame", "true kappa", "range of kappa holds it", "range of AC1 holds its own"],
    [20, 40, 100].flatMap((sheep) =>
      [0.05, 0.2].flatMap((lame) =>
        [0.4, 0.8].map((kappa) => {
          const both = lame * lame + kappa * lame * (1 - lame);
          const chance = 2 * lame * (1 - lame);
          const ac1 = (1 - 2 * (lame - both) - chance) / (1 - chance);
          let [one, other, told] = [0, 0, 0];
          for (let turn = 0; turn < times; turn++) {
            const looks = of(sheep, () => {
              const at = random();
              return at < both ? "ll" : at < lame ? "ls" : at < 2 * lame - both ? "sl" : "ss";
            });
            if (new Set(looks.join("")).size < 2) continue;
            told++;
            const found = lookAgreement(looks.map((look) => look.charAt(0)), looks.map((look) => look.charAt(1)), 0.95);
            if ((found[1]?.low ?? 2) <= kappa && kappa <= (found[1]?.high ?? -2)) one++;
            if ((found[2]?.low ?? 2) <= ac1 && ac1 <= (found[2]?.high ?? -2)) other++;
          }
          return [String(sheep), percent(lame), String(kappa), percent(one / told), percent(other / told)];
        }),
      ),
    ),
  ),
);
