import { funnel } from "../../core/benchmarking/funnel.ts";
import { funnelLimit } from "../../core/benchmarking/funnelLimit.ts";
import { drawing, type Point } from "./chart.ts";

/** Invented flocks: sheep seen and lame among them. */
const flocks = [
  [24, 0],
  [31, 3],
  [40, 1],
  [48, 6],
  [55, 2],
  [63, 4],
  [80, 3],
  [95, 9],
  [110, 4],
  [120, 17],
  [150, 7],
  [170, 5],
  [200, 13],
  [230, 10],
  [260, 27],
  [300, 14],
  [340, 22],
  [380, 5],
  [420, 19],
  [480, 47],
] as const;

const target = 0.05;
const sizes = Array.from({ length: 121 }, (_, index) => 20 + 4 * index);

const lines = [
  { low: 0.025, high: 0.975, pen: "dashed", text: "95 % limits" },
  { low: 0.001, high: 0.999, pen: "solid", text: "99.8 % limits" },
] as const;

/** Invented flocks in the funnel around 5 %. */
export function funnelPicture(): string {
  const names = flocks.map((_, index) => String(index + 1));
  const placed = funnel(
    names,
    flocks.map(([, lame]) => lame),
    flocks.map(([seen]) => seen),
    target,
  );
  return drawing(
    { width: 610, height: 380 },
    "Twenty invented flocks in a funnel around 5 % lame",
    [
      {
        left: 62,
        top: 16,
        width: 480,
        height: 284,
        x: { from: 0, to: 500, ticks: [0, 100, 200, 300, 400, 500], label: "sheep looked at", show: String },
        y: { from: 0, to: 0.25, ticks: [0, 0.05, 0.1, 0.15, 0.2, 0.25], label: "share lame", show: percent },
        curves: [
          {
            pen: "faint",
            points: [
              [0, target],
              [500, target],
            ],
          },
          ...lines.flatMap(({ low, high, pen }) =>
            [low, high].map((p) => ({ pen, points: sizes.map((n): Point => [n, funnelLimit(p, n, target)]) })),
          ),
        ],
        dots: placed.map(({ flock, seen, share = 0, word }) => ({
          at: [seen, share],
          filled: word !== "within the limits",
          ...(word === "within the limits" ? {} : { label: `flock ${flock}` }),
        })),
      },
    ],
    [...lines.map(({ pen, text }) => ({ pen, text })), { pen: "faint", text: "target" }],
  );
}

const percent = (share: number): string => `${Math.round(share * 100)}%`;
