import { falseAlarmChance } from "../../core/watching/falseAlarmChance.ts";
import { exactLimits, threeSigmaLimits } from "../../core/watching/gatherLimits.ts";
import { drawing, type Pen } from "./chart.ts";

const gathers = Array.from({ length: 52 }, (_, index) => index + 1);
const seen = 100;
const share = 0.05;

const lines = [
  { rule: "either", pen: "solid", text: "either rule" },
  { rule: "runs", pen: "dashed", text: "eight in a row" },
  { rule: "beyondLimits", pen: "dotted", text: "beyond a limit" },
] as const satisfies readonly { rule: string; pen: Pen; text: string }[];

/** The chance of at least one false alarm in so many gathers of a flock in which nothing changes. */
export function falseAlarmPicture(): string {
  const alarms = gathers.map((count) =>
    falseAlarmChance({ seen, share, gathers: count, limits: exactLimits(seen, share) }),
  );
  const usual = gathers.map((count) =>
    falseAlarmChance({ seen, share, gathers: count, limits: threeSigmaLimits(seen, share) }),
  );
  return drawing(
    { width: 620, height: 340 },
    "Chance of at least one false alarm of LAMEWATCH by number of gathers, 100 sheep a gather, 5 % lame",
    [
      {
        left: 62,
        top: 16,
        width: 480,
        height: 244,
        x: { from: 0, to: 52, ticks: [0, 4, 8, 12, 20, 26, 40, 52], label: "gathers on the chart", show: String },
        y: {
          from: 0,
          to: 0.25,
          ticks: [0, 0.05, 0.1, 0.15, 0.2, 0.25],
          label: "at least one false alarm",
          show: percent,
        },
        curves: [
          ...lines.map(({ rule, pen }) => ({
            pen,
            points: gathers.map((count, index) => [count, alarms[index]?.[rule] ?? 0] as const),
          })),
          {
            pen: "faint",
            points: gathers.map((count, index) => [count, usual[index]?.beyondLimits ?? 0] as const),
          },
        ],
      },
    ],
    [...lines.map(({ pen, text }) => ({ pen, text })), { pen: "faint", text: "beyond a 3-sigma limit" }],
  );
}

const percent = (chance: number): string => `${Math.round(chance * 100)}%`;
