import { isYes } from "../xml/isYes.ts";
import { walkXml } from "../xml/walkXml.ts";

export interface Edge {
  /** As the file names it: thin, medium, dashed … */
  readonly line: string;
  readonly color: string | undefined;
}

/** How a cell looks. Colours are six hexadecimal digits after a `#`. */
export interface CellLook {
  readonly bold: boolean;
  readonly italic: boolean;
  readonly underlined: boolean;
  readonly struck: boolean;
  readonly font: string | undefined;
  readonly size: number | undefined;
  readonly color: string | undefined;
  readonly fill: string | undefined;
  readonly edges: Readonly<Partial<Record<Side, Edge>>>;
  readonly horizontal: string | undefined;
  readonly vertical: string | undefined;
  readonly wraps: boolean;
  /** The number format; undefined for the general one. */
  readonly format: string | undefined;
}

type Side = "left" | "right" | "top" | "bottom";

const sides: ReadonlySet<string> = new Set<Side>(["left", "right", "top", "bottom"]);

// ECMA-376 Part 1 §18.8.30, the numbers whose format the file does not spell out; dates in the order of day and month.
const builtIn: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "dd/mm/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "dd/mm/yyyy h:mm",
  37: "#,##0;(#,##0)",
  38: "#,##0;[Red](#,##0)",
  39: "#,##0.00;(#,##0.00)",
  40: "#,##0.00;[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mm:ss.0",
  48: "##0.0E+0",
  49: "@",
};

interface Font {
  bold?: boolean;
  italic?: boolean;
  underlined?: boolean;
  struck?: boolean;
  font?: string | undefined;
  size?: number | undefined;
  color?: string | undefined;
}

interface Format {
  readonly font: number;
  readonly fill: number;
  readonly border: number;
  readonly number: number;
  horizontal?: string | undefined;
  vertical?: string | undefined;
  wraps?: boolean;
}

/**
 * The looks that a workbook's cells are given by number.
 *
 * @param themeColors - the colours of the workbook's theme in the order in which styles number them
 */
export function readLooks(part: string, text: string, themeColors: readonly string[]): readonly CellLook[] {
  const fonts: Font[] = [];
  const fills: { color: string | undefined }[] = [];
  const borders: Partial<Record<Side, Edge>>[] = [];
  const formats: Format[] = [];
  const patterns = new Map<number, string>();
  const open: string[] = [];
  let side: { at: Side; line: string; color: string | undefined } | undefined;
  const within = (name: string): boolean => open.includes(name);
  const colorOf = (attributes: Readonly<Record<string, string>>) => readColor(attributes, themeColors);
  walkXml(part, text, {
    open({ name, attributes }) {
      const parent = open.at(-1);
      open.push(name);
      // What conditional formats look like is kept apart from the looks of cells, and extensions hold such looks too.
      if (within("dxfs") || within("extLst")) return;
      if (name === "numFmt") patterns.set(Number(attributes.numFmtId), attributes.formatCode ?? "");
      else if (name === "font" && parent === "fonts") fonts.push({});
      else if (name === "fill" && parent === "fills") fills.push({ color: undefined });
      else if (name === "border" && parent === "borders") borders.push({});
      else if (name === "xf" && parent === "cellXfs") {
        const { fontId = "0", fillId = "0", borderId = "0", numFmtId = "0" } = attributes;
        formats.push({
          font: Number(fontId),
          fill: Number(fillId),
          border: Number(borderId),
          number: Number(numFmtId),
        });
      } else if (name === "alignment" && within("cellXfs")) {
        const format = formats.at(-1);
        if (format)
          Object.assign(format, {
            horizontal: attributes.horizontal,
            vertical: attributes.vertical,
            wraps: isYes(attributes.wrapText),
          });
      } else if (parent === "font") readFont(fonts.at(-1), name, attributes, colorOf);
      else if (name === "fgColor" && within("fills")) {
        const fill = fills.at(-1);
        if (fill) fill.color = colorOf(attributes);
      } else if (sides.has(name) && parent === "border") {
        side = attributes.style ? { at: name as Side, line: attributes.style, color: undefined } : undefined;
      } else if (name === "color" && side) side.color = colorOf(attributes);
    },
    close(name) {
      open.pop();
      if (!side || name !== side.at) return;
      const border = borders.at(-1);
      if (border) border[side.at] = { line: side.line, color: side.color };
      side = undefined;
    },
  });
  return formats.map(({ font, fill, border, number, horizontal, vertical, wraps = false }): CellLook => {
    const { bold = false, italic = false, underlined = false, struck = false, ...letters } = fonts[font] ?? {};
    const pattern = patterns.get(number) ?? builtIn[number];
    return {
      bold,
      italic,
      underlined,
      struck,
      font: letters.font,
      size: letters.size,
      color: letters.color,
      // The first two fills are the format's own: none, and a pattern of grey dots that no cell uses.
      fill: fill < 2 ? undefined : fills[fill]?.color,
      edges: borders[border] ?? {},
      horizontal,
      vertical,
      wraps,
      format: pattern?.toLowerCase() === "general" ? undefined : pattern,
    };
  });
}

function readFont(
  font: Font | undefined,
  name: string,
  attributes: Readonly<Record<string, string>>,
  colorOf: (attributes: Readonly<Record<string, string>>) => string | undefined,
): void {
  if (!font) return;
  const isOn = isYes(attributes.val ?? "1");
  if (name === "b") font.bold = isOn;
  else if (name === "i") font.italic = isOn;
  else if (name === "strike") font.struck = isOn;
  else if (name === "u") font.underlined = attributes.val !== "none";
  else if (name === "sz") font.size = Number(attributes.val);
  else if (name === "name") font.font = attributes.val;
  else if (name === "color") font.color = colorOf(attributes);
}

function readColor(
  { rgb, theme, tint = "0" }: Readonly<Record<string, string>>,
  themeColors: readonly string[],
): string | undefined {
  const base = rgb === undefined ? themeColors[Number(theme ?? -1)] : `#${rgb.slice(-6)}`;
  return base === undefined ? undefined : tinted(base, Number(tint));
}

/** Towards white for a positive tint, towards black for a negative one; each channel by itself comes close enough. */
function tinted(color: string, tint: number): string {
  if (tint === 0) return color;
  const channels = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
  const moved = channels.map((channel) => (tint > 0 ? channel + (255 - channel) * tint : channel * (1 + tint)));
  return `#${moved.map((channel) => Math.round(channel).toString(16).padStart(2, "0")).join("")}`;
}

/**
 * The colours of a theme in the order in which styles number them: light and dark change places there (ECMA-376
 * Part 1 §18.8.3 leaves it open; every spreadsheet does so).
 */
export function readThemeColors(part: string, text: string): readonly string[] {
  const colors: string[] = [];
  let inScheme = false;
  walkXml(part, text, {
    open({ name, attributes }) {
      if (name === "clrScheme") inScheme = true;
      else if (inScheme && name === "srgbClr") colors.push(`#${attributes.val ?? "000000"}`);
      else if (inScheme && name === "sysClr") colors.push(`#${attributes.lastClr ?? "000000"}`);
    },
    close(name) {
      if (name === "clrScheme") inScheme = false;
    },
  });
  const [dark = "#000000", light = "#ffffff", dark2 = dark, light2 = light, ...others] = colors;
  return [light, dark, light2, dark2, ...others];
}
