import { detectChance } from "../../core/planning/detectChance.ts";
import { exactDetectChance } from "../../core/planning/exactDetectChance.ts";
import { sampleToFind } from "../../core/planning/sampleToFind.ts";
import { markdownRows } from "./markdownRows.ts";
import { percent } from "./percent.ts";

/** The number that SAMPLETOFIND gives, with the chances that it brings. */
export const detectTable = (): string =>
  markdownRows(
    [
      "flock",
      "lame",
      "SAMPLETOFIND",
      "DETECTCHANCE",
      "by the usual formula",
      "exact chance when half of the lame hang back",
    ],
    [100, 300, 1000].flatMap((flockSize) =>
      [0.02, 0.05].map((designPrevalence) => {
        const lookedAt = sampleToFind({ flockSize, designPrevalence, confidence: 0.95, sensitivity: 1 }).sheep ?? 0;
        const look = { flockSize, lookedAt, designPrevalence, sensitivity: 1 };
        return [
          String(flockSize),
          percent(designPrevalence),
          String(lookedAt),
          percent(exactDetectChance(look), 2),
          percent(detectChance(look), 2),
          percent(exactDetectChance({ ...look, sensitivity: 0.5 }), 1),
        ];
      }),
    ),
  );
