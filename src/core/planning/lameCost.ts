import { nothingToReport, Problem } from "../../cells/problem.ts";

/** A user's own figures: nothing here has a default. */
export interface LameFigures {
  /** Ewes in the flock. */
  readonly ewes: number;
  /** Share lame on an average day, 0 to 1. */
  readonly shareLame: number;
  /** Cases in a year for each ewe that is lame on an average day. */
  readonly casesPerLameYear: number;
  /** Money for the treatment of one case. */
  readonly treatmentPerCase: number;
  /** Minutes of work for one case. */
  readonly minutesPerCase: number;
  /** Money for an hour of work. */
  readonly payPerHour: number;
  /** Money lost in lambs, condition and culls for one case. */
  readonly lossPerCase: number;
  /** Share lame that is aimed at. */
  readonly target?: number | undefined;
  /** The lowest that figures may be; those left out stay as they are. */
  readonly low?: DoubtfulFigures | undefined;
  /** The highest that figures may be. */
  readonly high?: DoubtfulFigures | undefined;
}

/** The figures that are least well known. */
interface DoubtfulFigures {
  readonly shareLame?: number | undefined;
  readonly casesPerLameYear?: number | undefined;
  readonly lossPerCase?: number | undefined;
}

export interface CostLine {
  readonly item: string;
  /** In a year, as things are. */
  readonly now: number;
  /** In a year at the target; undefined without one. */
  readonly atTarget: number | undefined;
  /** With every doubtful figure at its lowest, and at its highest; undefined where no figure is doubtful. */
  readonly lowNow: number | undefined;
  readonly highNow: number | undefined;
  readonly lowAtTarget: number | undefined;
  readonly highAtTarget: number | undefined;
}

/**
 * What lameness costs in a year, line by line, and at the target.
 *
 * Every line grows with every figure, so that the lowest figures together give the least cost there can be and the
 * highest the greatest; the truth is seldom near either.
 *
 * @param figures the user's own figures
 * @returns lines: cases, treatment, work, losses, total, total per ewe; in the user's currency
 * @throws Problem for a figure below 0, or a lowest or highest one on the wrong side; #N/A without ewes
 * @example
 * lameCost({ ewes: 100, shareLame: 0.1, casesPerLameYear: 5, treatmentPerCase: 2, minutesPerCase: 12, payPerHour: 15,
 *   lossPerCase: 10 }).map(({ item, now }) => [item, now])
 * // → [["cases", 50], ["treatment", 100], ["work", 150], ["losses", 500], ["total", 750], ["total per ewe", 7.5]]
 */
export function lameCost(figures: LameFigures): readonly CostLine[] {
  refuseNegative(figures);
  if (figures.ewes === 0) throw nothingToReport("a flock without ewes has no cost", { argument: "ewes" });
  refuseWrongSide(figures);
  const likely = costs(figures);
  const doubtful = [figures.low, figures.high].some(
    (end) => end !== undefined && Object.values(end).some((figure) => figure !== undefined),
  );
  const [low, high] = [figures.low, figures.high].map((end) =>
    doubtful ? costs({ ...figures, ...filled(end ?? {}) }) : undefined,
  );
  return likely.now.map(([item, amount], line) => ({
    item,
    now: amount,
    atTarget: likely.atTarget?.[line]?.[1],
    lowNow: low?.now[line]?.[1],
    highNow: high?.now[line]?.[1],
    lowAtTarget: low?.atTarget?.[line]?.[1],
    highAtTarget: high?.atTarget?.[line]?.[1],
  }));
}

const filled = (figures: DoubtfulFigures): Partial<LameFigures> =>
  Object.fromEntries(Object.entries(figures).filter(([, figure]) => figure !== undefined));

const costs = (figures: LameFigures) => ({
  now: costAt(figures, figures.shareLame),
  atTarget: figures.target === undefined ? undefined : costAt(figures, figures.target),
});

function costAt(figures: LameFigures, share: number): readonly (readonly [item: string, amount: number])[] {
  const cases = figures.ewes * share * figures.casesPerLameYear;
  const treatment = cases * figures.treatmentPerCase;
  const work = ((cases * figures.minutesPerCase) / 60) * figures.payPerHour;
  const losses = cases * figures.lossPerCase;
  const total = treatment + work + losses;
  return [
    ["cases", cases],
    ["treatment", treatment],
    ["work", work],
    ["losses", losses],
    ["total", total],
    ["total per ewe", total / figures.ewes],
  ];
}

const argumentNames = {
  casesPerLameYear: "cases_per_lame_year",
  treatmentPerCase: "treatment_per_case",
  minutesPerCase: "minutes_per_case",
  payPerHour: "pay_per_hour",
  lossPerCase: "loss_per_case",
} as const;

function refuseNegative(figures: LameFigures): void {
  for (const [key, argument] of Object.entries(argumentNames)) {
    const found = figures[key as keyof typeof argumentNames];
    if (found < 0) throw new Problem(`${found} is below 0; enter a figure from 0 on`, { argument });
  }
}

const endNames = { shareLame: "share", casesPerLameYear: "cases", lossPerCase: "loss" } as const;

function refuseWrongSide(figures: LameFigures): void {
  for (const key of Object.keys(endNames) as (keyof DoubtfulFigures)[]) {
    const likely = figures[key];
    const [low = likely, high = likely] = [figures.low?.[key], figures.high?.[key]];
    if (low > likely)
      throw new Problem(`${low} is above the likely figure, ${likely}; enter the lowest that it may be`, {
        argument: `${endNames[key]}_low`,
      });
    if (high < likely)
      throw new Problem(`${high} is below the likely figure, ${likely}; enter the highest that it may be`, {
        argument: `${endNames[key]}_high`,
      });
  }
}
