import { strToU8, zipSync } from "fflate";
import type { CellError } from "../../src/cells/cell.ts";
import { element, xmlFile } from "../../src/hosts/libreoffice/xml.ts";

/** A range in the sheet of the formula, 0-based, both ends included. */
export interface Range {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** A reference to one cell, by `row,column`, which Calc treats otherwise than a range of one. */
interface OneCell {
  readonly cell: string;
}

/** A call of one of our functions; a range as argument, or a value written into the formula; undefined is left out. */
export interface Call {
  readonly name: string;
  readonly given: readonly (Range | OneCell | number | string | boolean | undefined)[];
  /** Of the result: a rectangle becomes an array formula. */
  readonly rows: number;
  readonly columns: number;
}

/** A cell that is no call of ours; an error is made by a formula, as in life. */
export type Constant = number | string | boolean | CellError;

const faulty = ({ error }: CellError): string => {
  if (error === "#N/A") return "NA()";
  if (error === "#DIV/0!") return "1/0";
  throw new Error(`no formula here ends in ${error}`);
};

/** One sheet without a single worked-out value: constants and calls, by `row,column`. */
export interface Sheet {
  readonly constants: ReadonlyMap<string, Constant>;
  readonly calls: ReadonlyMap<string, Call>;
}

export const place = (row: number, column: number): string => `${row},${column}`;

const letters = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : letters(Math.floor(column / 26) - 1) + String.fromCharCode(65 + (column % 26));

const address = (row: number, column: number): string => `${letters(column)}${row + 1}`;

const addressOf = ({ cell }: OneCell): string => {
  const [row = 0, column = 0] = cell.split(",").map(Number);
  return address(row, column);
};

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

function written(
  call: Call,
  name: string,
  separator: string,
  range: (range: Range) => string,
  one: (address: string) => string,
): string {
  const given = call.given.map((argument) => {
    if (argument === undefined) return "";
    if (typeof argument === "object") return "cell" in argument ? one(addressOf(argument)) : range(argument);
    if (typeof argument === "boolean") return argument ? "TRUE()" : "FALSE()";
    return typeof argument === "string" ? quoted(argument) : String(argument);
  });
  while (given.at(-1) === "") given.pop();
  return `${name}(${given.join(separator)})`;
}

/** The formula of a call as a person types it in Excel. */
export const typedFormula = (call: Call): string =>
  `=${written(
    call,
    `FOOT.${call.name}`,
    ",",
    ({ top, left, bottom, right }) => `${address(top, left)}:${address(bottom, right)}`,
    (cell) => cell,
  )}`;

/** The sheet as a flat .fods file, as Calc itself names the functions. */
export function flatDocument({ constants, calls }: Sheet): string {
  const rows = grid(constants, calls).map((keys) =>
    element(
      "table:table-row",
      {},
      keys.map((key) => {
        const call = calls.get(key);
        return call === undefined ? constantCell(constants.get(key)) : callCell(call);
      }),
    ),
  );
  return xmlFile(
    element(
      "office:document",
      {
        "xmlns:office": "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
        "xmlns:table": "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
        "xmlns:text": "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
        "xmlns:of": "urn:oasis:names:tc:opendocument:xmlns:of:1.2",
        "office:version": "1.2",
        "office:mimetype": "application/vnd.oasis.opendocument.spreadsheet",
      },
      [
        element("office:body", {}, [
          element("office:spreadsheet", {}, [element("table:table", { "table:name": "Calls" }, rows)]),
        ]),
      ],
    ),
  );
}

function callCell(call: Call): string {
  const range = ({ top, left, bottom, right }: Range): string => `[.${address(top, left)}:.${address(bottom, right)}]`;
  return element("table:table-cell", {
    "table:formula": `of:=${written(call, `SOUNDFOLD.FOOT.${call.name}`, ";", range, (cell) => `[.${cell}]`)}`,
    ...(call.rows * call.columns === 1
      ? {}
      : {
          "table:number-matrix-rows-spanned": String(call.rows),
          "table:number-matrix-columns-spanned": String(call.columns),
        }),
  });
}

function constantCell(value: Constant | undefined): string {
  if (value === undefined) return element("table:table-cell", {});
  if (typeof value === "object") return element("table:table-cell", { "table:formula": `of:=${faulty(value)}` });
  if (typeof value === "number")
    return element("table:table-cell", { "office:value-type": "float", "office:value": String(value) });
  if (typeof value === "boolean")
    return element("table:table-cell", { "office:value-type": "boolean", "office:boolean-value": String(value) });
  return element("table:table-cell", { "office:value-type": "string", "office:string-value": value }, [
    element("text:p", {}, value),
  ]);
}

/** The sheet as an .xlsx file, as Excel names and stores the functions. */
export function excelWorkbook({ constants, calls }: Sheet, { date1904 = false } = {}): Uint8Array {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const rows = grid(constants, calls).map((keys, row) =>
    element(
      "row",
      { r: String(row + 1) },
      keys.map((key, column) => excelCell(address(row, column), row, column, calls.get(key), constants.get(key))),
    ),
  );
  const files = {
    "[Content_Types].xml": element("Types", { xmlns: "http://schemas.openxmlformats.org/package/2006/content-types" }, [
      element("Default", {
        Extension: "rels",
        ContentType: "application/vnd.openxmlformats-package.relationships+xml",
      }),
      element("Override", {
        PartName: "/xl/workbook.xml",
        ContentType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
      }),
      element("Override", {
        PartName: "/xl/worksheets/sheet1.xml",
        ContentType: "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml",
      }),
    ]),
    "_rels/.rels": relationship(`${relations}/officeDocument`, "xl/workbook.xml"),
    "xl/workbook.xml": element("workbook", { xmlns: main, "xmlns:r": relations }, [
      ...(date1904 ? [element("workbookPr", { date1904: "1" })] : []),
      element("sheets", {}, [element("sheet", { name: "Calls", sheetId: "1", "r:id": "rId1" })]),
    ]),
    "xl/_rels/workbook.xml.rels": relationship(`${relations}/worksheet`, "worksheets/sheet1.xml"),
    "xl/worksheets/sheet1.xml": element("worksheet", { xmlns: main }, [element("sheetData", {}, rows)]),
  };
  return zipSync(Object.fromEntries(Object.entries(files).map(([path, root]) => [path, strToU8(xmlFile(root))])));
}

const relationship = (type: string, target: string): string =>
  element("Relationships", { xmlns: "http://schemas.openxmlformats.org/package/2006/relationships" }, [
    element("Relationship", { Id: "rId1", Type: type, Target: target }),
  ]);

function excelCell(
  r: string,
  row: number,
  column: number,
  call: Call | undefined,
  value: Constant | undefined,
): string {
  if (call !== undefined) {
    const range = ({ top, left, bottom, right }: Range): string => `${address(top, left)}:${address(bottom, right)}`;
    const end = address(row + call.rows - 1, column + call.columns - 1);
    const formula = written(call, `_xldudf_FOOT_${call.name}`, ",", range, (cell) => cell);
    return element("c", { r }, [
      element("f", { t: "array", ref: call.rows * call.columns === 1 ? r : `${r}:${end}` }, formula),
    ]);
  }
  if (value === undefined) return "";
  if (typeof value === "object") return element("c", { r }, [element("f", {}, faulty(value))]);
  if (typeof value === "number") return element("c", { r }, [element("v", {}, String(value))]);
  if (typeof value === "boolean") return element("c", { r, t: "b" }, [element("v", {}, value ? "1" : "0")]);
  return element("c", { r, t: "inlineStr" }, [element("is", {}, [element("t", { "xml:space": "preserve" }, value)])]);
}

/** The keys of all cells, row by row, from A1 to the last one in use. */
function grid(...maps: readonly ReadonlyMap<string, unknown>[]): string[][] {
  let height = 0;
  let width = 0;
  for (const map of maps) {
    for (const key of map.keys()) {
      const [row = 0, column = 0] = key.split(",").map(Number);
      height = Math.max(height, row + 1);
      width = Math.max(width, column + 1);
    }
  }
  return Array.from({ length: height }, (_, row) => Array.from({ length: width }, (_, column) => place(row, column)));
}
