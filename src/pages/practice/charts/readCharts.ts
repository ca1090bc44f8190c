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
  readonly name: string;
  readonly across: string;
  readonly values: string;
  readonly dashed: boolean;
}

export interface BookChart {
  readonly from: Corner;
  readonly to: Corner;
  readonly title: string;
  readonly kind: "line" | "bars";
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

const kinds: Readonly<Record<string, BookChart["kind"]>> = { lineChart: "line", barChart: "bars" };

/** What is drawn of a chart: lines or bars over names; undefined for charts of another kind. */
function chartIn(part: string, text: string): Omit<BookChart, "from" | "to"> | undefined {
  const found = { title: "", shares: false, series: [] as ChartSeries[] };
  const path: string[] = [];
  let kind: BookChart["kind"] | undefined;
  let other = false;
  let series = { name: "", across: "", values: "", dashed: false };
  walkXml(part, text, {
    open({ name, attributes }) {
      const element = bare(name);
      path.push(element);
      if (/Chart$/.test(element) && path.includes("plotArea")) {
        other ||= kinds[element] === undefined;
        kind ??= kinds[element];
      }
      if (element === "ser") series = { name: "", across: "", values: "", dashed: false };
      if (element === "prstDash" && path.includes("ser")) series.dashed = attributes.val !== "solid";
      if (element === "numFmt" && path.includes("valAx")) found.shares = attributes.formatCode?.includes("%") ?? false;
    },
    text(content) {
      if (path.at(-1) === "t" && path.includes("title") && !path.includes("plotArea")) found.title += content;
      if (path.at(-1) !== "f" || !path.includes("ser")) return;
      if (path.includes("tx")) series.name += content;
      else if (path.includes("cat")) series.across += content;
      else if (path.includes("val")) series.values += content;
    },
    close(name) {
      path.pop();
      if (bare(name) === "ser" && series.values !== "") found.series.push(series);
    },
  });
  return kind === undefined || other || found.series.length === 0 ? undefined : { kind, ...found };
}
