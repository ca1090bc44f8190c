import { falseAlarmChance } from "../../core/watching/falseAlarmChance.ts";
import { exactLimits, threeSigmaLimits } from "../../core/watching/gatherLimits.ts";
import { markdownRows } from "./markdownRows.ts";
import { percent } from "./percent.ts";

/** How likely LAMEWATCH gives a false alarm, by sheep a gather and share lame. */
export const falseAlarmTable = (): string =>
  markdownRows(
    [
      "sheep a gather",
      "share lame",
      "beyond an exact limit, one gather",
      "beyond a 3-sigma limit, one gather",
      "eight in a row within 12 gathers",
      "either rule within 12 gathers",
      "either rule within 52 gathers",
    ],
    [50, 100, 200, 420].flatMap((seen) => [0.02, 0.05, 0.1].map((share) => falseAlarmRow(seen, share))),
  );

function falseAlarmRow(seen: number, share: number): readonly string[] {
  const chances = (gathers: number, limits = exactLimits(seen, share)) =>
    falseAlarmChance({ seen, share, gathers, limits });
  return [
    String(seen),
    percent(share),
    percent(chances(1).beyondLimits, 2),
    percent(chances(1, threeSigmaLimits(seen, share)).beyondLimits, 2),
    percent(chances(12).runs, 2),
    percent(chances(12).either, 2),
    percent(chances(52).either, 1),
  ];
}
