import { columnLetters } from "../../../src/workbook/address.ts";
import { buildWorkbook } from "../buildWorkbook.ts";

/** A small workbook that asks for much. */
export interface WorstKind {
  readonly name: string;
  readonly make: () => Uint8Array;
  /** What must stand in a cell of the first sheet, or why formulas are left. */
  readonly ends: Readonly<Record<string, number | string>> | RegExp;
}

const escaped = (content: string): string => content.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
const number = (address: string, value: number): string => `<c r="${address}"><v>${value}</v></c>`;
const formula = (address: string, content: string): string => `<c r="${address}"><f>${escaped(content)}</f></c>`;
const array = (address: string, area: string, content: string): string =>
  `<c r="${address}"><f t="array" ref="${area}">${escaped(content)}</f></c>`;

const text = (address: string, value: string): string => `<c r="${address}" t="str"><v>${escaped(value)}</v></c>`;
/** May fill more cells than its own. */
const dynamic = (address: string, content: string): string =>
  `<c r="${address}" cm="1"><f t="array" ref="${address}">${escaped(content)}</f></c>`;

const rows = (count: number, cells: (row: number) => string): string =>
  Array.from({ length: count }, (_, index) => `<row r="${index + 1}">${cells(index + 1)}</row>`).join("");
const book = (content: string, more: Partial<Parameters<typeof buildWorkbook>[0]> = {}): Uint8Array =>
  buildWorkbook({ sheets: [{ name: "One", rows: content }], ...more });

const names = (count: number, text: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => `<definedName name="n_${index}">${text(index)}</definedName>`).join("");

/** The kinds of small workbook that took longest or most memory. */
export const worstKinds: readonly WorstKind[] = [
  {
    name: "40 COUNTIF over a whole column",
    make: () => book(rows(40, (row) => number(`D${row}`, row % 7) + formula(`E${row}`, `COUNTIF($D:$D,D${row})`))),
    ends: { E1: 6, E40: 6 },
  },
  {
    name: "a running total down 20,000 rows",
    make: () => book(rows(20_000, (row) => number(`A${row}`, 1) + formula(`B${row}`, `SUM(A$1:A${row})`))),
    ends: { B20000: 20_000 },
  },
  {
    name: "COUNTIF of what stands above, down 20,000 rows",
    make: () =>
      book(rows(20_000, (row) => number(`A${row}`, row % 500) + formula(`B${row}`, `COUNTIF(A$1:A${row},A${row})`))),
    ends: { B20000: 40 },
  },
  {
    name: "20,000 sums of all that stands below",
    make: () => book(rows(20_000, (row) => number(`A${row}`, 1) + formula(`B${row}`, `SUM(A${row}:A$20000)`))),
    ends: { B1: 20_000 },
  },
  {
    name: "VLOOKUP of 20,000 rows in 20,000",
    make: () =>
      book(
        rows(
          20_000,
          (row) =>
            number(`A${row}`, 20_001 - row) +
            number(`B${row}`, row) +
            formula(`C${row}`, `VLOOKUP(${row},$A$1:$B$20000,2,FALSE)`),
        ),
      ),
    ends: { C20000: 1 },
  },
  {
    name: "MATCH of 20,000 texts in as many that are put together",
    make: () =>
      book(
        rows(20_000, (row) =>
          row === 1
            ? number("A1", 1) + array("B1", "B1", 'SUM((MATCH(A1:A20000&"|",A1:A20000&"|",0)=ROW(A1:A20000))*1)')
            : number(`A${row}`, row % 5000),
        ),
      ),
    ends: { B1: 5000 },
  },
  {
    name: "SUMPRODUCT of 3,000 rows down 3,000 rows",
    make: () =>
      book(
        rows(3000, (row) => number(`A${row}`, row % 50) + formula(`B${row}`, `SUMPRODUCT(($A$1:$A$3000=A${row})*1)`)),
      ),
    ends: { B3000: 60 },
  },
  {
    name: "a chain of 20,000 cells, the last first",
    make: () =>
      book(rows(20_000, (row) => (row === 20_000 ? number("A20000", 1) : formula(`A${row}`, `A${row + 1}+1`)))),
    ends: { A1: 20_000 },
  },
  {
    name: "a chain of 20,000 names",
    make: () =>
      book(`<row r="1">${formula("A1", "n_0+1")}${formula("B1", "1+1")}</row>`, {
        names: names(20_000, (index) => (index === 19_999 ? "1" : `n_${index + 1}`)),
      }),
    ends: /names rest on one another/,
  },
  {
    name: "3,000 brackets, braces and signs in each other",
    make: () =>
      book(
        `<row r="1">${formula("A1", `${"(".repeat(3000)}1${")".repeat(3000)}`)}${formula("B1", `${"{".repeat(3000)}1${"}".repeat(3000)}`)}${formula("C1", `${"-".repeat(3000)}1`)}${formula("D1", "1+1")}</row>`,
      ),
    ends: { D1: 2 },
  },
  {
    name: "2,500 sheets",
    make: () =>
      buildWorkbook({
        sheets: Array.from({ length: 2500 }, (_, index) => ({
          name: `S${index}`,
          rows: `<row r="1">${formula("A1", index === 2499 ? "1" : `S${index + 1}!A1+1`)}</row>`,
        })),
      }),
    ends: { A1: 2500 },
  },
  {
    name: "99,999 names with INDIRECT",
    make: () =>
      book(`<row r="1">${number("A1", 5)}${formula("B1", 'INDIRECT("n_77")')}</row>`, {
        names: names(99_999, () => "One!$A$1"),
      }),
    ends: { B1: 5 },
  },
  {
    name: "ten array formulas over whole columns",
    make: () =>
      book(
        `<row r="1">${number("A1", 3)}${number("B1", 4)}${Array.from({ length: 10 }, (_, index) => {
          const letters = columnLetters(index + 3);
          return array(`${letters}1`, `${letters}1:${letters}1048576`, "A:A*B:B");
        }).join("")}</row>`,
      ),
    ends: /cells/,
  },
  {
    name: "20 SUMPRODUCT over whole columns",
    make: () =>
      book(
        rows(20, (row) =>
          [
            number(`A${row}`, row % 2),
            number(`B${row}`, row),
            formula(`C${row}`, `SUMPRODUCT((A:A=1)*(B:B>${row})*B:B)`),
          ].join(""),
        ),
      ),
    ends: { C20: 0, C1: 99 },
  },
  {
    name: "2,000 cells in the last row of a sheet",
    make: () => {
      const cells = Array.from({ length: 2000 }, (_, index) => number(`${columnLetters(index + 1)}1048576`, 1));
      return book(
        `<row r="1">${formula("A1", "B1048576+BXX1048576")}${formula("B1", "SUM(C:BXX)")}</row><row r="1048576">${cells.join("")}</row>`,
      );
    },
    ends: { A1: 2 },
  },
  {
    name: "40,000 texts as long as a cell can hold",
    make: () => book(rows(40_000, (row) => formula(`A${row}`, 'REPT("x",32767)'))),
    ends: /texts of the answers are longer than a file can hold/,
  },
  {
    name: "CONCAT of all that stands above, down 20,000 rows",
    make: () => book(rows(20_000, (row) => number(`A${row}`, row % 10) + formula(`B${row}`, `CONCAT(A$1:A${row})`))),
    ends: /longer than a workbook may take/,
  },
  {
    name: "LARGE of 20,000 rows down 20,000 rows",
    make: () =>
      book(
        rows(
          20_000,
          (row) => number(`A${row}`, (row * 7919) % 20_000) + formula(`B${row}`, `LARGE(A$1:A$20000,${row})`),
        ),
      ),
    ends: { B1: 19_999, B20000: 0 },
  },
  {
    name: "RANK of 20,000 unlike numbers",
    make: () =>
      book(
        rows(
          20_000,
          (row) => number(`A${row}`, (row * 7919) % 20_000) + formula(`B${row}`, `RANK(A${row},A$1:A$20000)`),
        ),
      ),
    // Row 20,000 holds 0, the smallest of all.
    ends: { B20000: 20_000 },
  },
  {
    name: "SUMIFS of half of the rows, down 20,000 rows",
    make: () =>
      book(
        rows(
          20_000,
          (row) =>
            number(`A${row}`, row % 2) +
            number(`B${row}`, 1) +
            formula(`C${row}`, `SUMIFS(B$1:B$20000,A$1:A$20000,A${row})`),
        ),
      ),
    ends: { C20000: 10_000 },
  },
  {
    name: "COUNTIFS of two columns, each row with a bound of its own, down 20,000 rows",
    make: () =>
      book(
        rows(
          20_000,
          (row) =>
            number(`A${row}`, row % 2) +
            number(`B${row}`, row) +
            formula(`C${row}`, `COUNTIFS(A$1:A$20000,A${row},B$1:B$20000,"<="&B${row})`),
        ),
      ),
    ends: /longer than a workbook may take/,
  },
  {
    name: "COUNTIF with wildcards, another in each of 20,000 rows",
    make: () =>
      book(
        rows(
          20_000,
          (row) => text(`A${row}`, `ewe ${row} left`) + formula(`B${row}`, `COUNTIF(A$1:A$20000,"*${row} l*")`),
        ),
      ),
    ends: /longer than a workbook may take/,
  },
  {
    name: "XLOOKUP with wildcards down 20,000 rows",
    make: () =>
      book(
        rows(
          20_000,
          (row) =>
            text(`A${row}`, `ewe ${row} left`) +
            formula(`B${row}`, `XLOOKUP("*e ${row} l*",A$1:A$20000,A$1:A$20000,"",2)`),
        ),
      ),
    ends: /longer than a workbook may take/,
  },
  {
    name: "MEDIAN of all that stands above, down 20,000 rows",
    make: () => book(rows(20_000, (row) => number(`A${row}`, row) + formula(`B${row}`, `MEDIAN(A$1:A${row})`))),
    ends: /longer than a workbook may take/,
  },
  {
    name: "the last row that fits, by LOOKUP(2,1/…), down 20,000 rows",
    make: () =>
      book(
        rows(
          20_000,
          (row) => number(`A${row}`, row % 50) + formula(`B${row}`, `LOOKUP(2,1/(A$1:A$20000=A${row}),A$1:A$20000)`),
        ),
      ),
    ends: /longer than a workbook may take/,
  },
  {
    name: "SORT of UNIQUE of FILTER over 100,000 rows",
    make: () =>
      book(
        rows(
          100_000,
          (row) =>
            number(`A${row}`, (row * 7919) % 5000) +
            (row === 1
              ? dynamic("C1", "_xlfn._xlws.SORT(_xlfn.UNIQUE(_xlfn._xlws.FILTER(A1:A100000,A1:A100000>100)))")
              : ""),
        ),
      ),
    ends: { C1: 101, C1000: 1100 },
  },
  {
    name: "SCAN and MAP over 100,000 rows",
    make: () =>
      book(
        rows(
          100_000,
          (row) =>
            number(`A${row}`, 1) +
            (row === 1
              ? dynamic("C1", "_xlfn.SCAN(0,A1:A100000,_xlfn.LAMBDA(_xlpm.a,_xlpm.b,_xlpm.a+_xlpm.b))") +
                dynamic("D1", "_xlfn.MAP(A1:A100000,_xlfn.LAMBDA(_xlpm.a,_xlpm.a*2))")
              : ""),
        ),
      ),
    ends: { C1000: 1000, C20000: 20_000, D20000: 2 },
  },
  {
    name: "NOTCLEAR of 5,000 records in each of their rows",
    make: () =>
      book(
        rows(
          5000,
          (row) =>
            text(`A${row}`, `ZZ 0123456 ${String(row % 2500).padStart(5, "0")}`) +
            number(`B${row}`, 46_000 + (row % 300)) +
            number(`C${row}`, 28) +
            formula(`D${row}`, `ROWS(FOOT.NOTCLEAR(${46_400 + row},A:A,B:B,C:C))`),
        ),
      ),
    // Long after the last treatment nothing is listed but that in words, below the headings.
    ends: { D5000: 2 },
  },
  {
    name: "sums of 20,000 INDIRECT that grow",
    make: () => book(rows(20_000, (row) => number(`A${row}`, 1) + formula(`B${row}`, `SUM(INDIRECT("A1:A"&${row}))`))),
    ends: { B20000: 20_000 },
  },
  {
    name: "a table of 10,000 rows, each with structured references",
    make: () => {
      const cells = rows(10_001, (row) =>
        row === 1
          ? text("A1", "a") + text("B1", "b")
          : number(`A${row}`, row % 50) + formula(`B${row}`, "COUNTIFS(T[a],T[[#This Row],[a]])/SUM(T[a])"),
      );
      const table =
        '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="T" displayName="T" ref="A1:B10001"><tableColumns count="2"><tableColumn id="1" name="a"/><tableColumn id="2" name="b"/></tableColumns></table>';
      return buildWorkbook({ sheets: [{ name: "One", rows: cells, tables: [table] }] });
    },
    ends: { B10000: 200 / 245_000 },
  },
  {
    name: "10,000 conditional formats and 10,000 lists of choices",
    make: () => {
      const each = (make: (row: number) => string): string =>
        Array.from({ length: 10_000 }, (_, index) => make(index + 1)).join("");
      const formats = each(
        (row) =>
          `<conditionalFormatting sqref="A${row}"><cfRule type="expression" priority="${row}"><formula>COUNTIF($A:$A,A${row})&gt;1</formula></cfRule></conditionalFormatting>`,
      );
      const lists = each(
        (row) => `<dataValidation type="list" sqref="B${row}"><formula1>$A$1:$A$${row}</formula1></dataValidation>`,
      );
      const after = `${formats}<dataValidations count="10000">${lists}</dataValidations>`;
      return buildWorkbook({
        sheets: [
          { name: "One", rows: rows(50, (row) => number(`A${row}`, 1) + formula(`B${row}`, `A${row}+1`)), after },
        ],
      });
    },
    ends: { B50: 2 },
  },
  {
    name: "5,000 OFFSET, each on the one above",
    make: () => book(rows(5000, (row) => (row === 1 ? number("A1", 1) : formula(`A${row}`, `OFFSET(A${row},-1,0)+1`)))),
    ends: { A5000: 5000 },
  },
];
