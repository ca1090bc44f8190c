import { readArea } from "../../../workbook/address.ts";
import { cellsAt } from "./cellsAt.ts";

// Whole columns and rows stand beside the addresses that have both.
const wholeLines = /^\$?(?:[A-Z]{1,3}:\$?[A-Z]{1,3}|\d+:\$?\d+)$/i;
const tableColumn = /^([^[\]!]+)\[(@)?(?:\[([^[\]#@']+)\]|([^[\]#@']+))\]$/i;
const tableRow = /^([^[\]!]+)\[\[#This Row\],\s*\[([^[\]#@']+)\]\]$/i;

/**
 * The cells that an argument of a formula names: an address, a spilled answer, a name or a column of a table. Whether
 * they are there turns out when the work is done.
 *
 * @param typed - as it stands in the formula
 * @param own - the cell of the formula
 */
export function rangeNamed(context: Excel.RequestContext, typed: string, own: Excel.Range): Excel.Range {
  const { workbook } = context;
  const ofRow = tableRow.exec(typed);
  const ofTable = tableColumn.exec(typed);
  if (ofRow || ofTable) {
    const [table = "", heading = ""] = ofRow?.slice(1) ?? [ofTable?.[1], ofTable?.[3] ?? ofTable?.[4]];
    const column = workbook.tables.getItem(table).columns.getItem(heading).getDataBodyRange();
    return ofRow || ofTable?.[2] ? column.getIntersection(own.getEntireRow()) : column;
  }
  const mark = typed.lastIndexOf("!");
  const cells = typed.slice(mark + 1);
  const at = (address: string): Excel.Range =>
    mark < 0 ? own.worksheet.getRange(address) : cellsAt(context, typed.slice(0, mark + 1) + address);
  if (cells.endsWith("#")) return at(cells.slice(0, -1)).getSpillingToRange();
  if (readArea(cells) || wholeLines.test(cells)) return at(cells);
  return workbook.names.getItem(cells).getRange();
}
