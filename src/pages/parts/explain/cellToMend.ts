import { areaText, placeText, readArea } from "../../../workbook/address.ts";

const wholeColumn = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i;

/**
 * The cell of a range that a sentence such as "treated, row 3: …" is about.
 *
 * @param address - of the range, with its sheet where it is on another
 * @param row - counted in the range from 1; in a range that lies on its side it counts the columns
 * @returns undefined where the range has no such row, or the address is none
 * @example
 * cellToMend("Cases!$B$2:$B$300", 3) // → "Cases!B4"
 * cellToMend("B2:F2", 3) // → "D2"
 */
export function cellToMend(address: string, row: number): string | undefined {
  const mark = address.lastIndexOf("!") + 1;
  const [sheet, cells] = [address.slice(0, mark), address.slice(mark)];
  const column = wholeColumn.exec(cells)?.[1];
  if (column !== undefined) return `${sheet}${column.toUpperCase()}${row}`;
  const area = readArea(cells);
  if (!area || row < 1) return undefined;
  const { top, left, bottom, right } = area;
  const lies = top === bottom && left < right;
  const place = lies ? { row: top, column: left + row - 1 } : { row: top + row - 1, column: left };
  if (place.row > bottom || place.column > right) return undefined;
  // A block of records is mended by its row as a whole.
  return sheet + (lies ? placeText(place) : areaText({ top: place.row, bottom: place.row, left, right }));
}
