import { strToU8, zipSync } from "fflate";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import type { BenchReport } from "./report.ts";

const rows = 10_000;
const rounds = 5;

/** A workbook of 10,000 records: date, days, group, clear date, and 50 COUNTIFS over them. */
export async function bench(): Promise<BenchReport> {
  const calls = workbookWith((row) => `<c r="D${row}"><f>FOOT.CLEARDATE(A${row},B${row})</f></c>`);
  const constants = workbookWith((row) => `<c r="D${row}"><v>${dateIn(row) + daysIn(row) + 1}</v></c>`);
  const times: { calls: number[]; constants: number[] } = { calls: [], constants: [] };
  await timeOf(calls);
  await timeOf(constants);
  // In turn, so that a machine that slows down slows both.
  for (let round = 0; round < rounds; round++) {
    times.calls.push(await timeOf(calls));
    times.constants.push(await timeOf(constants));
  }
  const [withCalls, withConstants] = [median(times.calls), median(times.constants)];
  const ratios = times.calls.map((time, round) => time / (times.constants[round] ?? Number.NaN));
  return {
    title: "Recalculating a workbook",
    rows: [
      {
        workbook: "one FOOT call a row",
        "processor time": seconds(withCalls),
        "constants = 1": (withCalls / withConstants).toFixed(2),
      },
      { workbook: "constants in their place", "processor time": seconds(withConstants), "constants = 1": "1" },
    ],
    notes: [
      `${rows.toLocaleString("en")} rows and 50 COUNTIFS, from the bytes of one .xlsx file to those of the next. Medians of ${rounds} pairs run in turn; the ratio of single pairs went from ${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}.`,
    ],
  };
}

async function timeOf(bytes: Uint8Array): Promise<number> {
  const before = process.cpuUsage();
  const engine = engineInNode();
  const { summary } = await recalculate(openWorkbook(bytes), engine);
  if (summary.errors.length > 0) throw new Error(`the bench workbook has errors: ${JSON.stringify(summary.errors[0])}`);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

const dateIn = (row: number): number => 46_000 + (row % 365);
const daysIn = (row: number): number => 1 + (row % 35);
const median = (numbers: readonly number[]): number => [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;
const seconds = (time: number): string => `${time.toFixed(2)} s`;

function workbookWith(fourth: (row: number) => string): Uint8Array {
  const lines = Array.from({ length: rows }, (_, index) => {
    const row = index + 1;
    const count =
      row <= 50
        ? `<c r="F${row}"><f>COUNTIFS($C$1:$C$${rows},${row % 10},$D$1:$D$${rows},"&gt;="&amp;A${row})</f></c>`
        : "";
    return `<row r="${row}"><c r="A${row}"><v>${dateIn(row)}</v></c><c r="B${row}"><v>${daysIn(row)}</v></c><c r="C${row}"><v>${row % 10}</v></c>${fourth(row)}${count}</row>`;
  });
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const relationships = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const packageRelationships = "http://schemas.openxmlformats.org/package/2006/relationships";
  return zipSync({
    "[Content_Types].xml": strToU8(
      `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    ),
    "_rels/.rels": strToU8(
      `<Relationships xmlns="${packageRelationships}"><Relationship Id="r1" Type="${relationships}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    "xl/workbook.xml": strToU8(
      `<workbook xmlns="${main}" xmlns:r="${relationships}"><sheets><sheet name="Cases" sheetId="1" r:id="r1"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      `<Relationships xmlns="${packageRelationships}"><Relationship Id="r1" Type="${relationships}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    "xl/worksheets/sheet1.xml": strToU8(
      `<worksheet xmlns="${main}"><sheetData>${lines.join("")}</sheetData></worksheet>`,
    ),
  });
}
