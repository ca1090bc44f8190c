import { createRequire } from "node:module";
import { strFromU8, unzipSync } from "fflate";
import { elementsIn, textIn, type XmlElement, xmlTree } from "../xmlTree.ts";

const { slideFormula } = createRequire(import.meta.url)("exceljs/lib/utils/shared-formula.js") as {
  slideFormula: (formula: string, from: string, to: string) => string;
};

/** A cell as its bytes in the sheet part say it, read without anything of this project. */
export interface StoredCell {
  /** Its whole element. */
  readonly xml: string;
  /** The element without the formula. */
  readonly besideFormula: string;
  readonly formula: string | undefined;
  /** It shares its formula with others, or is what they point to. */
  readonly shared: boolean;
  /** The cells that an array formula fills, as A1 or A1:B2. */
  readonly fills: string | undefined;
  readonly hasValue: boolean;
}

interface StoredSheet {
  readonly name: string;
  readonly part: string;
  readonly cells: ReadonlyMap<string, StoredCell>;
}

export interface StoredTable {
  readonly name: string;
  readonly sheet: number;
  readonly area: string;
  readonly columns: readonly string[];
}

export interface StoredWorkbook {
  readonly sheets: readonly StoredSheet[];
  readonly names: ReadonlyMap<string, string>;
  readonly tables: readonly StoredTable[];
}

/** The cells, names and tables of a file. */
export function storedWorkbook(bytes: Uint8Array): StoredWorkbook {
  const files = unzipSync(bytes);
  const tree = (part: string): XmlElement => xmlTree(strFromU8(files[part] as Uint8Array));
  const book = tree("xl/workbook.xml");
  const links = linksOf(files, "xl/workbook.xml");
  const inList = (list: string, name: string): readonly XmlElement[] =>
    elementsIn(book, list).flatMap((element) => elementsIn(element, name));
  const sheets: StoredSheet[] = [];
  const tables: StoredTable[] = [];
  for (const { attributes } of inList("sheets", "sheet")) {
    const link = links.get(attributes["r:id"] ?? "");
    if (!link?.kind.endsWith("/worksheet")) continue;
    const sheet = sheets.length;
    sheets.push({
      name: attributes.name ?? "",
      part: link.part,
      cells: cellsIn(strFromU8(files[link.part] as Uint8Array)),
    });
    for (const { kind, part } of linksOf(files, link.part).values()) {
      if (!kind.endsWith("/table")) continue;
      const table = tree(part);
      const columns = elementsIn(table, "tableColumns").flatMap((list) => elementsIn(list, "tableColumn"));
      tables.push({
        name: (table.attributes.displayName ?? "").toLowerCase(),
        sheet,
        area: table.attributes.ref ?? "",
        columns: columns.map((column) => (column.attributes.name ?? "").toLowerCase()),
      });
    }
  }
  const names = new Map(
    inList("definedNames", "definedName").map((name) => [(name.attributes.name ?? "").toLowerCase(), textIn(name)]),
  );
  return { sheets, names, tables };
}

interface Link {
  readonly kind: string;
  readonly part: string;
}

function linksOf(files: Readonly<Record<string, Uint8Array>>, part: string): ReadonlyMap<string, Link> {
  const cut = part.lastIndexOf("/");
  const folder = part.slice(0, cut);
  const bytes = files[`${folder}/_rels${part.slice(cut)}.rels`];
  if (!bytes) return new Map();
  return new Map(
    elementsIn(xmlTree(strFromU8(bytes))).map(({ attributes: { Id = "", Type = "", Target = "" } }) => {
      const found = new URL(Target, `http://parts/${folder}/`).pathname.slice(1);
      return [Id, { kind: Type, part: found }] as const;
    }),
  );
}

const cellElement = /<(?:\w+:)?c\s([^>]*?)(?:\/>|>([\s\S]*?)<\/(?:\w+:)?c>)/g;
const formulaElement = /<(?:\w+:)?f(\s[^>]*?)?(?:\/>|>([\s\S]*?)<\/(?:\w+:)?f>)/;
const valueElement = /<(?:\w+:)?v(?:\s[^>]*)?(?:\/>|>)/;

const attribute = (attributes: string, name: string): string | undefined =>
  new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1];

function cellsIn(sheet: string): ReadonlyMap<string, StoredCell> {
  const leaders = new Map<string, { readonly address: string; readonly formula: string }>();
  const cells = new Map<string, StoredCell>();
  for (const [xml, attributes = "", content = ""] of sheet.matchAll(cellElement)) {
    const address = attribute(attributes, "r");
    if (address === undefined) throw new Error(`a cell does not say where it stands: ${xml}`);
    const [element, kinds = "", text = ""] = formulaElement.exec(content) ?? [];
    const common = { xml, besideFormula: xml.replace(element ?? "", ""), hasValue: valueElement.test(content) };
    if (element === undefined) {
      cells.set(address, { ...common, formula: undefined, shared: false, fills: undefined });
      continue;
    }
    const own = textIn(xmlTree(`<f>${text}</f>`));
    const group = attribute(kinds, "t") === "shared" ? attribute(kinds, "si") : undefined;
    if (group !== undefined && own !== "") leaders.set(group, { address, formula: own });
    const leader = group === undefined ? undefined : leaders.get(group);
    const formula = own === "" && leader ? slideFormula(leader.formula, leader.address, address) : own;
    const fills = attribute(kinds, "t") === "array" ? attribute(kinds, "ref") : undefined;
    cells.set(address, { ...common, formula, shared: group !== undefined, fills });
  }
  return cells;
}
