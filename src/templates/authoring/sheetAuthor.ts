import type { NewFile } from "excelize-wasm";
import type { Cell } from "../../cells/cell.ts";
import { isCellError } from "../../cells/cell.ts";
import { type Area, areaText, columnLetters, type Place, placeText } from "../../workbook/address.ts";
import type { Look } from "./looks.ts";

type File = InstanceType<typeof NewFile>;

/** What stands in a cell of a workbook that is being written: a value, or a formula without its `=`. */
export type Content = Cell | { readonly formula: string };

/** Writes one sheet; places count from 0. Every method stops with a clear error when the sheet cannot hold it. */
export interface SheetAuthor {
  readonly name: string;
  readonly put: (place: Place, content: Content, look?: Look) => void;
  readonly putRow: (place: Place, contents: readonly Content[], look?: Look) => void;
  readonly dress: (area: Area, look: Look) => void;
  /** Widths in characters, from the first column on. */
  readonly widths: (...characters: readonly number[]) => void;
  readonly rowHeight: (row: number, points: number) => void;
  /** Keeps the rows above and the columns left of this cell in sight. */
  readonly freezeAt: (place: Place) => void;
  /** Makes a named table, so that formulas can say `Cases[Tag]`. The first row is its headings. */
  readonly table: (name: string, area: Area) => void;
  /** On paper: a new page begins with this column. */
  readonly newPageAt: (column: number) => void;
  /** On paper: turned sideways, as many pages across as its columns need. */
  readonly printSideways: () => void;
  /** On paper: turned sideways and made small enough for one page across. */
  readonly printWide: () => void;
}

/** A name for a cell or a range, that formulas can use. */
export type NameCell = (name: string, sheet: string, area: Area) => void;

/** Throws what the library reports beside its answer. */
export function must<T extends { readonly error: string | null }>(answer: T): T {
  if (answer.error) throw new Error(`the workbook could not be written: ${answer.error}`);
  return answer;
}

/** An author for a sheet that is already in the file. */
export function sheetAuthor(file: File, name: string, styleOf: (look: Look) => number): SheetAuthor {
  const put = (place: Place, content: Content, look?: Look): void => {
    const cell = placeText(place);
    if (look) must(file.SetCellStyle(name, cell, cell, styleOf(look)));
    if (content === null) return;
    if (typeof content !== "object") must(file.SetCellValue(name, cell, content));
    else if (isCellError(content)) throw new Error(`${name}!${cell}: an error value cannot be typed into a sheet`);
    else must(file.SetCellFormula(name, cell, content.formula));
  };
  return {
    name,
    put,
    putRow: ({ row, column }, contents, look) =>
      contents.forEach((content, step) => {
        put({ row, column: column + step }, content, look);
      }),
    dress: ({ top, left, bottom, right }, look) => {
      const [from, to] = [placeText({ row: top, column: left }), placeText({ row: bottom, column: right })];
      must(file.SetCellStyle(name, from, to, styleOf(look)));
    },
    widths: (...characters) =>
      characters.forEach((width, column) => {
        const letters = columnLetters(column);
        must(file.SetColWidth(name, letters, letters, width));
      }),
    rowHeight: (row, points) => must(file.SetRowHeight(name, row + 1, points)) && undefined,
    freezeAt: ({ row, column }) =>
      must(
        file.SetPanes(name, {
          Freeze: true,
          XSplit: column,
          YSplit: row,
          TopLeftCell: placeText({ row, column }),
          ActivePane: column > 0 ? "bottomRight" : "bottomLeft",
        }),
      ) && undefined,
    table: (tableName, area) =>
      must(
        file.AddTable(name, {
          Range: areaText(area),
          Name: tableName,
          StyleName: "TableStyleLight11",
          ShowRowStripes: true,
        }),
      ) && undefined,
    newPageAt: (column) => must(file.InsertPageBreak(name, placeText({ row: 0, column }))) && undefined,
    printSideways: () => must(file.SetPageLayout(name, { Orientation: "landscape", Size: 9 })) && undefined,
    printWide: () => {
      must(file.SetSheetProps(name, { FitToPage: true }));
      must(file.SetPageLayout(name, { Orientation: "landscape", FitToWidth: 1, FitToHeight: 0, Size: 9 }));
    },
  };
}
