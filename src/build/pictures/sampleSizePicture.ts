import { sampleToFind } from "../../core/planning/sampleToFind.ts";
import { drawing } from "./chart.ts";

const flocks = Array.from({ length: 61 }, (_, index) => Math.round(20 * 10 ** ((index * 2) / 60)));

const lines = [
  { designPrevalence: 0.01, pen: "solid", text: "1 % lame" },
  { designPrevalence: 0.02, pen: "dashed", text: "2 % lame" },
  { designPrevalence: 0.05, pen: "dotted", text: "5 % lame" },
] as const;

/** How many sheep to look at to find one lame, by size of the flock. */
export const sampleSizePicture = (): string =>
  drawing(
    { width: 560, height: 340 },
    "Sheep to look at for a chance of 95 in 100 of finding one lame, by size of the flock",
    [
      {
        left: 62,
        top: 16,
        width: 480,
        height: 244,
        x: {
          from: 20,
          to: 2000,
          ticks: [20, 50, 100, 200, 500, 1000, 2000],
          label: "sheep in the flock",
          show: String,
          logarithmic: true,
        },
        y: { from: 0, to: 300, ticks: [0, 50, 100, 150, 200, 250, 300], label: "sheep to look at", show: String },
        curves: lines.map(({ designPrevalence, pen }) => ({
          pen,
          points: flocks.map(
            (flockSize) =>
              [
                flockSize,
                sampleToFind({ flockSize, designPrevalence, confidence: 0.95, sensitivity: 1 }).sheep ?? flockSize,
              ] as const,
          ),
        })),
      },
    ],
    lines.map(({ pen, text }) => ({ pen, text })),
  );
