import { isDeepStrictEqual } from "node:util";
import { strFromU8, unzipSync } from "fflate";
import { bareName, elementsIn, textIn, type XmlElement, xmlTree } from "./xmlTree.ts";

/**
 * What recalculating has changed in a file that it had no business to change; empty when all is well. It may change
 * values of formulas, the cells that an array fills, how a formula is stored as one that fills cells, number formats of
 * cells that had none, and what lists the order of calculation. Every other part must be the same to the byte, and
 * every other element of a sheet the same.
 */
export function changesBeyondAnswers(before: Uint8Array, after: Uint8Array): readonly string[] {
  const [old, now] = [unzipSync(before), unzipSync(after)];
  const sheets = sheetParts(old);
  const styles = stylesOf(now["xl/styles.xml"]);
  const found: string[] = [];
  for (const part of Object.keys(now)) {
    if (!(part in old) && part !== "xl/metadata.xml") found.push(`${part} was added`);
  }
  for (const [part, bytes] of Object.entries(old)) {
    const kept = now[part];
    if (kept === undefined) {
      if (part !== "xl/calcChain.xml") found.push(`${part} is gone`);
    } else if (!Buffer.from(bytes).equals(kept)) {
      const [one, other] = [strFromU8(bytes), strFromU8(kept)];
      if (sheets.includes(part)) found.push(...inSheet(one, other, styles).map((what) => `${part}: ${what}`));
      else if (part === "xl/styles.xml") found.push(...inStyles(one, other).map((what) => `${part}: ${what}`));
      else if (part === "[Content_Types].xml" || part === "xl/_rels/workbook.xml.rels")
        found.push(...inList(one, other).map((what) => `${part}: ${what}`));
      else if (part !== "xl/metadata.xml") found.push(`${part} was changed`);
    }
  }
  return found;
}

/** The sheets with cells, by what the workbook says of them. */
function sheetParts(files: Readonly<Record<string, Uint8Array>>): readonly string[] {
  const links = xmlTree(strFromU8(files["xl/_rels/workbook.xml.rels"] as Uint8Array));
  return elementsIn(links)
    .filter(({ attributes }) => attributes.Type?.endsWith("/worksheet"))
    .map(({ attributes: { Target = "" } }) => (Target.startsWith("/") ? Target.slice(1) : `xl/${Target}`));
}

/** What was put into or taken out of a list of parts, beyond the order of calculation and the mark of spills. */
function inList(before: string, after: string): readonly string[] {
  const entries = (text: string): readonly string[] =>
    elementsIn(xmlTree(text)).map(({ attributes }) => JSON.stringify(attributes));
  const [old, now] = [entries(before), entries(after)];
  return [
    ...old.filter((entry) => !now.includes(entry) && !/calcChain/.test(entry)).map((entry) => `lost ${entry}`),
    ...now.filter((entry) => !old.includes(entry) && !/metadata/i.test(entry)).map((entry) => `gained ${entry}`),
  ];
}

interface Styles {
  readonly formats: readonly XmlElement[];
  /** Numbers of the number formats that show a number as it is. */
  readonly general: ReadonlySet<string | undefined>;
}

function stylesOf(part: Uint8Array | undefined): Styles {
  const lists = part === undefined ? [] : elementsIn(xmlTree(strFromU8(part)));
  const all = (name: string) => lists.filter((list) => bareName(list) === name).flatMap((list) => elementsIn(list));
  const written = all("numFmts").filter(({ attributes }) => attributes.formatCode?.toLowerCase() === "general");
  return {
    formats: all("cellXfs"),
    general: new Set([undefined, "0", ...written.map(({ attributes }) => attributes.numFmtId)]),
  };
}

/** Number formats and the cell formats that use them may come at the end of their lists; all else stays. */
function inStyles(before: string, after: string): readonly string[] {
  const shorn = (text: string, keep: { numFmts: number; cellXfs: number }) =>
    elementsIn(xmlTree(text)).flatMap((list): unknown[] => {
      const name = bareName(list);
      if (name !== "numFmts" && name !== "cellXfs") return [list];
      const kept = elementsIn(list).slice(0, keep[name]);
      return kept.length === 0 ? [] : [{ name, kept }];
    });
  const count = (name: string): number =>
    elementsIn(xmlTree(before))
      .filter((list) => bareName(list) === name)
      .flatMap((list) => elementsIn(list)).length;
  const keep = { numFmts: count("numFmts"), cellXfs: count("cellXfs") };
  return isDeepStrictEqual(shorn(before, keep), shorn(after, keep)) ? [] : ["more than number formats was changed"];
}

function inSheet(before: string, after: string, styles: Styles): readonly string[] {
  const found: string[] = [];
  if (around(before) !== around(after)) found.push("what stands around the cells was changed");
  const [old, now] = [rowsOf(before), rowsOf(after)];
  const places = filledPlaces([...old.values(), ...now.values()]);
  for (const [number, { attributes, cells }] of now) {
    const row = old.get(number);
    if (row === undefined) {
      if (![...cells.keys()].every(places)) found.push(`row ${number} was added`);
    } else if (!isDeepStrictEqual(row.attributes, attributes)) found.push(`row ${number} has other attributes`);
    for (const [address, cell] of cells) found.push(...inCell(address, row?.cells.get(address), cell, places, styles));
  }
  for (const [number, { cells }] of old) {
    for (const address of cells.keys()) {
      if (!now.get(number)?.cells.has(address) && !places(address)) found.push(`${address} is gone`);
    }
  }
  const order = [...now.keys()];
  if (
    !isDeepStrictEqual(
      order,
      [...order].sort((one, other) => one - other),
    )
  )
    found.push("rows are out of order");
  return found;
}

const around = (text: string): string =>
  text.replace(/<(?:\w+:)?sheetData(?:\s[^>]*)?(?:\/>|>[\s\S]*<\/(?:\w+:)?sheetData>)/, "");

interface Row {
  readonly attributes: Readonly<Record<string, string>>;
  readonly cells: ReadonlyMap<string, XmlElement>;
}

function rowsOf(text: string): ReadonlyMap<number, Row> {
  const rows = new Map<number, Row>();
  for (const data of elementsIn(xmlTree(text), "sheetData")) {
    for (const row of elementsIn(data, "row")) {
      const { r = "", ...attributes } = row.attributes;
      const cells = new Map(elementsIn(row, "c").map((cell) => [cell.attributes.r ?? "", cell]));
      rows.set(Number(r), { attributes, cells });
    }
  }
  return rows;
}

const formulaIn = (cell: XmlElement): XmlElement | undefined => elementsIn(cell, "f")[0];

/** Whether an address lies where an array formula puts its answer, now or before. */
function filledPlaces(rows: readonly Row[]): (address: string) => boolean {
  const areas = rows.flatMap(({ cells }) =>
    [...cells.values()].flatMap((cell) => {
      const formula = formulaIn(cell);
      return formula?.attributes.t === "array" ? [corners(formula.attributes.ref ?? "")] : [];
    }),
  );
  return (address) => {
    const [{ row, column }] = corners(address);
    return areas.some(([from, to]) => row >= from.row && row <= to.row && column >= from.column && column <= to.column);
  };
}

interface Corner {
  readonly row: number;
  readonly column: number;
}

function corners(area: string): readonly [Corner, Corner] {
  const corner = (address = ""): Corner => {
    const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
    return {
      row: Number(digits),
      column: [...letters].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0),
    };
  };
  const [from, to = from] = area.split(":");
  return [corner(from), corner(to)];
}

function inCell(
  address: string,
  old: XmlElement | undefined,
  now: XmlElement,
  filled: (address: string) => boolean,
  styles: Styles,
): readonly string[] {
  if (old === undefined) return filled(address) && !formulaIn(now) ? [] : [`${address} was added`];
  const found: string[] = [];
  const [oldFormula, formula] = [formulaIn(old), formulaIn(now)];
  if (!oldFormula && !filled(address)) return isDeepStrictEqual(old, now) ? [] : [`${address} was changed`];
  if (!sameFormula(oldFormula, formula)) found.push(`${address} has the formula ${formula && textIn(formula)}`);
  if (!sameStyle(old.attributes.s ?? "0", now.attributes.s ?? "0", styles)) found.push(`${address} has another format`);
  const rest = ({ attributes: { s, t, cm, ...others } }: XmlElement) => others;
  if (!isDeepStrictEqual(rest(old), rest(now))) found.push(`${address} has other attributes`);
  const beside = (cell: XmlElement) => elementsIn(cell).filter((child) => !["f", "v", "is"].includes(bareName(child)));
  if (!isDeepStrictEqual(beside(old), beside(now))) found.push(`${address} lost what stood beside its value`);
  return found;
}

/**
 * Whether it is the same formula, whatever its functions are stored as. One that was shared and now calls a function of
 * this project on its own is left to its answer, which other tests compare.
 */
function sameFormula(before: XmlElement | undefined, after: XmlElement | undefined): boolean {
  if (before === undefined || after === undefined) return before === after;
  if (before.attributes.t === "shared" && after.attributes.t === "array") return /^_xldudf_FOOT_/.test(textIn(after));
  if (before.attributes.t === "shared" && !isDeepStrictEqual(before.attributes, after.attributes)) return false;
  // Other programs may write the names in small letters.
  const plain = (formula: XmlElement): string =>
    textIn(formula)
      .replaceAll(/(?:_xldudf_FOOT_|FOOT\.)(\w+)/gi, (_, name: string) => `FOOT ${name.toUpperCase()}`)
      .replaceAll(/_xlfn\.|_xlws\./g, "");
  return plain(before) === plain(after);
}

/** The same format, or one that differs only in the number format where there was none. */
function sameStyle(before: string, after: string, styles: Styles): boolean {
  if (before === after) return true;
  const shape = (place: string) => {
    const { name = "", attributes = {}, children = [] } = styles.formats[Number(place)] ?? {};
    const { numFmtId, applyNumberFormat, ...others } = attributes;
    return { number: numFmtId, others, name, children };
  };
  const [old, now] = [shape(before), shape(after)];
  return styles.general.has(old.number) && isDeepStrictEqual({ ...old, number: now.number }, now);
}
