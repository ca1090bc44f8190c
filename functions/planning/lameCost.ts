import { type CostLine, lameCost } from "../../src/core/planning/lameCost.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count, nonNegative, share } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { type Result, table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

const money = nonNegative("an amount of money");

const lines = table<CostLine>(
  "nothing to add up",
  ["item", "text", ({ item }) => item],
  ["a year now", "number", ({ now }) => now],
  ["a year at the target", "number", ({ atTarget }) => atTarget],
  ["low now", "number", ({ lowNow }) => lowNow],
  ["high now", "number", ({ highNow }) => highNow],
  ["low at the target", "number", ({ lowAtTarget }) => lowAtTarget],
  ["high at the target", "number", ({ highAtTarget }) => highAtTarget],
);

/** The columns of lowest and highest costs stand only where a figure has them: the table is no wider than it need be. */
const costTable: Result<Iterable<CostLine>> = {
  ...lines,
  layOut(given, beside) {
    const costs = [...given];
    const cells = lines.layOut(costs, beside);
    return costs.some(({ lowNow }) => lowNow !== undefined) ? cells : cells.map((row) => row.slice(0, 3));
  },
};

export const lameCostFunction = defineFunction({
  name: "LAMECOST",
  summary: "What lameness costs in a year by your own figures, line by line, and what it would cost at a target.",
  questions: [
    "what does lameness cost",
    "cost per ewe a year",
    "is it worth getting to 2 per cent",
    "lowest and highest cost of lameness",
  ],
  notes: [
    "Every figure is yours; none is supposed. The answer is in your currency and no better than the figures.",
    "Cases in a year = ewes × share lame × cases_per_lame_year. That figure says how many cases a year stand behind one ewe lame on an average day: if a case lasts 73 days, 365 / 73 = 5.",
    "At the target the cost of a case stays the same. What it costs to get there is not in it.",
    "For the figures that you do not know well, give the lowest and the highest they may be: PREVRANGE gives both for the share lame. Then four columns more have all of them at their lowest, and all at their highest; what was left out stays as it is.",
  ],
  parameters: {
    ewes: one(count("ewes"), "Ewes in the flock"),
    share_lame: one(share, "Share lame on an average day, such as 5%"),
    cases_per_lame_year: one(nonNegative("cases a year"), "Cases a year for each ewe lame on an average day"),
    treatment_per_case: one(money, "Medicine and materials for one case"),
    minutes_per_case: one(nonNegative("minutes"), "Minutes of work for one case"),
    pay_per_hour: one(money, "Pay for an hour of work"),
    loss_per_case: one(money, "Lost in lambs, condition and culls by one case"),
    target: oneOrNone(share, "Share lame that is aimed at, such as 2%"),
    share_low: oneOrNone(share, "The lowest that share_lame may be, as PREVRANGE gives"),
    share_high: oneOrNone(share, "The highest that share_lame may be"),
    cases_low: oneOrNone(nonNegative("cases a year"), "The lowest that cases_per_lame_year may be"),
    cases_high: oneOrNone(nonNegative("cases a year"), "The highest that cases_per_lame_year may be"),
    loss_low: oneOrNone(money, "The lowest that loss_per_case may be"),
    loss_high: oneOrNone(money, "The highest that loss_per_case may be"),
  },
  result: costTable,
  caution: undefined,
  sources: [sources.practice],
  compute: (figures) =>
    lameCost({
      ewes: figures.ewes,
      shareLame: figures.share_lame,
      casesPerLameYear: figures.cases_per_lame_year,
      treatmentPerCase: figures.treatment_per_case,
      minutesPerCase: figures.minutes_per_case,
      payPerHour: figures.pay_per_hour,
      lossPerCase: figures.loss_per_case,
      target: figures.target,
      low: { shareLame: figures.share_low, casesPerLameYear: figures.cases_low, lossPerCase: figures.loss_low },
      high: { shareLame: figures.share_high, casesPerLameYear: figures.cases_high, lossPerCase: figures.loss_high },
    }),
  examples: [
    {
      shows: "Invented figures: 100 ewes, 10 % lame, aiming at 2 %",
      call: [100, 0.1, 5, 2, 12, 15, 10, 0.02],
      gives: [
        ["item", "a year now", "a year at the target"],
        ["cases", 50, 10],
        ["treatment", 100, 20],
        ["work", 150, 30],
        ["losses", 500, 100],
        ["total", 750, 150],
        ["total per ewe", 7.5, 1.5],
      ],
    },
    {
      shows: "The same without a target",
      call: [100, 0.1, 5, 2, 12, 15, 10],
      gives: [
        ["item", "a year now", "a year at the target"],
        ["cases", 50, ""],
        ["treatment", 100, ""],
        ["work", 150, ""],
        ["losses", 500, ""],
        ["total", 750, ""],
        ["total per ewe", 7.5, ""],
      ],
    },
    {
      shows: "5 to 15 % lame, and 8 to 14 lost by a case",
      call: [100, 0.1, 5, 2, 12, 15, 10, 0.02, 0.05, 0.15, undefined, undefined, 8, 14],
      gives: [
        [
          "item",
          "a year now",
          "a year at the target",
          "low now",
          "high now",
          "low at the target",
          "high at the target",
        ],
        ["cases", 50, 10, 25, 75, 10, 10],
        ["treatment", 100, 20, 50, 150, 20, 20],
        ["work", 150, 30, 75, 225, 30, 30],
        ["losses", 500, 100, 200, 1050, 80, 140],
        ["total", 750, 150, 325, 1425, 130, 190],
        ["total per ewe", 7.5, 1.5, 3.25, 14.25, 1.3, 1.9],
      ],
    },
    {
      call: [100, 0.1, 5, 2, 12, 15, 10, undefined, 0.12],
      gives: problem("share_low: 0.12 is above the likely figure, 0.1; enter the lowest that it may be"),
    },
    {
      call: [100, 0.1, 5, -2, 12, 15, 10],
      gives: problem("treatment_per_case: -2 is below 0; enter an amount of money, 0 or more"),
    },
    { call: [100, 0.1, 5, 2, 12], gives: problem("pay_per_hour: it is left out; enter an amount of money, 0 or more") },
    { call: [0, 0.1, 5, 2, 12, 15, 10], gives: nothing("ewes: a flock without ewes has no cost") },
  ],
});
