import { type Cell, isCellError } from "../../../cells/cell.ts";
import { showDay } from "../../../cells/day.ts";
import { lesionWords } from "../../../workbooks/tables/recordWords.ts";
import { pictureWords } from "./pictureWords.ts";

/** The functions whose tables can be drawn. */
export const drawable = ["LAMEWATCH", "LESIONMIX", "SOUNDCURVE", "FUNNEL"] as const;
export type Drawable = (typeof drawable)[number];

export interface Line {
  readonly name: string;
  readonly values: readonly (number | null)[];
  readonly mark: "line" | "dashed" | "dotted" | "points" | "bars";
  readonly tone: "main" | "quiet" | "alarm" | "blue" | "plum";
  /** As #rrggbb, in place of the tone: what the file of a workbook says. */
  readonly colour?: string | undefined;
  /** The line that its bars stand on. */
  readonly standsOn?: number;
  /** Others stand on it; it is not drawn itself. */
  readonly unseen?: boolean;
  /** A line has a point at each figure. */
  readonly points?: boolean;
}

/** What is drawn of a table, with the same said in words. */
export interface Picture {
  readonly title: string;
  readonly said: string;
  readonly unit: "share" | "number";
  readonly across: readonly number[];
  /** Words under the places across: days, names; numbers stand for themselves. */
  readonly labels: ((index: number) => string) | undefined;
  readonly acrossName: string | undefined;
  readonly lines: readonly Line[];
  /** Its points may lie at both ends, and need room there. */
  readonly isScattered?: boolean;
  /** Bars lie, the first of them at the top or at the bottom; otherwise they stand. */
  readonly lying?: "from the top" | "from below" | undefined;
  /** Lines go on where a figure is missing, as they do when nothing is said. */
  readonly spansGaps?: boolean;
}

/** @returns the picture, or undefined when the table holds no figures */
export function pictureOf(name: Drawable, [, ...rows]: readonly (readonly Cell[])[]): Picture | undefined {
  const filled = rows.filter((row) => row.some((cell) => typeof cell === "number"));
  return filled.length === 0 ? undefined : makers[name](filled);
}

type Rows = readonly (readonly Cell[])[];

const column = (rows: Rows, index: number): (number | null)[] =>
  rows.map((row) => (typeof row[index] === "number" ? row[index] : null));

const text = (cell: Cell | undefined): string =>
  cell === null || cell === undefined || isCellError(cell) ? "" : String(cell);
const percent = (share: Cell | undefined): string =>
  typeof share === "number" ? `${(share * 100).toFixed(1)} %` : text(share);

const penWords = new Map<string, string>(Object.entries(lesionWords));

/**
 * A lesion in the words it was typed in: the whole names have no room beside a bar. What is doubtful about it comes first,
 * where it is never cut off.
 */
function inThePen(lesion: Cell | undefined): string {
  const [name = "", ...doubts] = text(lesion).split(", ");
  const word = penWords.get(name);
  if (word === undefined) return text(lesion);
  return doubts.length === 0 ? word : `${doubts.join(", ")}: ${word}`;
}

const makers: Readonly<Record<Drawable, (rows: Rows) => Picture>> = {
  LAMEWATCH(rows) {
    const say = pictureWords.LAMEWATCH;
    const last = rows.at(-1) ?? [];
    return {
      title: say.title,
      said: pictureWords.said.LAMEWATCH(
        rows.length,
        percent(last[1]),
        typeof last[0] === "number" ? showDay(last[0]) : text(last[0]),
      ),
      unit: "share",
      across: column(rows, 0).map((day) => day ?? 0),
      labels: showDay,
      acrossName: undefined,
      lines: [
        { name: say.share, values: column(rows, 1), mark: "line", tone: "main" },
        { name: say.centre, values: column(rows, 2), mark: "line", tone: "quiet" },
        { name: say.low, values: column(rows, 3), mark: "dashed", tone: "alarm" },
        { name: say.high, values: column(rows, 4), mark: "dashed", tone: "alarm" },
      ],
    };
  },
  LESIONMIX(rows) {
    const say = pictureWords.LESIONMIX;
    const first = rows[0] ?? [];
    return {
      title: say.title,
      said: pictureWords.said.LESIONMIX(inThePen(first[0]), percent(first[2])),
      unit: "share",
      across: rows.map((_, index) => index),
      labels: (index) => inThePen(rows[index]?.[0]),
      acrossName: undefined,
      lines: [{ name: say.share, values: column(rows, 2), mark: "bars", tone: "main" }],
      // Names of lesions are read along.
      lying: "from the top",
    };
  },
  SOUNDCURVE(rows) {
    const say = pictureWords.SOUNDCURVE;
    const last = rows.at(-1) ?? [];
    return {
      title: say.title,
      said: pictureWords.said.SOUNDCURVE(percent(last[3]), text(last[0]), text(rows[0]?.[1]), text(last[1])),
      unit: "share",
      across: column(rows, 0).map((day) => day ?? 0),
      labels: undefined,
      acrossName: say.days,
      lines: [
        { name: say.share, values: column(rows, 3), mark: "line", tone: "main" },
        { name: say.low, values: column(rows, 4), mark: "dashed", tone: "quiet" },
        { name: say.high, values: column(rows, 5), mark: "dashed", tone: "quiet" },
      ],
    };
  },
  FUNNEL(given) {
    const say = pictureWords.FUNNEL;
    const rows = [...given].sort((one, other) => Number(one[1]) - Number(other[1]));
    const outside = rows.filter(([, , , , , , , word]) => /^(above|below)/.test(text(word)));
    return {
      title: say.title,
      said: pictureWords.said.FUNNEL(rows.length, outside.length),
      unit: "share",
      across: column(rows, 1).map((seen) => seen ?? 0),
      labels: undefined,
      acrossName: say.seen,
      lines: [
        { name: say.share, values: column(rows, 2), mark: "points", tone: "main" },
        { name: say.target, values: column(rows, 3), mark: "dashed", tone: "quiet" },
        { name: say.target, values: column(rows, 4), mark: "dashed", tone: "quiet" },
        { name: say.outer, values: column(rows, 5), mark: "line", tone: "alarm" },
        { name: say.outer, values: column(rows, 6), mark: "line", tone: "alarm" },
      ],
    };
  },
};
