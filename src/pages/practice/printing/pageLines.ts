import { isoText, type Moment } from "../../../cells/day.ts";
import { walkXml } from "../../../workbook/xml/walkXml.ts";

/** What the lines above and below each page can name. */
export interface Named {
  readonly file: string;
  readonly sheet: string;
  readonly now: Moment;
}

/**
 * The headers and footers that a file has for a sheet, as rules for the margins of the paper (CSS Paged Media 3 §5); a browser
 * that knows no such rules passes over them. Texts and numbers of pages, file, sheet, day and hour are kept, and the size of
 * letters; kinds of letters, pictures and reckoned page numbers are left out.
 *
 * @param sheet - the part of the sheet: ECMA-376 Part 1 §18.3.1.46, and §18.3.1.39 for the codes
 * @returns rules for a style sheet; none where the file has no such lines
 * @example
 * pageLines("…<oddFooter>&amp;A&amp;RPage &amp;P of &amp;N</oddFooter>…", named)
 * // → '@page { @bottom-center { content: "Cases"; … } @bottom-right { content: "Page " counter(page) " of " counter(pages); … } }'
 */
export function pageLines(sheet: string, named: Named): string {
  const tail = sheet.slice(Math.max(0, sheet.lastIndexOf("sheetData")));
  const tag = /<(?:\w+:)?headerFooter\b[^>]*>/.exec(tail)?.[0] ?? "";
  const has = (setting: string): boolean => new RegExp(`\\s${setting}=["'](?:1|true)["']`).test(tag);
  const rule = (pages: string, kind: "odd" | "even" | "first"): string => {
    const boxes = [
      ...boxesOf("top", lineOf(tail, `${kind}Header`), named),
      ...boxesOf("bottom", lineOf(tail, `${kind}Footer`), named),
    ];
    return `@page${pages} { ${boxes.join(" ")} }`;
  };
  if (tag === "") return "";
  return [
    rule("", "odd"),
    ...(has("differentOddEven") ? [rule(" :left", "even")] : []),
    ...(has("differentFirst") ? [rule(" :first", "first")] : []),
  ].join("\n");
}

/** A line as it is stored, without the escapes of XML. */
function lineOf(tail: string, name: string): string {
  const found = new RegExp(`<(?:\\w+:)?${name}\\b[^>]*>([^<]*)</`).exec(tail)?.[1] ?? "";
  let text = "";
  walkXml(name, `<a>${found}</a>`, {
    text: (piece) => {
      text += piece;
    },
  });
  return text;
}

/** Three boxes of a margin. Each is written, since a rule for the first page inherits those of all pages. */
function boxesOf(edge: "top" | "bottom", line: string, named: Named): readonly string[] {
  const sections = sectionsOf(line, named);
  return (["left", "center", "right"] as const).map((place) => {
    const { content, size } = sections[place];
    const towardsSheet = edge === "top" ? "bottom" : "top";
    return content.length === 0
      ? `@${edge}-${place} { content: none; }`
      : `@${edge}-${place} { content: ${content.join(" ")}; font: ${size}pt sans-serif; vertical-align: ${towardsSheet}; padding-${towardsSheet}: 1.5mm; white-space: pre-line; }`;
  });
}

interface Section {
  content: string[];
  /** In points. */
  size: number;
}

const usualSize = 9;
/** In points; smaller letters are hard to read on paper (common practice, no source). */
const smallestSize = 8;

function sectionsOf(line: string, { file, sheet, now }: Named): Readonly<Record<"left" | "center" | "right", Section>> {
  const empty = (): Section => ({ content: [], size: usualSize });
  const sections = { left: empty(), center: empty(), right: empty() };
  // A line without a section stands in the middle.
  let section = sections.center;
  const say = (text: string): void => {
    section.content.push(quoted(text));
  };
  for (const [whole, page, style, digits, code] of line.matchAll(codes)) {
    if (page !== undefined || style !== undefined) continue;
    if (digits !== undefined) section.size = Math.max(smallestSize, Number(digits));
    else if (code === undefined) say(whole);
    else if (code === "L") section = sections.left;
    else if (code === "C") section = sections.center;
    else if (code === "R") section = sections.right;
    else if (code === "P") section.content.push("counter(page)");
    else if (code === "N") section.content.push("counter(pages)");
    else if (code === "F") say(file);
    else if (code === "A") say(sheet);
    else if (code === "D") say(isoText(Math.floor(now)));
    else if (code === "T") say(hourOf(now));
    else if (code === "&") say("&");
  }
  return sections;
}

// A reckoned number of a page, a kind of letters or their colour, a size, any other code, and text.
const codes = /&P([+-]\d+)|&("[^"]*"|K[0-9A-Fa-f+-]{5,6})|&(\d+)|&([\s\S])|[^&]+/g;

const hourOf = (now: Moment): string => {
  const minutes = Math.floor((now - Math.floor(now)) * 1440 + 1e-6);
  return `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
};

/** As a text of a style sheet: CSS Syntax 3 §4.3.5. */
const quoted = (text: string): string =>
  `"${text.replace(/["\\<\n\r]/g, (sign) => `\\${sign.charCodeAt(0).toString(16)} `)}"`;
