import { scaleLinear, scaleLog } from "d3-scale";
import { curveLinear, curveStepAfter, line } from "d3-shape";
import { escapeXml } from "../../workbook/xml/escapeXml.ts";

/** Colours that differ in lightness too; every line also has its own dashes, so that the pictures read in black and white. */
const pens = {
  solid: { colour: "#14394f", dash: "none", width: 1.6 },
  dashed: { colour: "#b35a00", dash: "6 3", width: 1.6 },
  dotted: { colour: "#4d8c3f", dash: "1.5 3", width: 2 },
  faint: { colour: "#777777", dash: "none", width: 0.8 },
} as const;

export type Pen = keyof typeof pens;
export type Point = readonly [x: number, y: number];

interface Axis {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  readonly label: string;
  readonly show: (value: number) => string;
  readonly logarithmic?: boolean;
}

interface Curve {
  readonly pen: Pen;
  readonly points: readonly Point[];
  readonly steps?: boolean;
}

/** One rectangle with axes. Sizes are in the picture's own units, pixels at full size. */
export interface Panel {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly title?: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  readonly dots?: readonly { readonly at: Point; readonly filled: boolean; readonly label?: string }[];
  readonly words?: readonly { readonly at: Point; readonly text: string; readonly end?: boolean }[];
}

const round = (value: number): string => String(Math.round(value * 10) / 10);

const label = (x: number, y: number, text: string, more = ""): string =>
  `<text x="${round(x)}" y="${round(y)}"${more}>${escapeXml(text)}</text>`;

/**
 * A whole picture as SVG text: panels, and a key of the pens that are used.
 *
 * @param description said by screen readers
 */
export function drawing(
  size: { readonly width: number; readonly height: number },
  description: string,
  panels: readonly Panel[],
  key: readonly { readonly pen: Pen; readonly text: string }[] = [],
): string {
  const { width, height } = size;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="sans-serif" font-size="11" fill="#222">`,
    `<title>${escapeXml(description)}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...panels.map(panelText),
    ...key.map(({ pen, text }, index) => keyEntry(20 + index * 150, height - 12, pen, text)),
    "</svg>",
    "",
  ].join("\n");
}

const stroke = (pen: Pen): string => {
  const { colour, dash, width } = pens[pen];
  return `stroke="${colour}" stroke-width="${width}"${dash === "none" ? "" : ` stroke-dasharray="${dash}"`}`;
};

const keyEntry = (x: number, y: number, pen: Pen, text: string): string =>
  `<path d="M${x} ${y - 4}h28" ${stroke(pen)}/>${label(x + 34, y, text)}`;

function panelText(panel: Panel): string {
  const { left, top, width, height } = panel;
  const right = left + width;
  const bottom = top + height;
  const x = scaleOf(panel.x, left, right);
  const y = scaleOf(panel.y, bottom, top);
  const path = (points: readonly Point[], steps = false) =>
    line<Point>()
      .x(([value]) => x(value))
      .y(([, value]) => y(value))
      .curve(steps ? curveStepAfter : curveLinear)
      .digits(1)(points as Point[]);
  return [
    ...panel.y.ticks.map(
      (tick) =>
        `<path d="M${left} ${round(y(tick))}H${right}" stroke="#ddd"/>${label(left - 5, y(tick) + 4, panel.y.show(tick), ' text-anchor="end"')}`,
    ),
    ...panel.x.ticks.map(
      (tick) =>
        `<path d="M${round(x(tick))} ${bottom}v4" stroke="#222"/>${label(x(tick), bottom + 16, panel.x.show(tick), ' text-anchor="middle"')}`,
    ),
    `<path d="M${left} ${top}V${bottom}H${right}" fill="none" stroke="#222"/>`,
    ...panel.curves.map(({ pen, points, steps }) => `<path d="${path(points, steps)}" fill="none" ${stroke(pen)}/>`),
    ...(panel.dots ?? []).map(
      ({ at: [dx, dy], filled, label: name }) =>
        `<circle cx="${round(x(dx))}" cy="${round(y(dy))}" r="3.5" fill="${filled ? "#b35a00" : "#fff"}" stroke="#222"/>${name ? label(x(dx) + 6, y(dy) + 4, name) : ""}`,
    ),
    ...(panel.words ?? []).map(({ at: [wx, wy], text, end }) =>
      label(x(wx), y(wy), text, end ? ' text-anchor="end"' : ""),
    ),
    ...(panel.title ? [label(left + width / 2, top - 8, panel.title, ' text-anchor="middle" font-weight="bold"')] : []),
    label(left + width / 2, bottom + 32, panel.x.label, ' text-anchor="middle"'),
    `<text transform="translate(${left - 38} ${top + height / 2}) rotate(-90)" text-anchor="middle">${escapeXml(panel.y.label)}</text>`,
  ].join("\n");
}

const scaleOf = ({ from, to, logarithmic }: Axis, start: number, end: number): ((value: number) => number) =>
  (logarithmic ? scaleLog() : scaleLinear()).domain([from, to]).range([start, end]);
