import type { Place } from "../../../workbook/address.ts";
import { readRelationships } from "../../../workbook/parts/relationships.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { attributeNamed, walkXml } from "../../../workbook/xml/walkXml.ts";

/** A corner of a chart: a cell, and how far into it, in pixels. */
export interface Corner extends Place {
  readonly right: number;
  readonly down: number;
}

/** A row of figures of a chart, by the references that its file names. */
export interface ChartSeries {
  readonly kind: "line" | "bars";
  readonly name: string;
  readonly across: string;
  readonly values: string;
  readonly dash: "solid" | "dashed" | "dotted";
  /** As #rrggbb, where the file says it itself; a theme's colour is not looked up. */
  readonly colour: string | undefined;
  /** Its line is not seen, or it is there for others to stand on. */
  readonly unseen: boolean;
  /** A line has a point at each figure. */
  readonly points: boolean;
}

export interface BookChart {
  readonly from: Corner;
  readonly to: Corner;
  readonly title: string;
  /** Its places across are figures, and each series has its own. */
  readonly scattered: boolean;
  /** What stands below the places across. */
  readonly acrossName: string;
  /** Bars lie, the names beside them. */
  readonly lying: boolean;
  /** The first name is the uppermost of lying bars, and not the lowest. */
  readonly fromTop: boolean;
  /** Bars stand on those of the series before. */
  readonly stacked: boolean;
  /** A line goes on where a figure is missing. */
  readonly spansGaps: boolean;
  /** Its figures are shares. */
  readonly shares: boolean;
  readonly series: readonly ChartSeries[];
}

interface Anchor {
  readonly from: Corner;
  readonly to: Corner;
  /** Of the part with the chart, among what the drawing points to. */
  readonly id: string;
}

/** The charts that stand on a sheet, and how many others do that cannot be drawn. */
export function readCharts(
  { files, sheets }: Workbook,
  sheet: number,
): { readonly charts: readonly BookChart[]; readonly others: number } {
  const part = sheets[sheet]?.part ?? "";
  const charts: BookChart[] = [];
  let others = 0;
  for (const { kind, target: drawing } of readRelationships(files, part)) {
    if (kind !== "drawing" || !files.has(drawing)) continue;
    const targets = new Map(readRelationships(files, drawing).map(({ id, target }) => [id, target]));
    const { anchors, elsewhere } = anchorsIn(drawing, files.text(drawing));
    others += elsewhere;
    for (const { from, to, id } of anchors) {
      const target = targets.get(id) ?? "";
      const read = files.has(target) ? chartIn(target, files.text(target)) : undefined;
      if (read) charts.push({ from, to, ...read });
      else others += 1;
    }
  }
  return { charts, others };
}

// There are 9525 English Metric Units to a pixel (ECMA-376 Part 1 §20.1.2.1 has 914400 to an inch; 96 pixels are one).
const perPixel = 9525;
const bare = (name: string): string => name.slice(name.lastIndexOf(":") + 1);

/** Where the charts of a drawing stand, and how many stand otherwise than between two cells. */
function anchorsIn(part: string, text: string): { readonly anchors: readonly Anchor[]; readonly elsewhere: number } {
  const anchors: Anchor[] = [];
  let elsewhere = 0;
  let corners: Record<string, Record<string, number>> = {};
  let corner = "";
  let inside = "";
  let id: string | undefined;
  walkXml(part, text, {
    open({ name, attributes }) {
      inside = bare(name);
      if (/Anchor$/.test(inside)) [corners, id] = [{}, undefined];
      else if (inside === "from" || inside === "to") corner = inside;
      else if (inside === "chart") id = attributeNamed(attributes, "id");
    },
    text(content) {
      if (!["col", "colOff", "row", "rowOff"].includes(inside)) return;
      const at = corners[corner] ?? {};
      corners[corner] = at;
      at[inside] = Number(content);
    },
    close(name) {
      inside = "";
      if (!/Anchor$/.test(bare(name)) || id === undefined) return;
      if (bare(name) === "twoCellAnchor") anchors.push({ from: cornerOf(corners.from), to: cornerOf(corners.to), id });
      else elsewhere += 1;
    },
  });
  return { anchors, elsewhere };
}

const cornerOf = ({ col = 0, colOff = 0, row = 0, rowOff = 0 }: Record<string, number> = {}): Corner => ({
  row,
  column: col,
  right: colOff / perPixel,
  down: rowOff / perPixel,
});

const kinds: Readonly<Record<string, ChartSeries["kind"]>> = {
  lineChart: "line",
  barChart: "bars",
  scatterChart: "line",
};
const dashes: Readonly<Record<string, ChartSeries["dash"]>> = { solid: "solid", sysDot: "dotted", dot: "dotted" };
// What is drawn of these would not be what they show.
const notDrawn: ReadonlySet<string> = new Set(["percentStacked"]);

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

/** What is drawn of a chart: lines, bars or points; undefined for charts of another kind. */
function chartIn(part: string, text: string): Omit<BookChart, "from" | "to"> | undefined {
  const found = {
    title: "",
    scattered: false,
    acrossName: "",
    lying: false,
    fromTop: false,
    stacked: false,
    spansGaps: false,
    shares: false,
  };
  const all: ChartSeries[] = [];
  const path: string[] = [];
  let kind: ChartSeries["kind"] = "line";
  let [isOther, axes, isAcross] = [false, 0, false];
  let series = emptySeries(kind);
  const isIn = (element: string): boolean => path.includes(element);
  walkXml(part, text, {
    open({ name, attributes }) {
      const element = bare(name);
      const { val = "" } = attributes;
      path.push(element);
      if (/Chart$/.test(element) && isIn("plotArea")) {
        isOther ||= kinds[element] === undefined;
        kind = kinds[element] ?? kind;
        isOther ||= all.length > 0 && (element === "scatterChart") !== found.scattered;
        found.scattered = element === "scatterChart";
      }
      if (element === "ser") series = emptySeries(kind);
      if (element === "barDir") found.lying = val === "bar";
      if (element === "grouping") {
        isOther ||= notDrawn.has(val) || (kind === "line" && val === "stacked");
        found.stacked ||= kind === "bars" && val === "stacked";
      }
      // A second axis has a scale of its own.
      if (element === "valAx") axes += 1;
      if (element === "axPos") isAcross = found.scattered && (val === "b" || val === "t");
      if (element === "orientation" && isIn("catAx")) found.fromTop = val === "maxMin";
      if (element === "dispBlanksAs") found.spansGaps = val === "span";
      if (element === "numFmt" && isIn("valAx") && !isAcross)
        found.shares = attributes.formatCode?.includes("%") ?? false;
      if (!isIn("ser")) return;
      if (element === "prstDash") series.dash = dashes[val] ?? "dashed";
      if (element === "symbol" && isIn("marker")) series.points = val !== "none";
      // Where there is no line its points give the colour.
      if ((isIn("marker") && !series.unseen) || isIn("dLbls") || isIn("dPt")) return;
      if (element === "srgbClr") series.colour ??= `#${val}`;
      if (element === "noFill") series.unseen ||= series.kind === "line" ? isIn("ln") : !isIn("ln");
    },
    text(content) {
      if (path.at(-1) === "t" && isIn("title") && !isIn("plotArea")) found.title += content;
      if (path.at(-1) === "t" && isIn("title") && isIn("valAx") && isAcross) found.acrossName += content;
      if (path.at(-1) !== "f" || !isIn("ser")) return;
      if (isIn("tx")) series.name += content;
      else if (isIn("cat") || isIn("xVal")) series.across += content;
      else if (isIn("val") || isIn("yVal")) series.values += content;
    },
    close(name) {
      path.pop();
      if (bare(name) === "ser" && series.values !== "") all.push(series);
    },
  });
  const hasLine = all.some((one) => one.kind === "line");
  return isOther || axes > (found.scattered ? 2 : 1) || all.length === 0 || (found.lying && hasLine)
    ? undefined
    : { ...found, series: all };
}

const emptySeries = (kind: ChartSeries["kind"]): Mutable<ChartSeries> => ({
  kind,
  name: "",
  across: "",
  values: "",
  dash: "solid",
  colour: undefined,
  unseen: false,
  points: false,
});
