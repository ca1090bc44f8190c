import type { StylesPart } from "../parts/readStyles.ts";
import { escapeXml } from "../xml/escapeXml.ts";
import { splice } from "./splice.ts";

// ECMA-376 Part 1 §18.8.30: below 164 the numbers are the format's own.
const firstOwnNumber = 164;
const builtIn: ReadonlyMap<string, number> = new Map([
  ["0", 1],
  ["0.00", 2],
  ["0%", 9],
  ["0.00%", 10],
]);

export interface NumberFormats {
  readonly styleWith: (style: number, format: string) => number;
  /** The styles part with what was added, or undefined when nothing was. */
  readonly text: () => string | undefined;
}

/** Cell styles with a number format added, made as they are asked for. */
export function addNumberFormats(styles: StylesPart | undefined): NumberFormats {
  const made = new Map<string, number>();
  const elements: string[] = [];
  const own = new Map<string, number>();
  const numberOf = (format: string): number => {
    const known =
      builtIn.get(format) ??
      own.get(format) ??
      [...(styles?.numberFormats ?? [])].find(([, code]) => code === format)?.[0];
    if (known !== undefined) return known;
    const next = Math.max(firstOwnNumber - 1, styles?.lastNumberFormat ?? 0) + own.size + 1;
    own.set(format, next);
    return next;
  };
  return {
    styleWith(style, format) {
      const base = styles?.formats[style];
      // A format of the user's own stays; without a styles part there is nowhere to put one.
      if (!styles?.cellXfs || !base || !isGeneral(styles, base.numberFormat)) return style;
      const key = `${style} ${format}`;
      const known = made.get(key);
      if (known !== undefined) return known;
      elements.push(withNumberFormat(styles.text.slice(base.start, base.end), numberOf(format)));
      const added = styles.formats.length + elements.length - 1;
      made.set(key, added);
      return added;
    },
    text: () =>
      styles?.cellXfs && elements.length > 0 ? stylesText(styles, styles.cellXfs, elements, own) : undefined,
  };
}

// Some writers give General a number of their own.
const isGeneral = ({ numberFormats }: StylesPart, number: number): boolean =>
  number === 0 || numberFormats.get(number)?.toLowerCase() === "general";

function withNumberFormat(element: string, number: number): string {
  const end = element.indexOf(">");
  const selfClosing = element[end - 1] === "/";
  const opening = element.slice(0, selfClosing ? end - 1 : end);
  return (
    setAttribute(setAttribute(opening, "numFmtId", String(number)), "applyNumberFormat", "1") +
    element.slice(selfClosing ? end - 1 : end)
  );
}

function stylesText(
  styles: StylesPart,
  cellXfs: NonNullable<StylesPart["cellXfs"]>,
  elements: readonly string[],
  own: ReadonlyMap<string, number>,
): string {
  const { text, prefix, numFmts, inner, formats } = styles;
  const opening = setAttribute(
    text.slice(cellXfs.start, cellXfs.inner - 1),
    "count",
    String(formats.length + elements.length),
  );
  const splices = [
    { start: cellXfs.start, end: cellXfs.inner - 1, text: opening },
    { start: cellXfs.close, end: cellXfs.close, text: elements.join("") },
  ];
  const added = [...own]
    .map(([code, id]) => `<${prefix}numFmt numFmtId="${id}" formatCode="${escapeXml(code)}"/>`)
    .join("");
  if (added !== "") {
    if (numFmts && numFmts.inner !== numFmts.end) {
      const start = setAttribute(
        text.slice(numFmts.start, numFmts.inner - 1),
        "count",
        String(styles.numberFormats.size + own.size),
      );
      splices.push({ start: numFmts.start, end: numFmts.inner - 1, text: start });
      splices.push({ start: numFmts.close, end: numFmts.close, text: added });
    } else {
      const list = `<${prefix}numFmts count="${own.size}">${added}</${prefix}numFmts>`;
      splices.push(
        numFmts ? { start: numFmts.start, end: numFmts.end, text: list } : { start: inner, end: inner, text: list },
      );
    }
  }
  return splice(text, splices);
}

/** An opening tag, its `>` left off, with one attribute set. Quotes are respected: a value may hold what looks like a name. */
export function setAttribute(opening: string, name: string, value: string): string {
  for (let at = 0; at < opening.length; at += 1) {
    const sign = opening[at];
    if (sign === '"' || sign === "'") {
      at = opening.indexOf(sign, at + 1);
      continue;
    }
    if (!/\s/.test(sign ?? "") || !opening.startsWith(`${name}=`, at + 1)) continue;
    const quote = opening[at + name.length + 2] as string;
    const from = at + name.length + 3;
    return opening.slice(0, from) + escapeXml(value) + opening.slice(opening.indexOf(quote, from));
  }
  return `${opening} ${name}="${escapeXml(value)}"`;
}
