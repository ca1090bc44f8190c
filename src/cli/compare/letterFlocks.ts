import { columnLetters } from "../../workbook/address.ts";
import type { Compared, ComparedLine } from "./countFlocks.ts";

/** The same lines with letters for flocks, and which flock each letter stands for. */
export interface LetteredFlocks {
  readonly compared: Compared;
  readonly key: readonly (readonly [letter: string, flock: string])[];
}

/**
 * Calls flocks A, B, C in the order of their shares, and of all else that is shown of them: letters in the order of the
 * names would tell too much. Two flocks that are the same in everything could change places without a difference.
 */
export function letterFlocks(compared: Compared): LetteredFlocks {
  const ofFlock = new Map<string, ComparedLine[]>();
  for (const line of compared.lines) {
    const known = ofFlock.get(line.flock);
    if (known) known.push(line);
    else ofFlock.set(line.flock, [line]);
  }
  const flocks = [...ofFlock].map(([flock, lines]) => ({
    flock,
    lines,
    share: shareOf(lines),
    shown: JSON.stringify(lines.map((line) => ({ ...line, flock: "" }))),
  }));
  flocks.sort(
    (one, other) => one.share - other.share || (one.shown < other.shown ? -1 : one.shown > other.shown ? 1 : 0),
  );
  return {
    compared: {
      ...compared,
      lines: flocks.flatMap(({ lines }, index) => lines.map((line) => ({ ...line, flock: columnLetters(index) }))),
    },
    key: flocks.map(({ flock }, index) => [columnLetters(index), flock]),
  };
}

/** Of flocks without a sheep looked at before all others. */
function shareOf(lines: readonly ComparedLine[]): number {
  const sum = (key: "lookedAt" | "lame"): number => lines.reduce((total, line) => total + (line[key] ?? 0), 0);
  return sum("lookedAt") === 0 ? -1 : sum("lame") / sum("lookedAt");
}
