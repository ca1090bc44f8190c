import { walkXml } from "../xml/walkXml.ts";

interface CellFormat {
  readonly numberFormat: number;
  /** Places of the `<xf>` element in the styles part. */
  readonly start: number;
  readonly end: number;
}

interface Room {
  /** Places of the element that lists them: its `<`, after its opening tag, its closing tag's `<`, its end. */
  readonly start: number;
  readonly inner: number;
  readonly close: number;
  readonly end: number;
}

export interface StylesPart {
  readonly text: string;
  readonly formats: readonly CellFormat[];
  /** The formats of cells; those of conditional formats are apart. */
  readonly numberFormats: ReadonlyMap<number, string>;
  /** The largest number that any format has, a conditional one too. */
  readonly lastNumberFormat: number;
  readonly cellXfs: Room | undefined;
  readonly numFmts: Room | undefined;
  /** After the opening tag of the root, where `<numFmts>` goes when there is none. */
  readonly inner: number;
  readonly prefix: string;
}

/** Cell formats and number formats. */
export function readStyles(part: string, text: string): StylesPart {
  const formats: CellFormat[] = [];
  const numberFormats = new Map<number, string>();
  const rooms = new Map<string, Room>();
  const open: { name: string; start: number; inner: number }[] = [];
  let lastNumberFormat = 0;
  let inner = 0;
  let prefix = "";
  let xf: { numberFormat: number; start: number } | undefined;
  walkXml(part, text, {
    open({ name, attributes, start, end }) {
      if (open.length === 0) {
        inner = end;
        prefix = prefixOf(text, start, name);
      }
      const parent = open.at(-1)?.name;
      if (name === "numFmt") {
        const number = Number(attributes.numFmtId);
        if (number > lastNumberFormat) lastNumberFormat = number;
        if (parent === "numFmts") numberFormats.set(number, attributes.formatCode ?? "");
      }
      if (name === "xf" && parent === "cellXfs") xf = { numberFormat: Number(attributes.numFmtId ?? 0), start };
      open.push({ name, start, inner: end });
    },
    close(name, close, end) {
      const opened = open.pop();
      if (name === "xf" && xf) {
        formats.push({ ...xf, end });
        xf = undefined;
      }
      if (opened && (name === "cellXfs" || name === "numFmts")) {
        rooms.set(name, { start: opened.start, inner: opened.inner, close: opened.inner === end ? end : close, end });
      }
    },
  });
  return {
    text,
    formats,
    numberFormats,
    lastNumberFormat,
    cellXfs: rooms.get("cellXfs"),
    numFmts: rooms.get("numFmts"),
    inner,
    prefix,
  };
}

/** The prefix an element is written with, colon included. */
export const prefixOf = (text: string, start: number, name: string): string =>
  text.slice(start + 1, text.indexOf(name, start + 1));
