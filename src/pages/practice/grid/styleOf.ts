import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { CellLook, Edge } from "../../../workbook/parts/readLooks.ts";

const lines: Readonly<Record<string, BorderStyleTypes>> = {
  thin: BorderStyleTypes.THIN,
  hair: BorderStyleTypes.HAIR,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  dashDot: BorderStyleTypes.DASH_DOT,
  dashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  double: BorderStyleTypes.DOUBLE,
  medium: BorderStyleTypes.MEDIUM,
  mediumDashed: BorderStyleTypes.MEDIUM_DASHED,
  mediumDashDot: BorderStyleTypes.MEDIUM_DASH_DOT,
  mediumDashDotDot: BorderStyleTypes.MEDIUM_DASH_DOT_DOT,
  slantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
  thick: BorderStyleTypes.THICK,
};

const across: Readonly<Record<string, HorizontalAlign>> = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  centerContinuous: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
};

const down: Readonly<Record<string, VerticalAlign>> = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
};

// Where the workbook's font is not installed: one of the same widths as Excel's usual one, then any without serifs.
const elsewhere = "Carlito, Arial, sans-serif";

/** A look in the embedded spreadsheet's own words. */
export function styleOf(look: CellLook): IStyleData {
  const { left, right, top, bottom } = look.edges;
  const style: IStyleData = {};
  if (look.font !== undefined) style.ff = `${look.font}, ${elsewhere}`;
  if (look.size !== undefined) style.fs = look.size;
  if (look.bold) style.bl = BooleanNumber.TRUE;
  if (look.italic) style.it = BooleanNumber.TRUE;
  if (look.underlined) style.ul = { s: BooleanNumber.TRUE };
  if (look.struck) style.st = { s: BooleanNumber.TRUE };
  if (look.color !== undefined) style.cl = { rgb: look.color };
  if (look.fill !== undefined) style.bg = { rgb: look.fill };
  if (left || right || top || bottom)
    style.bd = { l: edgeOf(left), r: edgeOf(right), t: edgeOf(top), b: edgeOf(bottom) };
  const [horizontal, vertical] = [across[look.horizontal ?? ""], down[look.vertical ?? ""]];
  if (horizontal !== undefined) style.ht = horizontal;
  if (vertical !== undefined) style.vt = vertical;
  if (look.wraps) style.tb = WrapStrategy.WRAP;
  if (look.format !== undefined) style.n = { pattern: look.format };
  return style;
}

const edgeOf = (edge: Edge | undefined) =>
  edge ? { s: lines[edge.line] ?? BorderStyleTypes.THIN, cl: { rgb: edge.color ?? "#000000" } } : null;
