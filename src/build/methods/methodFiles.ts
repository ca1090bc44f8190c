import { readFileSync } from "node:fs";
import { gravity } from "../../core/words/gravity.ts";
import { coveragePicture } from "../pictures/coveragePicture.ts";
import { falseAlarmPicture } from "../pictures/falseAlarmPicture.ts";
import { funnelPicture } from "../pictures/funnelPicture.ts";
import { sampleSizePicture } from "../pictures/sampleSizePicture.ts";
import {
  likenessCoverageTable,
  manyGroupsTable,
  shrunkCoverageTable,
  widenedFunnelTable,
} from "./benchmarkCoverageTables.ts";
import { beyondFunnelTable } from "./beyondFunnelTable.ts";
import { coverageTable } from "./coverageTable.ts";
import { detectTable } from "./detectTable.ts";
import { digitsTable } from "./digitsTable.ts";
import { falseAlarmTable } from "./falseAlarmTable.ts";
import { handRunTable } from "./handRunTable.ts";
import { heldTooManyTable } from "./heldTooMany.ts";
import { topsFound } from "./topsFound.ts";
import { weightedCoverageTable } from "./weightedCoverageTable.ts";

/** What the pages need worked out, by the placeholder it stands for. */
const tablesOf: Readonly<Record<string, Readonly<Record<string, () => string>>>> = {
  "README.md": { usualWays: handRunTable("usual") },
  "counting.md": {
    coverage: coverageTable,
    gatherCoverage: handRunTable("range"),
    groupCoverage: handRunTable("groups"),
    targetVerdicts: handRunTable("target"),
    weightedCoverage: weightedCoverageTable,
    pairedCoverage: handRunTable("paired"),
    changeCoverage: handRunTable("change"),
    errsCoverage: handRunTable("errs"),
    trendAlarms: handRunTable("trend"),
    lookerCoverage: handRunTable("lookers"),
  },
  "watching.md": {
    falseAlarms: falseAlarmTable,
    chartAlarms: handRunTable("chart"),
    seasonAlarms: handRunTable("season"),
    driftAlarms: handRunTable("drift"),
    rateCoverage: handRunTable("rates"),
  },
  "recovery.md": { recoveryCoverage: handRunTable("recovery") },
  "planning.md": { detection: detectTable },
  "benchmarking.md": {
    beyondFunnel: beyondFunnelTable,
    topsFound,
    widenedFunnel: widenedFunnelTable,
    shrunkCoverage: shrunkCoverageTable,
    likenessCoverage: likenessCoverageTable,
    manyGroups: manyGroupsTable,
  },
  "tags.md": { heldTooMany: heldTooManyTable },
  "digits.md": { digits: digitsTable },
  "care.md": { gravity: () => gravity.join(", ") },
};

const pictures = {
  "coverage.svg": coveragePicture,
  "false-alarms.svg": falseAlarmPicture,
  "sample-size.svg": sampleSizePicture,
  "funnel.svg": funnelPicture,
} as const;

/** The pages on methods, words from the pages beside this file and figures from the functions themselves. */
export const methodFiles = (): readonly (readonly [path: string, text: string])[] => [
  ...Object.entries(tablesOf).map(([name, parts]) => [`docs/methods/${name}`, filled(name, parts)] as const),
  ...Object.entries(pictures).map(([name, draw]) => [`docs/methods/${name}`, draw()] as const),
];

function filled(name: string, parts: Readonly<Record<string, () => string>>): string {
  const used = new Set<string>();
  const text = readFileSync(new URL(`pages/${name}`, import.meta.url), "utf8").replace(/\{\{(\w+)\}\}/g, (_, part) => {
    const make = parts[part];
    if (make === undefined) throw new Error(`${name}: nothing is worked out for {{${part}}}`);
    used.add(part);
    return make();
  });
  const idle = Object.keys(parts).filter((part) => !used.has(part));
  if (idle.length > 0) throw new Error(`${name}: no place for ${idle.join(", ")}`);
  return text;
}
