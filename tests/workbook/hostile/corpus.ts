import { strToU8, zipSync } from "fflate";
import { buildWorkbook, rowsOf, type WorkbookToBuild, zipParts } from "../buildWorkbook.ts";

/** A file that is damaged, odd or meant to do harm, and what it must end in. */
export interface HostileFile {
  readonly name: string;
  readonly make: () => Uint8Array;
  /** The one sentence it is refused with, or the answers by address in its first sheet. */
  readonly endsIn: RegExp | Readonly<Record<string, number | string | boolean>>;
}

type Cells = Parameters<typeof rowsOf>[0];

const sheetOf = (cells: Cells, more: Partial<WorkbookToBuild> = {}): Uint8Array =>
  buildWorkbook({ sheets: [{ name: "One", rows: rowsOf(cells) }], ...more });
const rowsText = (rows: string, more: Partial<WorkbookToBuild> = {}): Uint8Array =>
  buildWorkbook({ sheets: [{ name: "One", rows }], ...more });
/** The example that must still be worked out when the oddity beside it does no harm. */
const sound: Cells = { A1: 4, B1: 20, C1: "=_xldudf_FOOT_FLOCKPREV(A1,B1)" };
const answered = { C1: 0.2 };

const entityBomb = (root: string): string => {
  const levels = Array.from({ length: 10 }, (_, level) =>
    level === 0 ? '<!ENTITY e0 "ha">' : `<!ENTITY e${level} "${`&e${level - 1};`.repeat(10)}">`,
  );
  return `<?xml version="1.0"?><!DOCTYPE x [${levels.join("")}]>${root.replace("*", "&e9;")}`;
};

/** Many names in the zip's directory for one packed part, so that a small file unpacks to a large one. */
function overlappingBomb(names: number): Uint8Array {
  const one = zipSync({ "a.xml": [new Uint8Array(9_900_000), { level: 9 }] });
  const view = new DataView(one.buffer, one.byteOffset, one.byteLength);
  const end = one.length - 22;
  const directory = view.getUint32(end + 16, true);
  const entry = one.slice(directory, end);
  const entries = Array.from({ length: names }, (_, index) => {
    const copy = entry.slice();
    copy.set(
      strToU8(`${String.fromCharCode(97 + (index % 26))}${String.fromCharCode(97 + Math.floor(index / 26))}xml`),
      46,
    );
    return copy;
  });
  const tail = one.slice(end);
  const tailView = new DataView(tail.buffer);
  tailView.setUint16(8, names, true);
  tailView.setUint16(10, names, true);
  tailView.setUint32(12, entry.length * names, true);
  return Buffer.concat([one.slice(0, directory), ...entries, tail]);
}

/** The file with a part under a name of the same length, which no library here would write. */
const renamed = (bytes: Uint8Array, from: string, to: string): Uint8Array =>
  Buffer.from(Buffer.from(bytes).toString("latin1").replaceAll(from, to), "latin1");

const strictWorkbook = (): Uint8Array => {
  const main = "http://purl.oclc.org/ooxml/spreadsheetml/main";
  const office = "http://purl.oclc.org/ooxml/officeDocument/relationships";
  const links = "http://schemas.openxmlformats.org/package/2006/relationships";
  return zipParts({
    "[Content_Types].xml":
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>',
    "_rels/.rels": `<Relationships xmlns="${links}"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${links}"><Relationship Id="r1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/workbook.xml": `<x:workbook xmlns:x="${main}" xmlns:q="${office}" conformance="strict"><x:sheets><x:sheet name="One" sheetId="1" q:id="r1"/></x:sheets></x:workbook>`,
    "xl/worksheets/sheet1.xml": `<x:worksheet xmlns:x="${main}"><x:sheetData><x:row r="1"><x:c r="A1" t="d"><x:v>2026-02-10</x:v></x:c><x:c r="B1"><x:v>28</x:v></x:c><x:c r="C1"><x:f>_xldudf_FOOT_CLEARDATE(A1,B1)</x:f></x:c></x:row></x:sheetData></x:worksheet>`,
  });
};

const table = (id: number, name: string, ref: string, columns: readonly string[]): string =>
  `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="${id}" name="${name}" displayName="${name}" ref="${ref}"><tableColumns count="${columns.length}">${columns
    .map((column, index) => `<tableColumn id="${index + 1}" name="${column}"/>`)
    .join("")}</tableColumns></table>`;

const inlineText = (address: string, text: string): string =>
  `<c r="${address}" t="inlineStr"><is><t>${text}</t></is></c>`;

const compound = (stream: string): Uint8Array =>
  Uint8Array.from([
    ...[0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1],
    ...new Array<number>(504).fill(0),
    ...[...stream].flatMap((letter) => [letter.charCodeAt(0), 0]),
  ]);

const columnName = (index: number): string =>
  index < 26 ? String.fromCharCode(65 + index) : columnName(Math.floor(index / 26) - 1) + columnName(index % 26);

const wideRow = (): string =>
  `<row r="1">${Array.from({ length: 16_384 }, (_, index) => `<c r="${columnName(index)}1"><v>1</v></c>`).join("")}</row><row r="2"><c r="A2"><f>SUM(A1:XFD1)</f></c></row>`;

const manyNames = (count: number): string =>
  Array.from({ length: count }, (_, index) => `<definedName name="n_${index}">One!$A$1</definedName>`).join("");

export const corpus: readonly HostileFile[] = [
  // Files that grow.
  {
    name: "a part that unpacks to 1000 times its size",
    make: () => zipParts({ "_rels/.rels": "x", "xl/worksheets/sheet1.xml": new Uint8Array(60_000_000) }),
    endsIn: /times its packed size/,
  },
  { name: "one packed part under 200 names", make: () => overlappingBomb(200), endsIn: /more than 1000 MB/ },
  {
    name: "20,000 parts",
    make: () => zipParts(Object.fromEntries(Array.from({ length: 20_000 }, (_, index) => [`p${index}`, ""]))),
    endsIn: /more than 10000 parts/,
  },
  ...(["xl/workbook.xml", "xl/worksheets/sheet1.xml", "xl/_rels/workbook.xml.rels", "xl/styles.xml"] as const).map(
    (part) => ({
      name: `growing entities in ${part}`,
      make: () => sheetOf(sound, { parts: { [part]: entityBomb("<x>*</x>") } }),
      endsIn: /declares a document type/,
    }),
  ),
  {
    name: "an entity from a file of the machine",
    make: () =>
      sheetOf(sound, {
        parts: {
          "xl/worksheets/sheet1.xml":
            '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/hostname">]><worksheet><sheetData><row r="1"><c r="A1" t="str"><v>&f;</v></c></row></sheetData></worksheet>',
        },
      }),
    endsIn: /declares a document type/,
  },
  {
    name: "XML nested 200,000 deep",
    make: () =>
      sheetOf(sound, {
        parts: {
          "xl/worksheets/sheet1.xml": `<worksheet>${"<x>".repeat(200_000)}${"</x>".repeat(200_000)}</worksheet>`,
        },
      }),
    endsIn: /holds no cells/,
  },

  {
    name: "30,000 sheets, each a part of its own",
    make: () =>
      buildWorkbook({ sheets: Array.from({ length: 30_000 }, (_, index) => ({ name: `S${index}`, rows: "" })) }),
    endsIn: /more than 10000 parts/,
  },
  {
    name: "30,000 sheets of one part",
    make: () =>
      sheetOf(sound, {
        parts: {
          "xl/workbook.xml": `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>${Array.from({ length: 30_000 }, (_, index) => `<sheet name="S${index}" sheetId="${index + 1}" r:id="s1"/>`).join("")}</sheets></workbook>`,
        },
      }),
    endsIn: /two of its sheets are one part/,
  },

  // Names that lead elsewhere.
  {
    name: "names that climb out of the folder",
    make: () =>
      sheetOf(sound, { parts: { "../../../tmp/soundfold-climbed": "x", "/etc/soundfold-climbed": "x", "C:\\x": "x" } }),
    endsIn: answered,
  },
  {
    name: "a part called __proto__",
    make: () => renamed(sheetOf(sound, { parts: { __proto_x: "x" } }), "__proto_x", "__proto__"),
    endsIn: /part called __proto__/,
  },
  {
    name: "a sheet that points outside the file",
    make: () =>
      sheetOf(sound, {
        parts: {
          "xl/_rels/workbook.xml.rels":
            '<Relationships><Relationship Id="s1" Type="x/worksheet" Target="../../../../etc/passwd"/></Relationships>',
        },
      }),
    endsIn: /the part of its sheet One is missing/,
  },
  {
    name: "a sheet at an address of the web",
    make: () =>
      sheetOf(sound, {
        parts: {
          "xl/_rels/workbook.xml.rels":
            '<Relationships><Relationship Id="s1" Type="x/worksheet" TargetMode="External" Target="https://example.org/sheet.xml"/></Relationships>',
        },
      }),
    endsIn: /the part of its sheet One is missing/,
  },

  // Damaged files.
  ...[0.02, 0.2, 0.5, 0.8, 0.98].map((share) => ({
    name: `a zip cut at ${share * 100} %`,
    make: () => {
      const whole = sheetOf(sound);
      return whole.slice(0, Math.floor(whole.length * share));
    },
    endsIn: /damaged or cut short/,
  })),
  {
    name: "no relationships",
    make: () => sheetOf(sound, { without: ["xl/_rels/workbook.xml.rels"] }),
    endsIn: /sheet One has no part/,
  },
  {
    name: "a cell twice",
    make: () => rowsText('<row r="1"><c r="A1"><v>1</v></c><c r="A1"><v>2</v></c></row>'),
    endsIn: /holds cell A1 twice/,
  },
  {
    name: "rows and cells out of order",
    make: () =>
      rowsText(
        '<row r="2"><c r="B2"><f>A1+A2</f></c><c r="A2"><v>2</v></c></row><row r="1"><c r="B1"><v>9</v></c><c r="A1"><v>1</v></c></row>',
      ),
    endsIn: { B2: 3, B1: 9 },
  },
  {
    name: "wrong content types",
    make: () =>
      sheetOf(sound, {
        parts: {
          "[Content_Types].xml":
            '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="image/png"/><Override PartName="/xl/workbook.xml" ContentType="text/html"/></Types>',
        },
      }),
    endsIn: answered,
  },
  {
    name: "a style that is not there",
    make: () => rowsText('<row r="1"><c r="A1" s="99999"><f>1+1</f></c><c r="B1" s="-1"><v>1</v></c></row>'),
    endsIn: { A1: 2, B1: 1 },
  },
  {
    name: "a shared formula without its first cell",
    make: () => rowsText('<row r="1"><c r="A1"><v>5</v></c><c r="B1"><f t="shared" si="7"/><v>6</v></c></row>'),
    endsIn: /shares a formula that is not there/,
  },

  // Kinds of workbook.
  { name: "strict OOXML with prefixes", make: strictWorkbook, endsIn: { C1: 46092 } },
  {
    name: "macros",
    make: () => sheetOf(sound, { parts: { "xl/vbaProject.bin": new Uint8Array([1, 2, 3]) } }),
    endsIn: answered,
  },
  { name: "a password", make: () => compound("EncryptedPackage"), endsIn: /password/ },

  // Sheets that are large or wide.
  { name: "16,384 columns", make: () => rowsText(wideRow()), endsIn: { A2: 16_384 } },
  {
    name: "ranges over whole sheets and columns",
    make: () => sheetOf({ A1: 4, B1: 20, D1: "=_xldudf_FOOT_FLOCKPREV(A:A,B:B)", D2: "=SUM(A1:B1048576)" }),
    endsIn: { D1: 0.2, D2: 24 },
  },
  {
    name: "an array formula over the whole sheet",
    make: () => rowsText('<row r="1"><c r="A1"><f t="array" ref="A1:XFD1048576">1+1</f><v>7</v></c></row>'),
    endsIn: { A1: 7 },
  },
  {
    name: "a merged area over the whole sheet",
    make: () =>
      buildWorkbook({
        sheets: [
          {
            name: "One",
            rows: rowsOf(sound),
            after: '<mergeCells count="1"><mergeCell ref="D1:XFD1048576"/></mergeCells>',
          },
        ],
      }),
    endsIn: answered,
  },
  {
    name: "20,000 names",
    make: () => sheetOf({ ...sound, D1: "=n_19999" }, { names: manyNames(20_000) }),
    endsIn: { C1: 0.2, D1: 4 },
  },
  { name: "a million names", make: () => sheetOf(sound, { names: manyNames(1_000_000) }), endsIn: /names/ },

  // Formulas.
  {
    name: "a formula that refers to itself",
    make: () => sheetOf({ ...sound, D1: "=E1+1", E1: "=D1+1" }),
    endsIn: answered,
  },
  {
    name: "names that refer to themselves and to each other",
    make: () =>
      sheetOf(
        { ...sound, D1: "=loop", E1: "=ping" },
        {
          names:
            '<definedName name="loop">loop+1</definedName><definedName name="ping">pong</definedName><definedName name="pong">ping</definedName>',
        },
      ),
    endsIn: answered,
  },
  {
    name: "1,000 brackets in each other",
    make: () => sheetOf({ ...sound, D1: `=${"(".repeat(1000)}1${")".repeat(1000)}` }),
    endsIn: answered,
  },
  {
    name: "a formula of 900 terms",
    make: () => sheetOf({ ...sound, D1: `=1${"+1".repeat(900)}` }),
    endsIn: { C1: 0.2, D1: 901 },
  },
  {
    name: "a formula of 60,000 characters",
    make: () => sheetOf({ ...sound, D1: `=1${"+1".repeat(30_000)}` }),
    endsIn: answered,
  },
  {
    name: "a spill that no machine holds",
    make: () => sheetOf({ ...sound, D1: "=SEQUENCE(1048576,16000)" }),
    endsIn: answered,
  },
  {
    name: "a text that no cell holds",
    make: () => sheetOf({ ...sound, D1: '=REPT("x",1000000000)' }),
    endsIn: answered,
  },
  {
    name: "formulas shared across two tables",
    make: () =>
      buildWorkbook({
        sheets: [
          {
            name: "One",
            rows: `<row r="1">${inlineText("A1", "lame")}${inlineText("B1", "seen")}${inlineText("C1", "share")}${inlineText("E1", "lame")}${inlineText("F1", "share")}</row><row r="2"><c r="A2"><v>4</v></c><c r="B2"><v>20</v></c><c r="C2"><f t="shared" ref="C2:F3" si="0">_xldudf_FOOT_FLOCKPREV(A2,$B2)</f></c><c r="E2"><v>5</v></c><c r="F2"><f t="shared" si="0"/></c></row><row r="3"><c r="A3"><v>2</v></c><c r="B3"><v>20</v></c><c r="C3"><f t="shared" si="0"/></c><c r="D3"><v>10</v></c></row>`,
            tables: [table(1, "T1", "A1:C3", ["lame", "seen", "share"]), table(2, "T2", "E1:F3", ["lame", "share"])],
          },
        ],
      }),
    endsIn: { C2: 0.2, C3: 0.1 },
  },

  // Text that would be a formula.
  {
    name: "texts that begin as formulas do",
    make: () =>
      rowsText(
        `<row r="1">${inlineText("A1", "=1+1")}${inlineText("B1", "@SUM(1)")}<c r="C1" t="s"><v>0</v></c><c r="D1"><f>A1&amp;""</f></c></row>` +
          `<row r="2">${inlineText("A2", "=HYPERLINK()")}<c r="B2"><v>1</v></c><c r="C2"><v>2</v></c><c r="E2" cm="1"><f t="array" ref="E2">_xldudf_FOOT_PREVBY(A2,B2,C2)</f></c></row>`,
        { sharedStrings: ["<t>+cmd</t>"] },
      ),
    endsIn: { A1: "=1+1", B1: "@SUM(1)", C1: "+cmd", D1: "=1+1", E3: "'=HYPERLINK()" },
  },
];
