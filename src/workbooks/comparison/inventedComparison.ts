import { isoText } from "../../cells/day.ts";
import { year } from "../inventedFlock/flockYear.ts";
import { seededRandom } from "../inventedFlock/seededRandom.ts";
import type { ComparisonContent, FlockYear } from "./comparisonContent.ts";

const names = [
  "Alder",
  "Ash",
  "Aspen",
  "Beech",
  "Birch",
  "Blackthorn",
  "Bramble",
  "Broom",
  "Cedar",
  "Cherry",
  "Dogwood",
  "Elder",
  "Elm",
  "Fern",
  "Fir",
  "Gorse",
  "Hawthorn",
  "Hazel",
  "Heather",
  "Holly",
  "Hornbeam",
  "Ivy",
  "Juniper",
  "Larch",
  "Lime",
  "Maple",
  "Oak",
  "Pine",
  "Rowan",
  "Willow",
] as const;

/** Thirty flocks named after plants, all invented: most alike, a few better or worse than chance makes them. */
export function inventedComparison(seed: number): ComparisonContent {
  const random = seededRandom(seed);
  const lameOf = (sheep: number, share: number): number =>
    Array.from({ length: sheep }, () => random.happens(share)).filter(Boolean).length;
  const flocks = names.map((name, place): FlockYear => {
    const breedingSheep = random.whole(60, 700);
    const lookedAt = breedingSheep * random.whole(1, 4);
    const usual = 0.02 + 0.07 * random.share() ** 2;
    const share = place % 11 === 4 ? usual + 0.08 : usual;
    const before = Math.min(0.25, share * (0.8 + 0.9 * random.share()));
    const isNew = place % 9 === 7;
    const lookedAtBefore = isNew ? undefined : Math.round(lookedAt * (0.7 + 0.5 * random.share()));
    return {
      flock: name,
      lookedAt,
      lame: lameOf(lookedAt, share),
      lookedAtBefore,
      lameBefore: lookedAtBefore === undefined ? undefined : lameOf(lookedAtBefore, before),
      cases: Math.round(breedingSheep * share * 2.5),
      antibioticMg: place % 7 === 3 ? undefined : Math.round(breedingSheep * share * 2 * 1500),
      breedingSheep,
      slaughterLambs: Math.round(breedingSheep * (1.2 + 0.4 * random.share())),
      target: place % 5 === 2 ? 0.03 : undefined,
      note: isNew ? "first year" : undefined,
    };
  });
  return {
    made: isoText(year.last),
    invented: true,
    year: 2026,
    target: 0.05,
    flocks,
    chosen: flocks[10]?.flock,
    books: [],
  };
}
