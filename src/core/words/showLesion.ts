import type { NamedLesion, ReadLesion } from "./readLesion.ts";

const named = ({ lesion, sure }: NamedLesion): string => (sure ? lesion : `${lesion}, not sure`);

/**
 * A lesion in words, with what is doubtful about it: not sure, read with a slip mended, or the graver of two.
 *
 * @example
 * showLesion({ lesion: "interdigital dermatitis", sure: false, also: [] }) // → "interdigital dermatitis, not sure"
 * showLesion({ lesion: "white line abscess", sure: true, readAs: "abscess", also: [] })
 * // → 'white line abscess (read as "abscess")'
 * showLesion({ lesion: "footrot", sure: true, also: [{ lesion: "interdigital dermatitis", sure: true }] })
 * // → "footrot (the graver; also interdigital dermatitis)"
 */
export function showLesion({ also, ...first }: ReadLesion): string {
  const readAs = [first, ...also].flatMap((lesion) => lesion.readAs ?? []).map((word) => `"${word}"`);
  return [
    named(first),
    also.length === 0
      ? ""
      : `(${also.length === 1 ? "the graver" : "the gravest"}; also ${also.map(named).join(" and ")})`,
    readAs.length === 0 ? "" : `(read as ${readAs.join(" and ")})`,
  ]
    .filter((words) => words !== "")
    .join(" ");
}
