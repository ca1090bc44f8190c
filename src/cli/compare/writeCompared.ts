import { extname } from "node:path";
import type { DuckDBConnection } from "@duckdb/node-api";
import type { Cell } from "../../cells/cell.ts";
import type { Look } from "../../workbooks/writing/looks.ts";
import { BadInput } from "../badInput.ts";
import { writeThrough } from "../writeWhole.ts";
import type { By, Compared, ComparedLine } from "./countFlocks.ts";
import { sqlName, sqlText } from "./openDuck.ts";

interface OutColumn {
  readonly heading: string;
  readonly type: "VARCHAR" | "INTEGER" | "DOUBLE";
  readonly width: number;
  readonly of: (line: ComparedLine) => Cell | undefined;
  /** How a number is shown. */
  readonly look?: Look;
  /** In lines by these only; left out for all. */
  readonly only?: readonly By[];
}

/** Columns of this width and more hold sentences, in as many lines as they need. */
const longWords = 30;

const text = (heading: string, width: number, of: OutColumn["of"], only?: readonly By[]): OutColumn => ({
  heading,
  type: "VARCHAR",
  width,
  of,
  ...(only && { only }),
});
const count = (heading: string, of: OutColumn["of"], only?: readonly By[]): OutColumn => ({
  ...text(heading, 10, of, only),
  type: "INTEGER",
});
const share = (heading: string, of: OutColumn["of"], only?: readonly By[]): OutColumn => ({
  ...text(heading, 10, of, only),
  type: "DOUBLE",
});

const columns: readonly OutColumn[] = [
  text("Flock", 28, ({ flock }) => flock),
  text("Month", 10, ({ part }) => part, ["month"]),
  text("Group", 20, ({ part }) => part, ["group"]),
  count("Looked at", ({ lookedAt }) => lookedAt),
  count("Lame", ({ lame }) => lame),
  share("Share lame", (line) => line.share),
  share("Low", ({ range }) => range?.low),
  share("High", ({ range }) => range?.high),
  text("In the funnel", 24, ({ funnel }) => funnel, ["flock"]),
  share("Steadied share", ({ steadied }) => steadied?.share, ["flock"]),
  share("Steadied low", ({ steadied }) => steadied?.low, ["flock"]),
  share("Steadied high", ({ steadied }) => steadied?.high, ["flock"]),
  count("Rank", ({ steadied }) => steadied?.rank, ["flock"]),
  count("Cases", ({ cases }) => cases, ["flock", "month"]),
  count("Signals", ({ signals }) => signals?.count, ["flock"]),
  text("Last signal", longWords, ({ signals }) => signals?.last, ["flock"]),
  { ...share("mg/PCU", ({ mgPcu }) => mgPcu?.value, ["flock"]), look: "workedRate" },
  text("mg/PCU not counted", longWords, ({ mgPcu }) => mgPcu?.words, ["flock"]),
  text("Left out", 48, ({ leftOut }) => leftOut),
];

/** The last row of a sheet, less those above the lines. */
const mostRows = 1_048_570;

/** Writes the lines as the ending of the name says: .xlsx, .csv or .parquet. */
export async function writeCompared(
  duck: DuckDBConnection,
  { lines, year }: Compared,
  by: By,
  path: string,
  made: string,
): Promise<void> {
  const shown = columns.filter(({ only }) => only === undefined || only.includes(by));
  const kind = extname(path).toLowerCase();
  if (kind === ".xlsx") {
    if (lines.length > mostRows)
      throw new BadInput(`${lines.length} lines are more than a sheet has rows; name a .csv or .parquet file.`);
    await writeThrough(path, async (passing, write) => write(passing, await asWorkbook(lines, shown, year, made)));
    return;
  }
  const definition = shown.map(({ heading, type }) => `${sqlName(heading)} ${type}`).join(", ");
  await duck.run(`CREATE TABLE compared (place INTEGER, ${definition})`);
  const appender = await duck.createAppender("compared");
  for (const [place, line] of lines.entries()) {
    appender.appendInteger(place);
    for (const { type, of } of shown) {
      const value = of(line);
      if (value === undefined || value === null || value === "") appender.appendNull();
      else if (type === "VARCHAR") appender.appendVarchar(String(value));
      else if (type === "INTEGER") appender.appendInteger(Number(value));
      else appender.appendDouble(Number(value));
    }
    appender.endRow();
  }
  appender.closeSync();
  const format = kind === ".csv" ? "FORMAT csv, HEADER true" : "FORMAT parquet";
  await writeThrough(path, async (passing) => {
    await duck.run(`COPY (SELECT * EXCLUDE place FROM compared ORDER BY place) TO ${sqlText(passing)} (${format})`);
  });
}

function lookOf(type: OutColumn["type"], width: number): Look {
  if (type === "DOUBLE") return "workedPercent";
  if (type === "INTEGER") return "workedCount";
  return width >= longWords ? "words" : "worked";
}

async function asWorkbook(
  lines: readonly ComparedLine[],
  shown: readonly OutColumn[],
  year: number,
  made: string,
): Promise<Uint8Array> {
  // Writing takes half a second to load, so it is loaded only once there is something to write.
  const { authorWorkbook } = await import("../../workbooks/writing/authorWorkbook.ts");
  const headingRow = 3;
  return authorWorkbook({
    title: "Flocks compared",
    description: "Foot health of flocks side by side.",
    made,
    sheets: [
      {
        name: "Compared",
        write(sheet) {
          shown.forEach(({ heading, type, width, look: ofNumber }, index) => {
            sheet.width(index, width);
            const look = ofNumber ?? lookOf(type, width);
            sheet.columnLook(index, index, look);
            sheet.put(
              { row: headingRow, column: index },
              heading,
              type === "VARCHAR" ? "workedHeading" : "workedHeadingCentre",
            );
          });
          sheet.title(`Flocks compared, ${year}`);
          sheet.put(
            { row: 1, column: 0 },
            "Ranges hold the long-run share in 95 of 100 flocks. A blank is not known, and never none. Left out says what could not be read.",
            "note",
          );
          sheet.rowHeight(headingRow, 34);
          lines.forEach((line, step) => {
            const lengths = shown.map(({ width, of }) =>
              width < longWords ? 1 : String(of(line) ?? "").length / width,
            );
            const high = Math.ceil(Math.max(...lengths) * 1.1);
            if (high > 1) sheet.rowHeight(headingRow + 1 + step, 14 * high);
            sheet.putRow(
              { row: headingRow + 1 + step, column: 0 },
              shown.map(({ of }) => of(line) ?? null),
            );
          });
          sheet.freezeAt({ row: headingRow + 1, column: 1 });
          sheet.print({
            sideways: true,
            upTo: { row: headingRow + lines.length, column: shown.length - 1 },
            repeat: [headingRow, headingRow],
          });
        },
      },
    ],
  });
}
