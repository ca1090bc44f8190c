// What the usual ways give where the project departs from them, by simulation with a seed. Run by hand, some minutes:
//   npx tsx tests/references/gathers/usualWays.ts
// Writes usual.md beside it, which docs/methods/README.md takes in when it is made.
import { markdownRows as rows } from "../../../src/build/methods/markdownRows.ts";
import { percent as percentOf } from "../../../src/build/methods/percent.ts";
import { funnel } from "../../../src/core/benchmarking/funnel.ts";
import { shrunkPrevalence } from "../../../src/core/benchmarking/shrunkPrevalence.ts";
import { lookAgreement } from "../../../src/core/counting/lookAgreement.ts";
import { prevalenceRange } from "../../../src/core/counting/prevalenceRange.ts";
import { weightedShare } from "../../../src/core/counting/weightedShare.ts";
import { betaBinomialFit } from "../../../src/core/statistics/betaBinomialFit.ts";
import { betaQuantile } from "../../../src/core/statistics/betaQuantile.ts";
import { cureSteps } from "../../../src/core/statistics/cureSteps.ts";
import { endsByDay, type Watched } from "../../../src/core/statistics/endsByDay.ts";
import type { Interval } from "../../../src/core/statistics/interval.ts";
import { logLogLimits } from "../../../src/core/statistics/logLogLimits.ts";
import { studentScore } from "../../../src/core/statistics/studentScore.ts";
import { wilsonLimits } from "../../../src/core/statistics/wilsonLimits.ts";
import { drawsFrom } from "./draws.ts";
import { of, times, write } from "./simulated.ts";

const { share: random, whole, binomial, shareOf } = drawsFrom(1813);
const percent = (part: number): string => percentOf(part, 1);
const z = 1.959963984540054;
const holds = ({ low, high }: Interval, truth: number): number => (low <= truth && truth <= high ? 1 : 0);
const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
type Line = readonly [name: string, usual: string, setting: string, usualGives: string, oursGives: string];

function steadied(flocks: number): Line {
  let [usual, ours, all] = [0, 0, 0];
  for (let turn = 0; turn < times / flocks; turn++) {
    const set = of(flocks, () => {
      const share = shareOf(0.05, 0.02);
      const seen = 20 + Math.floor(random() * random() * 281);
      return { share, seen, lame: binomial(seen, share) };
    });
    const { share, spread } = betaBinomialFit(set);
    // Where the fit finds no spread the usual range is a single share, and is left out here.
    if (spread === 0 || spread === Infinity) continue;
    const found = shrunkPrevalence(set.map((_, index) => `${index}`), set.map(({ lame }) => lame), set.map(({ seen }) => seen), 0.95);
    set.forEach((flock, index) => {
      const [a, b] = [share / spread + flock.lame, (1 - share) / spread + flock.seen - flock.lame];
      usual += holds({ low: betaQuantile("lower", 0.025, a, b), high: betaQuantile("upper", 0.025, a, b) }, flock.share);
      ours += holds(found[index] ?? { low: 1, high: 0 }, flock.share);
      all++;
    });
  }
  return ["SHRUNKPREV", "fitted spread taken as known", `${flocks} flocks, correlation 0.02, sets in which a spread is found`, `${percent(usual / all)} held`, `${percent(ours / all)} held`];
}

function widened(): readonly Line[] {
  let [usual95, usual998, ours95, ours998, all] = [0, 0, 0, 0, 0];
  for (let turn = 0; turn < times / 20; turn++) {
    const set = of(20, () => {
      const seen = 20 + Math.floor(random() * random() * 281);
      return { seen, lame: binomial(seen, shareOf(0.05, 0.05)) };
    });
    const share = total(set.map(({ lame }) => lame)) / total(set.map(({ seen }) => seen));
    const variance = share * (1 - share);
    const residuals = set.map(({ lame, seen }) => (lame / seen - share) / Math.sqrt(variance / seen));
    const sorted = [...residuals].sort((one, other) => one - other);
    const [least = 0, most = 0] = [sorted[2], sorted[17]];
    const phi = total(residuals.map((value) => Math.min(Math.max(value, least), most) ** 2)) / 20;
    const weights = set.map(({ seen }) => seen / variance);
    const between = Math.max((20 * phi - 19) / (total(weights) - total(weights.map((w) => w * w)) / total(weights)), 0);
    const words = funnel(set.map((_, index) => `${index}`), set.map(({ lame }) => lame), set.map(({ seen }) => seen), undefined, true);
    set.forEach(({ lame, seen }, index) => {
      const score = Math.abs(lame / seen - share) / Math.sqrt(variance / seen + between);
      usual95 += score > z ? 1 : 0;
      usual998 += score > 3.090232306167813 ? 1 : 0;
      ours95 += words[index]?.word === "within the limits" ? 0 : 1;
      ours998 += words[index]?.word.includes("99.8") ? 1 : 0;
      all++;
    });
  }
  const setting = "20 flocks, correlation 0.05, none out of line";
  return [
    ["FUNNEL, flocks_differ", "winsorised spread taken as known, normal limits", setting, `${percent(usual95 / all)} beyond 95 % limits`, `${percent(ours95 / all)}`],
    ["FUNNEL, flocks_differ", "the same", setting, `${percent(usual998 / all)} beyond 99.8 % limits`, `${percent(ours998 / all)}`],
  ];
}

function twoGathers(): Line {
  let [usual, width, ours, ourWidth] = [0, 0, 0, 0];
  for (let turn = 0; turn < times; turn++) {
    const lame = of(2, () => binomial(100, shareOf(0.05, 0.03)));
    const share = total(lame) / 200;
    // The variance of a ratio between clusters over the binomial one, and t for one degree of freedom.
    const inflation = share === 0 ? 1 : total(lame.map((x) => 2 * (x - 100 * share) ** 2)) / (200 * share * (1 - share));
    const effective = (200 / Math.max(inflation, 1)) * (z / studentScore(0.95, 1)) ** 2;
    const [plain, found] = [wilsonLimits(share * effective, effective, z), prevalenceRange(lame, [100, 100], { confidence: 0.95 })];
    usual += holds(plain, 0.05);
    ours += holds(found, 0.05);
    width += plain.high - plain.low;
    ourWidth += found.high - found.low;
  }
  const say = (held: number, wide: number): string => `${percent(held / times)} held, ${percent(wide / times)} wide`;
  return ["PREVRANGE", "spread found alone, t for gathers − 1", "2 gathers of 100 that differ by 3.8 points", say(usual, width), say(ours, ourWidth)];
}

function manyGroups(): Line {
  let [usual, ours] = [0, 0];
  const lame = of(40, (group) => group % 2);
  for (let turn = 0; turn < times; turn++) {
    const parts = lame.map((ill) => ({ weight: 1 / 40, lame: random() < (3 * ill) / 10 ? 1 : 0, seen: 3, left: 7 / 9 }));
    let [below, above] = [0, 0];
    const share = total(parts.map(({ lame: x }) => x / 120));
    for (const { weight, lame: x, seen, left } of parts) {
      const { low, high } = wilsonLimits(x, seen, z * Math.sqrt(left));
      below += (weight * (x / seen - low)) ** 2;
      above += (weight * (high - x / seen)) ** 2;
    }
    usual += holds({ low: share - Math.sqrt(below), high: share + Math.sqrt(above) }, 0.05);
    ours += holds(weightedShare(parts, z), 0.05);
  }
  return ["WEIGHTEDPREV", "the groups' Wilson ranges put together", "40 groups of 10, 3 of each looked at, 5 % lame", `${percent(usual / times)} held`, `${percent(ours / times)} held`];
}

function weekly(sheep: number): Line {
  let [usual, ours, told] = [0, 0, 0];
  const truth = 1 - 0.92 ** 14;
  for (let turn = 0; turn < times; turn++) {
    const flock = of(sheep, (): Watched => {
      const sound = 1 + Math.floor(Math.log(1 - random()) / Math.log(0.92));
      const end = 28 + whole(0, 20);
      let last = 0;
      for (let look = whole(1, 7); look <= end; last = look, look += 7)
        if (sound <= look) return { days: look, end: "sound", lameUntil: last };
      return { days: last, end: "lame" };
    });
    const step = cureSteps(endsByDay(flock), 0.95).filter(({ day }) => day <= 14).at(-1);
    const plain = step?.variance === undefined ? undefined : logLogLimits(step.stillLame, step.variance, z);
    if (step?.limits === undefined || plain === undefined) continue;
    told++;
    usual += holds(plain, 1 - truth);
    ours += holds(step.limits, 1 - truth);
  }
  return ["SOUNDBY", "log(−log) limits from the information matrix", `${sheep} sheep, looks 7 days apart`, `${percent(usual / told)} held`, `${percent(ours / told)} held`];
}

function lookers(): Line {
  const [sheep, lame, kappa] = [20, 0.05, 0.8];
  const both = lame * lame + kappa * lame * (1 - lame);
  let [usual, ours, told] = [0, 0, 0];
  for (let turn = 0; turn < times; turn++) {
    const looks = of(sheep, () => {
      const at = random();
      return at < both ? "ll" : at < lame ? "ls" : at < 2 * lame - both ? "sl" : "ss";
    });
    if (new Set(looks.join("")).size < 2) continue;
    told++;
    const [, found] = lookAgreement(looks.map((look) => look.charAt(0)), looks.map((look) => look.charAt(1)), 0.95);
    ours += holds(found ?? { low: 1, high: 0 }, kappa);
    // Fleiss, Cohen and Everitt's error for two names, from their printed sums.
    const part = (kind: string): number => looks.filter((look) => look === kind).length / sheep;
    const [p, q] = [part("ll") + part("ls"), part("ll") + part("sl")];
    const [agreed, chance] = [part("ll") + part("ss"), p * q + (1 - p) * (1 - q)];
    const k = (agreed - chance) / (1 - chance);
    const own = part("ll") * (1 - (p + q) * (1 - k)) ** 2 + part("ss") * (1 - (2 - p - q) * (1 - k)) ** 2;
    const across = (1 - k) ** 2 * (part("ls") * (q + 1 - p) ** 2 + part("sl") * (p + 1 - q) ** 2);
    const variance = (own + across - (k - chance * (1 - k)) ** 2) / (sheep * (1 - chance) ** 2);
    const reach = z * Math.sqrt(Math.max(variance, 0));
    usual += holds({ low: k - reach, high: k + reach }, kappa);
  }
  return ["LOOKAGREE", "kappa ± z standard errors", "20 sheep, 5 % lame, kappa 0.8", `${percent(usual / told)} held`, `${percent(ours / told)} held`];
}

write(
  "usual",
  rows(
    ["function", "the usual way", "where", "the usual way gives", "the function gives"],
    [twoGathers(), manyGroups(), weekly(20), weekly(40), lookers(), steadied(5), steadied(10), ...widened()],
  ),
);
