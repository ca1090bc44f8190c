import { exactCoverage } from "../../core/statistics/exactCoverage.ts";
import { coverageSizes, intervalsFor, nominal } from "../methods/coverage.ts";
import { drawing, type Pen } from "./chart.ts";

const lines = [
  { method: "exact", pen: "solid", text: "exact" },
  { method: "jeffreys", pen: "dotted", text: "Jeffreys" },
  { method: "wilson", pen: "dashed", text: "Wilson" },
] as const satisfies readonly { method: string; pen: Pen; text: string }[];

const shares = Array.from({ length: 150 }, (_, index) => (index + 1) / 500);

/** How often the three ranges hold the true share, for four numbers of sheep. */
export const coveragePicture = (): string =>
  drawing(
    { width: 720, height: 560 },
    "How often the 95 % ranges hold the true share, for 20, 60, 200 and 420 sheep looked at",
    coverageSizes.map((n, index) => ({
      left: 62 + (index % 2) * 350,
      top: 32 + Math.floor(index / 2) * 260,
      width: 290,
      height: 180,
      title: `${n} sheep looked at`,
      x: { from: 0, to: 0.3, ticks: [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3], label: "true share lame", show: percent },
      y: { from: 0.82, to: 1, ticks: [0.85, 0.9, 0.95, 1], label: "range holds it", show: percent },
      curves: [
        {
          pen: "faint" as const,
          points: [
            [0, nominal],
            [0.3, nominal],
          ],
        },
        ...lines.map(({ method, pen }) => {
          const intervals = intervalsFor(method, n);
          return { pen, points: shares.map((share) => [share, exactCoverage(intervals, share)] as const) };
        }),
      ],
    })),
    [...lines.map(({ pen, text }) => ({ pen, text })), { pen: "faint", text: "95 %" }],
  );

const percent = (share: number): string => `${Math.round(share * 100)}%`;
