import { strToU8, type Zippable, zipSync } from "fflate";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { readPlace } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { cellValue } from "../../src/workbook/workbook.ts";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packageLinks = "http://schemas.openxmlformats.org/package/2006/relationships";
const sheetml = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

interface SheetToBuild {
  readonly name: string;
  /** The rows, as XML. */
  readonly rows: string;
  /** XML before and after the rows. */
  readonly before?: string;
  readonly after?: string;
  readonly tables?: readonly string[];
}

export interface WorkbookToBuild {
  readonly sheets: readonly SheetToBuild[];
  readonly names?: string;
  /** What the file says of its calculation, as XML. */
  readonly calculation?: string;
  readonly date1904?: boolean;
  readonly sharedStrings?: readonly string[];
  readonly styles?: string;
  /** Parts written as they are, over those made here. */
  readonly parts?: Readonly<Record<string, string | Uint8Array>>;
  readonly links?: string;
  readonly types?: string;
  readonly without?: readonly string[];
}

/** Marks a cell as a dynamic array formula, as Excel does. */
const metadata = `${head}<metadata xmlns="${main}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

const styles = `${head}<styleSheet xmlns="${main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0" fontId="0" xfId="0"/><xf numFmtId="14" fontId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="0" fontId="1" xfId="0"><alignment horizontal="center"/></xf></cellXfs></styleSheet>`;

/** A small .xlsx written out by hand, so that a test can hold any oddity that a writer could produce. */
export function buildWorkbook(wanted: WorkbookToBuild): Uint8Array {
  const {
    sheets,
    names = "",
    calculation = "",
    date1904 = false,
    sharedStrings,
    links = "",
    types = "",
    parts = {},
    without = [],
  } = wanted;
  const files: Record<string, string | Uint8Array> = {};
  const listed: string[] = [];
  const sheetLinks: string[] = [];
  const overrides: string[] = [];
  let tableNumber = 0;
  sheets.forEach(({ name, rows, before = "", after = "", tables = [] }, index) => {
    const number = index + 1;
    listed.push(`<sheet name="${name}" sheetId="${number}" r:id="s${number}"/>`);
    sheetLinks.push(
      `<Relationship Id="s${number}" Type="${office}/worksheet" Target="worksheets/sheet${number}.xml"/>`,
    );
    overrides.push(`<Override PartName="/xl/worksheets/sheet${number}.xml" ContentType="${sheetml}.worksheet+xml"/>`);
    const tableParts = tables.map((_, at) => `<tablePart r:id="t${at}"/>`).join("");
    const tail = tables.length === 0 ? "" : `<tableParts count="${tables.length}">${tableParts}</tableParts>`;
    files[`xl/worksheets/sheet${number}.xml`] =
      `${head}<worksheet xmlns="${main}" xmlns:r="${office}">${before}<sheetData>${rows}</sheetData>${after}${tail}</worksheet>`;
    if (tables.length === 0) return;
    const tableLinks = tables.map((xml, at) => {
      tableNumber += 1;
      files[`xl/tables/table${tableNumber}.xml`] = head + xml;
      overrides.push(`<Override PartName="/xl/tables/table${tableNumber}.xml" ContentType="${sheetml}.table+xml"/>`);
      return `<Relationship Id="t${at}" Type="${office}/table" Target="../tables/table${tableNumber}.xml"/>`;
    });
    files[`xl/worksheets/_rels/sheet${number}.xml.rels`] =
      `${head}<Relationships xmlns="${packageLinks}">${tableLinks.join("")}</Relationships>`;
  });
  const add = (part: string, kind: string, type: string, text: string): void => {
    files[`xl/${part}`] = text;
    sheetLinks.push(`<Relationship Id="x${kind}" Type="${office}/${kind}" Target="${part}"/>`);
    overrides.push(`<Override PartName="/xl/${part}" ContentType="${sheetml}.${type}+xml"/>`);
  };
  add("metadata.xml", "sheetMetadata", "sheetMetadata", metadata);
  add("styles.xml", "styles", "styles", wanted.styles ?? styles);
  if (sharedStrings) {
    const items = sharedStrings.map((item) => `<si>${item}</si>`).join("");
    add("sharedStrings.xml", "sharedStrings", "sharedStrings", `${head}<sst xmlns="${main}">${items}</sst>`);
  }
  const named = names === "" ? "" : `<definedNames>${names}</definedNames>`;
  files["xl/workbook.xml"] =
    `${head}<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr${date1904 ? ' date1904="1"' : ""}/><sheets>${listed.join("")}</sheets>${named}${calculation}</workbook>`;
  files["xl/_rels/workbook.xml.rels"] =
    `${head}<Relationships xmlns="${packageLinks}">${sheetLinks.join("")}${links}</Relationships>`;
  files["_rels/.rels"] =
    `${head}<Relationships xmlns="${packageLinks}"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`;
  files["[Content_Types].xml"] =
    `${head}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${sheetml}.sheet.main+xml"/>${overrides.join("")}${types}</Types>`;
  return zipParts({ ...files, ...parts }, without);
}

/** Parts as a zip, in the order of a spreadsheet's own files. */
export function zipParts(
  files: Readonly<Record<string, string | Uint8Array>>,
  without: readonly string[] = [],
): Uint8Array {
  const packed: Zippable = {};
  for (const [name, content] of Object.entries(files)) {
    if (!without.includes(name)) packed[name] = typeof content === "string" ? strToU8(content) : content;
  }
  return zipSync(packed, { mtime: "1990-01-01T00:00:00" });
}

/** One number or formula a cell: `{ A1: 4, B1: "=A1+1", C1: "text" }` as rows. */
export function rowsOf(cells: Readonly<Record<string, number | string | boolean>>): string {
  const rows = new Map<number, string[]>();
  const escaped = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  for (const [address, content] of Object.entries(cells)) {
    const row = (readPlace(address)?.row ?? 0) + 1;
    const cell =
      typeof content === "number"
        ? `<c r="${address}"><v>${content}</v></c>`
        : typeof content === "boolean"
          ? `<c r="${address}" t="b"><v>${content ? 1 : 0}</v></c>`
          : content.startsWith("=")
            ? `<c r="${address}"><f>${escaped(content.slice(1))}</f></c>`
            : `<c r="${address}" t="inlineStr"><is><t>${escaped(content)}</t></is></c>`;
    rows.set(row, [...(rows.get(row) ?? []), cell]);
  }
  return [...rows].map(([row, list]) => `<row r="${row}">${list.join("")}</row>`).join("");
}

/** Works out all of a file, whatever was saved in it, and opens the answer, to be read by sheet and address. */
export async function recalculated(bytes: Uint8Array) {
  const before = openWorkbook(bytes);
  const { bytes: after, summary } = await recalculate(before, engineInNode(), undefined, { all: true });
  const workbook = openWorkbook(after);
  const at = (address: string, sheet = 0) => {
    const place = readPlace(address);
    const found = workbook.sheets[sheet];
    if (!place || !found) throw new Error(`no cell ${address}`);
    return cellValue(found, place.row, place.column);
  };
  const xml = (sheet = 0): string => workbook.sheets[sheet]?.text ?? "";
  return { at, xml, summary, before, workbook, bytes: after };
}
