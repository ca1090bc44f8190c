import { readArea } from "../address.ts";
import type { Table } from "../model.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import { decodeText } from "../xml/escapeXml.ts";
import { walkXml } from "../xml/walkXml.ts";

/** A table's name, cells and columns. */
export function readTable(part: string, text: string): Table {
  let table: Omit<Table, "columns"> | undefined;
  const columns: string[] = [];
  walkXml(part, text, {
    open({ name, attributes }) {
      if (name === "table") {
        const area = readArea(attributes.ref ?? "");
        if (!area) throw new WorkbookProblem(`The workbook is damaged: the table in ${part} does not say where it is.`);
        const { displayName = attributes.name ?? "", headerRowCount = "1", totalsRowCount = "0" } = attributes;
        table = { name: displayName, area, headerRows: Number(headerRowCount), totalsRows: Number(totalsRowCount) };
      } else if (name === "filterColumn" && table) {
        table = { ...table, filtered: true };
      } else if (name === "tableColumn") {
        columns.push(decodeText(attributes.name ?? ""));
      }
    },
  });
  if (!table) throw new WorkbookProblem(`The workbook is damaged: ${part} holds no table.`);
  return { ...table, columns };
}
