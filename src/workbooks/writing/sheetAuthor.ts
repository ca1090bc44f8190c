import type { Chart, DataValidation, NewFile } from "excelize-wasm";
import type { Cell } from "../../cells/cell.ts";
import { isCellError } from "../../cells/cell.ts";
import { type Area, areaText, columnLetters, type Place, placeText } from "../../workbook/address.ts";
import { calcFootName } from "../../workbook/formula/functionName.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import type { Edition } from "./edition.ts";
import { type List, listFormulas } from "./listFormula.ts";
import type { Emphasis, Look } from "./looks.ts";
import { cellsOn, columnsOn, rowsOn } from "./references.ts";
import { RowsAside } from "./rowsAside.ts";

type File = InstanceType<typeof NewFile>;

/**
 * What stands in a cell of a workbook that is being written: a value, or a formula without its `=`. A formula that gives
 * one value but works through whole columns inside is an array formula, or Excel would take one cell of each column. An
 * array formula may fill an area that does not grow; it starts in the cell. A list fills as many cells as it needs.
 */
export type Content = Cell | { readonly formula: string; readonly array?: true | Area } | List;

/** Writes one sheet; places count from 0. Every method stops with a clear error when the sheet cannot hold it. */
export interface SheetAuthor {
  readonly name: string;
  readonly edition: Edition;
  readonly put: (place: Place, content: Content, look?: Look) => void;
  readonly putRow: (place: Place, contents: readonly Content[], look?: Look) => void;
  readonly dress: (area: Area, look: Look) => void;
  /**
   * Rows from this one on take little memory and time, for thousands of them: values and plain formulas only. To be said
   * before anything is put there.
   */
  readonly rowsAside: (from: number) => void;
  /** Widths in characters, from the first column on. */
  readonly widths: (...characters: readonly number[]) => void;
  readonly width: (column: number, characters: number) => void;
  readonly rowHeight: (row: number, points: number) => void;
  /** Keeps the rows above and the columns left of this cell in sight. */
  readonly freezeAt: (place: Place) => void;
  /** How cells of whole columns look that nothing else was said of: room to type in and to grow. */
  readonly columnLook: (left: number, right: number, look: Look) => void;
  /** Makes a named table, so that formulas can say `Cases[Tag]`. The first row is its headings. */
  readonly table: (name: string, area: Area, striped?: boolean) => void;
  /** What may be typed there, and what is said when it is something else. */
  readonly accept: (area: Area, rule: Rule) => void;
  /**
   * Cells of the area stand out where a formula holds; it is written for the area's first cell, without `=`. The first
   * that holds wins, and areas must not overlap: of two that do, some spreadsheets show only one.
   */
  readonly emphasize: (area: Area, ...rules: readonly (readonly [formula: string, emphasis: Emphasis])[]) => void;
  /** A second chart may be drawn over the first, on the same axes. */
  readonly chart: (at: Place, chart: Chart, over?: Chart) => void;
  /** A cell that leads to another sheet of the workbook. */
  readonly linkTo: (place: Place, sheet: string) => void;
  readonly merge: (area: Area) => void;
  /** What the sheet is, in its first cell; the sheet is then one to read, without the lines of the grid. */
  readonly title: (content: Content) => void;
  /** Locks all cells but those for typing; there is no password, so whoever wants to can unlock it. */
  readonly protect: () => void;
  /** On paper: what is printed, and how. */
  readonly print: (page: Page) => void;
  /** On paper: a new page begins with this column. */
  readonly newPageAt: (column: number) => void;
  /** On paper: a new page begins with this row. */
  readonly newPageAtRow: (row: number) => void;
}

/** A name for a cell or a range, or for a formula without `=`, that formulas can use. */
export type NameCell = (name: string, sheet: string, target: Place | Area | { readonly formula: string }) => void;

/** What may be typed into a cell. */
export interface Rule {
  readonly of:
    | { readonly list: string }
    | { readonly date: readonly [from: string, to: string] }
    | { readonly whole: readonly [least: string, most: string] }
    | { readonly number: readonly [least: string, most: string] };
  /** Said when something else is typed. */
  readonly words: string;
  /** Whether something else may stand after a warning. */
  readonly lenient?: boolean;
  /** Shown while the cell is chosen. */
  readonly hint?: string;
}

interface Page {
  readonly sideways?: boolean;
  /** The last cell that is printed; left out, all that is filled, so that a list is printed as far as it goes. */
  readonly upTo?: Place;
  /** The last column that is printed, of as many rows as are filled. */
  readonly upToColumn?: number;
  /** How large, in percent, where not made to fit. */
  readonly scale?: number;
  /** Rows repeated on each page, counted from 0. */
  readonly repeat?: readonly [first: number, last: number];
  /** All on one page. */
  readonly onOnePage?: boolean;
  /** So many pages side by side; 0 for as many as the breaks that were set make, in full size. */
  readonly across?: number;
  /** The first columns, repeated on each page. */
  readonly repeatColumns?: number;
}

/** Throws what the library reports beside its answer. */
export function must<T extends { readonly error: string | null }>(answer: T): T {
  if (answer.error) throw new Error(`the workbook could not be written: ${answer.error}`);
  return answer;
}

/** Styles of the file, by what they are for. */
export interface Styles {
  readonly cell: (look: Look) => number;
  readonly emphasis: (emphasis: Emphasis) => number;
}

/** An author for a sheet that is already in the file. */
export function sheetAuthor(
  file: File,
  name: string,
  styles: Styles,
  edition: Edition,
  aside: RowsAside = new RowsAside(),
): SheetAuthor {
  const styleOf = styles.cell;
  // A formula is read more easily without the name of the sheet it stands on.
  const written = (formula: string): string => {
    const here = formula.replaceAll(quoteSheet(name), "");
    return edition === "libreoffice" ? here.replace(/\bFOOT\.(?=[A-Z]+\()/g, calcFootName("")) : here;
  };
  const put = (place: Place, content: Content, look?: Look): void => {
    const cell = placeText(place);
    if (place.row >= aside.from) {
      const isSimple = typeof content !== "object" || content === null || ("formula" in content && !content.array);
      if (!isSimple)
        throw new Error(`${name}!${cell}: only values and plain formulas stand in rows that are kept aside`);
      const formula = typeof content === "object" && content !== null ? { formula: written(content.formula) } : content;
      aside.put(place, formula, look && styleOf(look));
      return;
    }
    if (look) must(file.SetCellStyle(name, cell, cell, styleOf(look)));
    if (content === null) return;
    if (typeof content !== "object") must(file.SetCellValue(name, cell, content));
    else if (isCellError(content)) throw new Error(`${name}!${cell}: an error value cannot be typed into a sheet`);
    else if ("list" in content)
      for (const { at, ...formula } of listFormulas(edition, place, content)) put(at, formula);
    else {
      const formula = written(content.formula);
      const { array } = content;
      if (array)
        must(file.SetCellFormula(name, cell, formula, { Type: "array", Ref: array === true ? cell : areaText(array) }));
      else must(file.SetCellFormula(name, cell, formula));
    }
  };
  const width = (column: number, characters: number): void => {
    const letters = columnLetters(column);
    must(file.SetColWidth(name, letters, letters, characters));
  };
  return {
    name,
    edition,
    put,
    putRow: ({ row, column }, contents, look) =>
      contents.forEach((content, step) => {
        put({ row, column: column + step }, content, look);
      }),
    rowsAside: (from) => {
      aside.from = from;
    },
    dress: (area, look) => {
      const { top, left, bottom, right } = area;
      if (top >= aside.from) {
        aside.dress(area, styleOf(look));
        return;
      }
      const [from, to] = [placeText({ row: top, column: left }), placeText({ row: bottom, column: right })];
      must(file.SetCellStyle(name, from, to, styleOf(look)));
    },
    widths: (...characters) =>
      characters.forEach((characters, column) => {
        width(column, characters);
      }),
    width,
    rowHeight: (row, points) => {
      if (row >= aside.from) aside.setHeight(row, points);
      else must(file.SetRowHeight(name, row + 1, points));
    },
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
    columnLook: (left, right, look) =>
      must(file.SetColStyle(name, `${columnLetters(left)}:${columnLetters(right)}`, styleOf(look))) && undefined,
    table: (tableName, area, striped = true) =>
      must(
        file.AddTable(name, {
          Range: areaText(area),
          Name: tableName,
          StyleName: striped ? "TableStyleLight11" : "",
          ShowRowStripes: striped,
        }),
      ) && undefined,
    accept: (area, rule) => must(file.AddDataValidation(name, validation(areaText(area), rule))) && undefined,
    emphasize: (area, ...rules) =>
      must(
        file.SetConditionalFormat(
          name,
          areaText(area),
          rules.map(([formula, emphasis]) => ({
            Type: "formula",
            Criteria: formula,
            Format: styles.emphasis(emphasis),
            StopIfTrue: true,
          })),
        ),
      ) && undefined,
    chart: (at, chart, over) =>
      must(over ? file.AddChart(name, placeText(at), chart, over) : file.AddChart(name, placeText(at), chart)) &&
      undefined,
    linkTo: (place, sheet) =>
      must(file.SetCellHyperLink(name, placeText(place), `${quoteSheet(sheet)}A1`, "Location")) && undefined,
    merge: ({ top, left, bottom, right }) =>
      must(file.MergeCell(name, placeText({ row: top, column: left }), placeText({ row: bottom, column: right }))) &&
      undefined,
    title: (content) => {
      must(file.SetSheetView(name, 0, { ShowGridLines: false, TopLeftCell: "", View: "normal" }));
      put({ row: 0, column: 0 }, content, "title");
      must(file.SetRowHeight(name, 1, 28));
    },
    protect: () =>
      must(
        file.ProtectSheet(name, {
          SelectLockedCells: true,
          SelectUnlockedCells: true,
          AutoFilter: true,
          Sort: true,
          FormatCells: true,
          FormatColumns: true,
          FormatRows: true,
        }),
      ) && undefined,
    print: ({
      sideways = false,
      upTo,
      upToColumn,
      scale,
      repeat,
      onOnePage = false,
      across = 1,
      repeatColumns = 0,
    }) => {
      if (across > 0) must(file.SetSheetProps(name, { FitToPage: true }));
      must(
        file.SetPageLayout(name, {
          Orientation: sideways ? "landscape" : "portrait",
          ...(scale === undefined ? {} : { AdjustTo: scale }),
          ...(across > 0 ? { FitToWidth: across, FitToHeight: onOnePage ? 1 : 0 } : {}),
          Size: 9,
        }),
      );
      must(file.SetPageMargins(name, { Left: 0.5, Right: 0.5, Top: 0.55, Bottom: 0.65, Header: 0.3, Footer: 0.3 }));
      must(file.SetHeaderFooter(name, { OddFooter: "&L&F, &A&RPage &P of &N" }));
      const naming = (what: string, text: string) =>
        must(file.SetDefinedName({ Name: `_xlnm.${what}`, RefersTo: text, Scope: name }));
      if (upTo) naming("Print_Area", cellsOn(name, { top: 0, left: 0, bottom: upTo.row, right: upTo.column }));
      if (upToColumn !== undefined) naming("Print_Area", columnsOn(name, [0, upToColumn]));
      const columns = repeatColumns > 0 ? [columnsOn(name, [0, repeatColumns - 1])] : [];
      if (repeat) naming("Print_Titles", [...columns, rowsOn(name, repeat)].join(","));
    },
    newPageAt: (column) => must(file.InsertPageBreak(name, placeText({ row: 0, column }))) && undefined,
    newPageAtRow: (row) => must(file.InsertPageBreak(name, placeText({ row, column: 0 }))) && undefined,
  };
}

function validation(Sqref: string, { of, words, lenient = false, hint }: Rule): DataValidation {
  const common = {
    Sqref,
    AllowBlank: true,
    ShowErrorMessage: true,
    ErrorStyle: lenient ? "warning" : "stop",
    ErrorTitle: "Soundfold",
    Error: words,
    ...(hint === undefined ? {} : { ShowInputMessage: true, Prompt: hint }),
  };
  if ("list" in of) return { ...common, Type: "list", Formula1: of.list };
  const [Type, [Formula1, Formula2]] =
    "date" in of ? ["date", of.date] : "whole" in of ? ["whole", of.whole] : ["decimal", of.number];
  return { ...common, Type, Operator: "between", Formula1, Formula2 };
}
