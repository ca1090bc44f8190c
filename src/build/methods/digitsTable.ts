import { readFileSync } from "node:fs";
import { catalogue } from "../../../functions/catalogue.ts";
import { markdownRows } from "./markdownRows.ts";

interface Check {
  readonly topic: string;
  readonly test: string;
  readonly values: number;
  readonly largest: number;
}

interface Row {
  readonly functions: readonly string[];
  /** How the names of the checks begin. */
  readonly checks: readonly string[];
  readonly against: string;
}

const rows: readonly Row[] = [
  {
    functions: ["PREVRANGE"],
    checks: [
      "against the reference values > wilson",
      "against the reference values > exact",
      "against the reference values > jeffreys",
    ],
    against: "scipy; mpmath with 40 digits",
  },
  {
    functions: ["PREVRANGE", "TARGETCHECK", "PREVBY"],
    checks: ["against R > the range over several gathers", "against R > Student's t"],
    against: "R, survey",
  },
  {
    functions: ["PREVTREND"],
    checks: ["against the reference values > trend", "against R > the trend"],
    against: "scipy; R",
  },
  {
    functions: ["PREVCHANGE"],
    checks: [
      "against the reference values > Fisher's exact p",
      "prevalenceChange > Fisher's exact p",
      "random sets against R > a change",
    ],
    against: "exact fractions; R",
  },
  {
    functions: ["PAIREDCHANGE"],
    checks: ["the same sheep looked at twice > have"],
    against: "statsmodels; a general root finder",
  },
  {
    functions: ["TRUEPREV"],
    checks: ["truePrevalence", "random sets against R > a look that errs"],
    against: "a published example; R, epiR",
  },
  {
    functions: ["LOOKAGREE"],
    checks: ["random sets against R > two lookers"],
    against: "R, epiR and numDeriv, 1 − each value",
  },
  {
    functions: ["WEIGHTEDPREV"],
    checks: [
      "against the reference values > strata",
      "weightedPrevalence > three groups",
      "random sets against R > groups",
    ],
    against: "exact fractions; R, survey",
  },
  { functions: ["STANDARDPREV"], checks: ["standardPrevalence > agrees"], against: "R, survey" },
  {
    functions: ["LAMEWATCH"],
    checks: ["lameWatch > gives", "lameWatch > sets", "lameWatch > widens", "limits of a gather > three"],
    against: "a handbook's example; scipy; R, VGAM",
  },
  { functions: ["DRIFTWATCH"], checks: ["driftWatch"], against: "a handbook's example; scipy" },
  {
    functions: ["NEWCASERATE"],
    checks: ["new cases", "random sets against R's poisson.test > a rate"],
    against: "a published example; scipy; R",
  },
  {
    functions: ["RATECHANGE"],
    checks: [
      "change of a rate > 41",
      "change of a rate > agrees",
      "change of a rate > keeps",
      "random sets against R's poisson.test > a change",
    ],
    against: "a published example; mpmath; R",
  },
  {
    functions: ["SOUNDBY", "SOUNDCURVE"],
    checks: [
      "Kaplan and Meier's share",
      "animals that left lame > compete",
      "days known only between two looks > are shared",
      "limits from a variance alone > are those",
    ],
    against: "R, survival",
  },
  {
    functions: ["DETECTCHANCE"],
    checks: ["chance of finding", "random sets against epiR > the chance"],
    against: "exact fractions; a published example; R, epiR",
  },
  {
    functions: ["FREEDOM"],
    checks: ["freedom", "random sets against epiR > the chance"],
    against: "a published example; R, epiR",
  },
  { functions: ["SAMPLETOCOMPARE"], checks: ["the power of Fisher's exact test"], against: "R" },
  { functions: ["FUNNEL"], checks: ["funnel >"], against: "scipy; mpmath" },
  { functions: ["SHRUNKPREV"], checks: ["shrunkPrevalence > agrees"], against: "scipy; mpmath, integrals" },
  {
    functions: ["FLOCKSPREAD"],
    checks: ["flockSpread > agrees", "beta-binomial fit > agrees"],
    against: "scipy; mpmath",
  },
  { functions: ["MEDICINEUSE", "MGPCU"], checks: ["mgPerPcu", "medicineUse"], against: "sums by hand" },
  { functions: ["BATHLITRES"], checks: ["bathLitres"], against: "thin layers of water added up" },
  {
    functions: [],
    checks: [
      "against the reference values > Stirling's error",
      "against the reference values > beta tails",
      "against the reference values > binomial density",
      "against the reference values > gamma tails",
      "against the reference values > hypergeometric",
      "against the reference values > normal scores",
    ],
    against: "mpmath, 40 digits",
  },
];

/** The largest relative error of each function, over the values that it is held to; from largestErrors.json. */
export function digitsTable(): string {
  const path = new URL("../../../tests/references/largestErrors.json", import.meta.url);
  const found: readonly Check[] = JSON.parse(readFileSync(path, "utf8"));
  const known = new Set(catalogue.map(({ name }) => name));
  return markdownRows(
    ["function", "held against", "values", "largest relative error"],
    rows.map(({ functions, checks, against }) => {
      const stray = functions.find((name) => !known.has(name));
      if (stray !== undefined) throw new Error(`there is no function ${stray}`);
      const held = checks.flatMap((start) => {
        const those = found.filter(({ test }) => test.startsWith(start));
        if (those.length === 0) throw new Error(`no check begins with ${start}`);
        return those;
      });
      const values = held.reduce((sum, check) => sum + check.values, 0);
      const largest = Math.max(...held.map((check) => check.largest));
      const who = functions.length === 0 ? "the distributions beneath them" : functions.join(", ");
      return [who, against, values.toLocaleString("en-GB"), largest === 0 ? "0" : largest.toExponential(0)];
    }),
  );
}
