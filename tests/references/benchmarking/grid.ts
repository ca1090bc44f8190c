// Whether betaBinomialFit finds the top: 10,000 random sets of flocks of unlike sizes against a fine grid of spreads.
// Run by hand: npx tsx tests/references/benchmarking/grid.ts [sets] (four minutes for 10,000). It writes grid.json beside
// it, which docs/methods/benchmarking.md takes in: how many sets were missed, by how much at most, how many have their top
// at no spread, and how many at a spread although the likelihood falls as the spread leaves 0.
import { writeFileSync } from "node:fs";
import { betaBinomialFit } from "../../../src/core/statistics/betaBinomialFit.ts";
import { flockTallies } from "../../../src/core/statistics/flockTallies.ts";
import { likeliestShare } from "../../../src/core/statistics/likeliestShare.ts";

/** The generator mulberry32. */
let state = 1973;
function random(): number {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
}

const spreads = Array.from({ length: 240 }, (_, step) => Math.exp(-14 + step / 12));
const sets = Number(process.argv[2] ?? 10_000);
let [missed, most, twoTops, none] = [0, 0, 0, 0];
for (let set = 0; set < sets; ) {
  const flocks = Array.from({ length: 2 + Math.floor(random() * 8) }, () => {
    const seen = Math.floor(2 + 10 ** (random() * 2.7));
    const share = [0, 0, 0.02, 0.1, 0.12, 0.5][Math.floor(random() * 6)] ?? 0;
    return { lame: Math.min(seen, Math.floor(seen * share + random() * 2)), seen };
  });
  const lame = flocks.reduce((sum, flock) => sum + flock.lame, 0);
  if (lame === 0 || flocks.every((flock) => flock.lame === 0 || flock.lame === flock.seen)) continue;
  set++;
  const tally = flockTallies(flocks);
  const without = likeliestShare(tally, 0).logLikelihood;
  const heights = spreads.map((spread) => likeliestShare(tally, spread).logLikelihood);
  const { spread } = betaBinomialFit(flocks);
  const reached = likeliestShare(tally, spread).logLikelihood;
  const short = Math.max(without, ...heights) - reached;
  if (short > 1e-8) missed++;
  most = Math.max(most, short);
  if (spread === 0) none++;
  else if ((heights[0] ?? 0) < without) twoTops++;
}
const found = { sets, missed, mostShort: most, withoutSpread: none, topBehindFall: twoTops };
console.log(found);
writeFileSync(new URL("grid.json", import.meta.url), `${JSON.stringify(found, undefined, 2)}\n`);
