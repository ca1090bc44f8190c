import Big from "big.js";
import { Problem } from "../../cells/problem.ts";
import { mostMl } from "./mostMl.ts";
import { syringeMark } from "./syringeMark.ts";

export interface Sharing {
  /** The least number of places to inject into. */
  readonly sites: number;
  /** The most ml that the data sheet allows in one place; undefined when it names none. */
  readonly maxPerSiteMl: number | undefined;
  /** ml between two marks of the syringe. */
  readonly markMl: number;
}

// Common practice, no source: more places than this is a matter for the vet.
const mostSites = 10;

/**
 * A volume shared over several places of injection, as evenly as the syringe's marks allow, the larger parts first.
 *
 * The parts add up to the volume exactly. Places are added until no part is more than the most allowed.
 *
 * @returns ml for each place
 * @throws Problem when the volume does not fall on a mark, is too small to share, is more than 60 ml, or more than 10
 * places are asked for or needed
 * @example
 * siteMl(7.5, { sites: 2, maxPerSiteMl: 5, markMl: 0.1 }) // → [3.8, 3.7]
 * siteMl(7.5, { sites: 2, maxPerSiteMl: 5, markMl: 0.05 }) // → [3.75, 3.75]
 * siteMl(12, { sites: 2, maxPerSiteMl: 5, markMl: 0.1 }) // → [4, 4, 4]
 */
export function siteMl(volumeMl: number, { sites, maxPerSiteMl, markMl }: Sharing): readonly number[] {
  if (sites > mostSites)
    throw new Problem(`${sites} sites are more than ${mostSites}; enter fewer, or ask your vet`, { argument: "sites" });
  if (volumeMl > mostMl)
    throw new Problem(
      `${volumeMl} ml for one animal cannot be right; enter the dose in ml, at most ${mostMl}, or ask your vet`,
      { argument: "volume_ml" },
    );
  const mark = syringeMark(markMl);
  const marks = wholeMarks(volumeMl, mark);
  const parts = Math.max(sites, sitesNeeded(marks, volumeMl, maxPerSiteMl, mark));
  if (marks < parts)
    throw new Problem(
      `${volumeMl} ml is too little to share over ${parts} sites at a mark of ${mark} ml; enter fewer sites or a finer mark`,
      { argument: "volume_ml" },
    );
  const smaller = Math.floor(marks / parts);
  const larger = marks % parts;
  return Array.from({ length: parts }, (_, index) => mark.times(smaller + (index < larger ? 1 : 0)).toNumber());
}

function wholeMarks(volumeMl: number, mark: Big): number {
  const marks = new Big(volumeMl).div(mark);
  const nearest = marks.round(0, Big.roundHalfUp);
  // A product of other cells may carry a binary trace far below any mark; that is no other volume.
  if (marks.minus(nearest).abs().gt(1e-9))
    throw new Problem(
      `${volumeMl} ml does not fall on a mark of ${mark} ml; enter the dose to the mark, such as ${nearest.times(mark)}, or a finer mark`,
      { argument: "volume_ml" },
    );
  return nearest.toNumber();
}

function sitesNeeded(marks: number, volumeMl: number, maxPerSiteMl: number | undefined, mark: Big): number {
  if (maxPerSiteMl === undefined) return 1;
  // Rounded down, since a part rounded to its mark must not pass the most allowed.
  const mostMarks = new Big(maxPerSiteMl).div(mark).round(0, Big.roundDown).toNumber();
  if (mostMarks === 0)
    throw new Problem(`${maxPerSiteMl} ml is less than one mark of ${mark} ml; enter a finer mark`, {
      argument: "max_per_site_ml",
    });
  const needed = Math.ceil(marks / mostMarks);
  if (needed > mostSites)
    throw new Problem(
      `${volumeMl} ml at most ${maxPerSiteMl} ml a site needs ${needed} sites, more than ${mostSites}; ask your vet for another way to give it`,
      { argument: "max_per_site_ml" },
    );
  return needed;
}
