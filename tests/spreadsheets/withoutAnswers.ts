import { strToU8, unzipSync, zipSync } from "fflate";
import { isInside } from "../../src/workbook/address.ts";
import type { Sheet, SheetCell } from "../../src/workbook/model.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";

/**
 * An .xlsx workbook with its formulas, and without one answer that was saved with them.
 *
 * @example
 * withoutAnswers(readFileSync("samples/farm-records.xlsx"))
 */
export function withoutAnswers(bytes: Uint8Array): Uint8Array {
  const files = unzipSync(bytes);
  for (const sheet of openWorkbook(bytes).sheets) {
    if (sheet.rows.length > 0) files[sheet.part] = strToU8(emptied(sheet));
  }
  return zipSync(files);
}

function emptied({ text, rows }: Sheet): string {
  const cells = rows.flatMap((row) => row.cells);
  const areas = cells.flatMap(({ formula }) => formula?.area ?? []);
  let made = "";
  let done = 0;
  for (const cell of cells) {
    if (!cell.formula && !areas.some((area) => isInside(cell, area))) continue;
    made += text.slice(done, cell.start) + withoutValue(text, cell);
    done = cell.end;
  }
  return made + text.slice(done);
}

function withoutValue(text: string, { start, end, formula }: SheetCell): string {
  const opening = /^<c\b[^>]*?(?=\/?>)/.exec(text.slice(start, end))?.[0];
  if (opening === undefined) throw new Error(`no cell: ${text.slice(start, end)}`);
  const untyped = opening.replace(/ t="[^"]*"/, "");
  return formula ? `${untyped}>${text.slice(formula.start, formula.end)}</c>` : `${untyped}/>`;
}

/** A flat LibreOffice file without the answers that were saved with its formulas. */
export const flatWithoutAnswers = (document: string): string =>
  document.replace(
    /<table:table-cell\b([^>]*\btable:formula=[^>]*?)(?:\/>|>[\s\S]*?<\/table:table-cell>)/g,
    (_, attributes: string) =>
      `<table:table-cell${attributes.replace(/ (?:office|calcext):(?:value-type|value|string-value|date-value|time-value|boolean-value)="[^"]*"/g, "")}/>`,
  );
