import Papa from "papaparse";
import { isBlankCell } from "../../cells/cell.ts";
import { asHeading, searched } from "./blocksInBook.ts";
import { type Matches, matchHeadings } from "./matchHeadings.ts";
import { NoRecords } from "./noRecords.ts";
import type { RecordBlock } from "./recordBlock.ts";

/**
 * The records of a .csv file: comma, semicolon or tab between cells, as it comes. Every cell is text.
 *
 * @throws NoRecords when no heading row is known in it
 */
export function blocksInText(bytes: Uint8Array, file: string, matches: Matches): RecordBlock {
  const { data } = Papa.parse<readonly string[]>(decoded(bytes), { skipEmptyLines: false });
  const at = data.slice(0, searched).findIndex((cells) => matchHeadings(cells.map(asHeading), matches) !== undefined);
  const headings = data[at]?.map(asHeading);
  if (headings === undefined) {
    const first = data.find((cells) => cells.filter((cell) => !isBlankCell(cell)).length > 1) ?? [];
    throw new NoRecords(file, first.map(asHeading));
  }
  const width = data.reduce((most, cells) => Math.max(most, cells.length), 0);
  return {
    place: file,
    headings: [...headings, ...Array.from({ length: width - headings.length }, () => "")],
    rows: data
      .map((cells, index) => ({ row: index + 1, cells }))
      .filter(({ row, cells }) => row > at + 1 && !cells.every(isBlankCell)),
    dayOffset: 0,
  };
}

/** Spreadsheets write a .csv in UTF-8 or UTF-16 with a mark, or in the old Western European letters. */
function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
