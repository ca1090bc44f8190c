import { Problem } from "../../cells/problem.ts";

/** The four feet, by their standard names. */
export const feet = ["left fore", "right fore", "left hind", "right hind"] as const;

export type Foot = (typeof feet)[number];

/** What people write. Common practice, no source. */
const written: Readonly<Record<string, readonly Foot[]>> = {
  lf: ["left fore"],
  fl: ["left fore"],
  nsf: ["left fore"],
  "left front": ["left fore"],
  "near fore": ["left fore"],
  "front left": ["left fore"],
  "fore left": ["left fore"],
  "near front": ["left fore"],
  "l fore": ["left fore"],
  rf: ["right fore"],
  fr: ["right fore"],
  osf: ["right fore"],
  "right front": ["right fore"],
  "off fore": ["right fore"],
  "front right": ["right fore"],
  "fore right": ["right fore"],
  "off front": ["right fore"],
  "r fore": ["right fore"],
  lh: ["left hind"],
  hl: ["left hind"],
  lb: ["left hind"],
  bl: ["left hind"],
  nsh: ["left hind"],
  "left back": ["left hind"],
  "left rear": ["left hind"],
  "near hind": ["left hind"],
  "back left": ["left hind"],
  "hind left": ["left hind"],
  "near back": ["left hind"],
  "l hind": ["left hind"],
  rh: ["right hind"],
  hr: ["right hind"],
  rb: ["right hind"],
  br: ["right hind"],
  osh: ["right hind"],
  "right back": ["right hind"],
  "right rear": ["right hind"],
  "off hind": ["right hind"],
  "back right": ["right hind"],
  "hind right": ["right hind"],
  "off back": ["right hind"],
  "r hind": ["right hind"],
  all: feet,
  "all four": feet,
  "all 4": feet,
  four: feet,
  "4": feet,
  fores: ["left fore", "right fore"],
  fronts: ["left fore", "right fore"],
  hinds: ["left hind", "right hind"],
  backs: ["left hind", "right hind"],
  "both fore": ["left fore", "right fore"],
  "both front": ["left fore", "right fore"],
  "both hind": ["left hind", "right hind"],
  "both back": ["left hind", "right hind"],
};

const known: ReadonlyMap<string, readonly Foot[]> = new Map([
  ...feet.map((foot) => [foot, [foot]] as const),
  ...Object.entries(written),
]);

const listed = /\s*(?:[,;/+&]|\band\b)\s*/;

/**
 * The feet that a cell names: one, several ("LF, RH"), or all four; undefined when a word is not known.
 *
 * @example
 * findFeet("LF + rh") // → ["left fore", "right hind"]
 * findFeet("tail") // → undefined
 */
export function findFeet(text: string): readonly Foot[] | undefined {
  const words = text
    .toLowerCase()
    .replace(/\b(?:foot|feet|leg|legs)\b/g, " ")
    .replace(/[\s._-]+/g, " ")
    .trim();
  const whole = known.get(words);
  if (whole !== undefined) return whole;
  // "LF RH" is a list too, but "left hind" is not.
  const parts = listed.test(words) ? words.split(listed) : words.split(" ");
  const found = parts.map((part) => known.get(part));
  if (found.some((names) => names === undefined)) return undefined;
  const named = new Set(found.flatMap((names) => names ?? []));
  return feet.filter((foot) => named.has(foot));
}

/**
 * The feet that a cell names.
 *
 * @throws Problem when a word is not known
 * @example
 * footNames("all four") // → ["left fore", "right fore", "left hind", "right hind"]
 */
export function footNames(text: string): readonly Foot[] {
  const found = findFeet(text);
  if (found === undefined)
    throw new Problem(
      `"${text.trim()}" is not a foot known here; use LF, RF, LH or RH (left fore, right fore, left hind, right hind), several as LF, RH, or all`,
    );
  return found;
}
