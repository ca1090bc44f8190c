/** A workbook for the stand-in, and the Excel around it. */
export interface StandInBook {
  readonly sheets: readonly StandInSheet[];
  /** What is selected at first: `Cases!B3`. */
  readonly selected: string;
  /** Requirement sets that are there: `ExcelApi 1.13`. */
  readonly sets?: readonly string[];
  readonly dateSystem?: 1900 | 1904;
  /** What a formula gives once it is entered, by the formula; a formula that is not here gives 0. */
  readonly answers?: Readonly<Record<string, readonly (readonly (string | number)[])[]>>;
  /** The code that the next write fails with. */
  readonly failsWith?: string;
  /** A cell that takes no formula, however often it is tried. */
  readonly refuses?: string;
  /** Names of ranges, with where they are: `Cases!B4:B7`. */
  readonly names?: Readonly<Record<string, string>>;
  /** The structure is protected: no sheet can be added. */
  readonly closed?: boolean;
  /** What cells show until something is entered into them, whatever `answers` has, by cell: `Cases!B3`. */
  readonly stale?: Readonly<Record<string, string | number>>;
}

interface StandInSheet {
  readonly name: string;
  /** Rows from A1. A text that starts with `=` is a formula, and shows what `answers` has for it. */
  readonly rows: readonly (readonly (string | number | boolean)[])[];
  /** Addresses of tables, headings included. A table's name is that of its sheet without spaces. */
  readonly tables?: readonly string[];
  /** The tables among them whose last row holds totals. */
  readonly totals?: readonly string[];
  readonly protection?: "without password" | "with password";
  /** Names that are known on this sheet alone. */
  readonly names?: readonly string[];
  /** Array formulas of the old kind, by the cells each was entered in together: `B1:C2`. */
  readonly arrays?: readonly string[];
}

/** One call that reached the stand-in. */
export type StandInCall = readonly [what: string, ...about: unknown[]];

/**
 * Runs in the page in the place of the vendor's script: an Excel made by hand, that does its work when it is told to
 * synchronise, refuses to hand over what was not loaded, and keeps a list of what was asked of it.
 */
export function excelStandIn(book: StandInBook): void {
  type Value = string | number | boolean;
  interface Grid {
    name: string;
    id: string;
    cells: Map<string, Value>;
    tables: readonly string[];
    totals: readonly string[];
    protection: StandInSheet["protection"];
    protectedNow: boolean;
    names: readonly string[];
    arrays: readonly string[];
  }
  interface Box {
    top: number;
    left: number;
    height: number;
    width: number;
  }
  // Excel on the web hands over 5 MB at most at a time, which cells of a hundred bytes fill.
  const mostBytes = 5_000_000;
  const mostCells = 50_000;
  let [syncs, cellsAsked, bytesAsked] = [0, 0, 0];
  const calls: StandInCall[] = [];
  const queue: (() => void)[] = [];
  const answers = new Map(Object.entries(book.answers ?? {}));
  let failsWith = book.failsWith;

  const fail = (code: string, message = code): never => {
    throw Object.assign(new Error(message), { name: "RichApi.Error", code });
  };
  const key = (row: number, column: number): string => `${row},${column}`;
  const letters = (column: number): string =>
    column < 26
      ? String.fromCharCode(65 + column)
      : letters(Math.floor(column / 26) - 1) + String.fromCharCode(65 + (column % 26));
  const number = (text: string): number =>
    [...text].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  const boxOf = (address: string): Box => {
    const columns = /^([A-Z]+):([A-Z]+)$/.exec(address.replaceAll("$", "").toUpperCase());
    if (columns) {
      const [left, right] = [number(columns[1] ?? ""), number(columns[2] ?? "")];
      return { top: 0, left, height: 1_048_576, width: right - left + 1 };
    }
    const match = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(address.replaceAll("$", "").toUpperCase());
    if (!match) return fail("InvalidArgument");
    const [, fromColumn = "", fromRow = "", toColumn = fromColumn, toRow = fromRow] = match;
    const [top, left] = [Number(fromRow) - 1, number(fromColumn)];
    return { top, left, height: Number(toRow) - top, width: number(toColumn) - left + 1 };
  };
  const stale = new Map(Object.entries(book.stale ?? {}));
  const grids: Grid[] = book.sheets.map((sheet, index) => {
    const { name, rows, tables = [], totals = [], protection, names = [], arrays = [] } = sheet;
    return {
      name,
      names,
      arrays,
      id: `sheet-${index}`,
      tables,
      totals,
      protection,
      protectedNow: protection !== undefined,
      cells: new Map(
        rows.flatMap((row, rowPlace) =>
          row.flatMap((value, column): [string, Value][] => (value === "" ? [] : [[key(rowPlace, column), value]])),
        ),
      ),
    };
  });
  const gridNamed = (name: string): Grid =>
    grids.find((known) => known.name === name || known.id === name) ?? fail("ItemNotFound");
  const inside = (box: Box, row: number, column: number): boolean =>
    row >= box.top && row < box.top + box.height && column >= box.left && column < box.left + box.width;
  const usedIn = (grid: Grid, box: Box): Box | undefined => {
    const places = [...grid.cells.keys()]
      .map((place) => place.split(",").map(Number) as [number, number])
      .filter(([row, column]) => inside(box, row, column));
    if (places.length === 0) return undefined;
    const [rows, columns] = [places.map(([row]) => row), places.map(([, column]) => column)];
    const [top, left] = [Math.min(...rows), Math.min(...columns)];
    return { top, left, height: Math.max(...rows) - top + 1, width: Math.max(...columns) - left + 1 };
  };
  const cellIn = (grid: Grid, row: number, column: number): string => `${grid.name}!${letters(column)}${row + 1}`;
  const filledFrom = (grid: Grid, top: number, left: number): Box | undefined => {
    const answer = stale.has(cellIn(grid, top, left)) ? undefined : answers.get(String(grid.cells.get(key(top, left))));
    const lines = answer ?? [];
    const [height, width] = [lines.length, lines[0]?.length ?? 0];
    return height * width > 1 ? { top, left, height, width } : undefined;
  };
  const everything: Box = { top: 0, left: 0, height: 1_048_576, width: 16_384 };
  const shown = (grid: Grid, row: number, column: number): Value => {
    const value = grid.cells.get(key(row, column)) ?? "";
    if (typeof value !== "string" || !value.startsWith("=")) return value;
    return stale.get(cellIn(grid, row, column)) ?? answers.get(value)?.[0]?.[0] ?? 0;
  };
  const spillsIn = (grid: Grid): { box: Box; formula: Value }[] =>
    [...grid.cells].flatMap(([place, formula]) => {
      const [row = 0, column = 0] = place.split(",").map(Number);
      const box = String(formula).startsWith("=") ? filledFrom(grid, row, column) : undefined;
      return box ? [{ box, formula }] : [];
    });
  const split = (address: string): [string, string] => {
    const mark = address.lastIndexOf("!");
    return [address.slice(0, mark).replace(/^'|'$/g, ""), address.slice(mark + 1)];
  };
  const quoted = (name: string): string => (/^\w+$/.test(name) ? name : `'${name}'`);
  let [active, selected] = split(book.selected);

  /** What can be loaded is readable only after it was asked for and brought over. */
  abstract class Loadable {
    readonly #asked = new Set<string>();
    load(names: string): this {
      queue.push(() => {
        for (const name of names.split(",")) {
          this.asked(name.trim());
          this.#asked.add(name.trim());
        }
      });
      return this;
    }
    protected asked(_: string): void {}
    protected given<T>(name: string, value: () => T): T {
      if (!this.#asked.has(name)) return fail("PropertyNotLoaded", `${name} was not loaded`);
      return value();
    }
  }

  class RangeStandIn
    extends Loadable
    implements
      Pick<
        Excel.Range,
        | "address"
        | "values"
        | "valueTypes"
        | "text"
        | "formulas"
        | "numberFormat"
        | "rowIndex"
        | "columnIndex"
        | "rowCount"
        | "columnCount"
        | "cellCount"
      >
  {
    readonly grid: Grid;
    readonly box: Box;
    readonly isNullObject: boolean;
    readonly sheet: SheetStandIn;
    constructor(grid: Grid, box: Box | undefined) {
      super();
      this.grid = grid;
      this.box = box ?? { top: 0, left: 0, height: 1, width: 1 };
      this.isNullObject = box === undefined;
      this.sheet = new SheetStandIn(grid);
    }
    get worksheet(): Excel.Worksheet {
      return this.sheet as unknown as Excel.Worksheet;
    }
    get #plain(): string {
      const { top, left, height, width } = this.box;
      if (height === everything.height) return `${letters(left)}:${letters(left + width - 1)}`;
      const from = `${letters(left)}${top + 1}`;
      return height * width === 1 ? from : `${from}:${letters(left + width - 1)}${top + height}`;
    }
    #each<T>(what: (row: number, column: number) => T): T[][] {
      const { top, left, height, width } = this.box;
      return Array.from({ length: height }, (_, row) =>
        Array.from({ length: width }, (_, column) => what(top + row, left + column)),
      );
    }
    get #shown(): Value[][] {
      return this.#each((row, column) => shown(this.grid, row, column));
    }
    /** A cell that another one's answer fills hands over that one's formula, as the spreadsheet shows it there. */
    get #formulas(): Value[][] {
      const spills = spillsIn(this.grid);
      return this.#each(
        (row, column) =>
          spills.find(({ box }) => inside(box, row, column))?.formula ?? this.grid.cells.get(key(row, column)) ?? "",
      );
    }
    protected override asked(name: string): void {
      if (!["values", "formulas", "text", "valueTypes", "numberFormat"].includes(name)) return;
      // Most are asked for two things of each cell.
      cellsAsked += (this.box.height * this.box.width) / 2;
      if (cellsAsked > mostCells) fail("ResponsePayloadSizeLimitExceeded");
      bytesAsked += JSON.stringify(name === "formulas" ? this.#formulas : this.#shown).length;
      if (bytesAsked > mostBytes) fail("ResponsePayloadSizeLimitExceeded");
    }
    get address(): string {
      return this.given("address", () => `${quoted(this.grid.name)}!${this.#plain}`);
    }
    get values(): Value[][] {
      return this.given("values", () => this.#shown);
    }
    set values(rows: Value[][]) {
      this.#write(rows);
    }
    get formulas(): Value[][] {
      return this.given("formulas", () => this.#formulas);
    }
    set formulas(rows: Value[][]) {
      this.#write(rows);
      const formula = String(rows[0]?.[0]);
      queue.push(() => {
        const { top, left } = this.box;
        answers.get(formula)?.forEach((line, row) => {
          line.forEach((value, column) => {
            if (row + column > 0) this.grid.cells.set(key(top + row, left + column), value);
          });
        });
      });
    }
    get text(): string[][] {
      return this.given("text", () => this.#shown.map((line) => line.map(String)));
    }
    get valueTypes(): Excel.RangeValueType[][] {
      return this.given("valueTypes", () =>
        this.#each((row, column) => {
          const [value, held] = [shown(this.grid, row, column), this.grid.cells.get(key(row, column)) ?? ""];
          const kind = /^#[A-Z/0]+[!?]?$/.test(String(value)) ? "Error" : held === "" ? "Empty" : "String";
          return kind as Excel.RangeValueType;
        }),
      );
    }
    get numberFormat(): string[][] {
      return this.given("numberFormat", () => this.#each(() => "General"));
    }
    set numberFormat(formats: string[][]) {
      queue.push(() => calls.push(["format", `${this.grid.name}!${this.#plain}`, formats[0]?.[0]]));
    }
    get rowIndex(): number {
      return this.given("rowIndex", () => this.box.top);
    }
    get columnIndex(): number {
      return this.given("columnIndex", () => this.box.left);
    }
    get rowCount(): number {
      return this.given("rowCount", () => this.box.height);
    }
    get columnCount(): number {
      return this.given("columnCount", () => this.box.width);
    }
    get cellCount(): number {
      return this.given("cellCount", () => this.box.height * this.box.width);
    }
    #write(rows: Value[][]): void {
      queue.push(() => {
        if (`${this.grid.name}!${this.#plain}` === book.refuses) fail("InvalidArgument");
        if (failsWith !== undefined) {
          const code = failsWith;
          failsWith = undefined;
          fail(code);
        }
        if (this.grid.protectedNow) fail("AccessDenied");
        const { top, left, height, width } = this.box;
        for (const array of this.grid.arrays.map(boxOf))
          if (inside(array, top, left) && height * width < array.height * array.width)
            fail("InvalidOperation", "You can't change part of an array.");
        calls.push(["write", `${this.grid.name}!${this.#plain}`, rows[0]?.[0]]);
        rows.forEach((row, down) => {
          row.forEach((value, along) => {
            this.grid.cells.set(key(top + down, left + along), value);
            stale.delete(cellIn(this.grid, top + down, left + along));
          });
        });
      });
    }
    select(): void {
      queue.push(() => {
        [active, selected] = [this.grid.name, this.#plain];
        calls.push(["select", `${this.grid.name}!${this.#plain}`]);
      });
    }
    getCell(row: number, column: number): RangeStandIn {
      return new RangeStandIn(this.grid, {
        top: this.box.top + row,
        left: this.box.left + column,
        height: 1,
        width: 1,
      });
    }
    getResizedRange(rows: number, columns: number): RangeStandIn {
      const { box } = this;
      return new RangeStandIn(this.grid, { ...box, height: box.height + rows, width: box.width + columns });
    }
    getUsedRangeOrNullObject(): RangeStandIn {
      return new RangeStandIn(this.grid, usedIn(this.grid, this.box));
    }
    getSpillingToRangeOrNullObject(): RangeStandIn {
      return new RangeStandIn(this.grid, filledFrom(this.grid, this.box.top, this.box.left));
    }
    getSpillingToRange(): RangeStandIn {
      const filled = this.getSpillingToRangeOrNullObject();
      if (filled.isNullObject) queue.push(() => void fail("ItemNotFound"));
      return filled;
    }
    getSpillParentOrNullObject(): RangeStandIn {
      const { top, left } = this.box;
      const around = spillsIn(this.grid).find(({ box }) => inside(box, top, left))?.box;
      return new RangeStandIn(this.grid, around && { ...around, height: 1, width: 1 });
    }
    getEntireRow(): RangeStandIn {
      return new RangeStandIn(this.grid, { ...this.box, left: 0, width: everything.width });
    }
    getIntersection(other: RangeStandIn): RangeStandIn {
      const [one, two] = [this.box, other.box];
      const [top, left] = [Math.max(one.top, two.top), Math.max(one.left, two.left)];
      const height = Math.min(one.top + one.height, two.top + two.height) - top;
      const width = Math.min(one.left + one.width, two.left + two.width) - left;
      if (this.grid !== other.grid || height < 1 || width < 1) queue.push(() => void fail("ItemNotFound"));
      return new RangeStandIn(this.grid, { top, left, height, width });
    }
    getSurroundingRegion(): RangeStandIn {
      return new RangeStandIn(this.grid, usedIn(this.grid, everything) ?? this.box);
    }
    getTables(): unknown {
      const { box, grid } = this;
      const around = grid.tables.filter((address) => {
        const table = boxOf(address);
        return inside(table, box.top, box.left);
      });
      return {
        load: () => {},
        items: around.map((address) => ({
          showTotals: grid.totals.includes(address),
          getRange: () => new RangeStandIn(grid, boxOf(address)),
        })),
      };
    }
  }

  class SheetStandIn extends Loadable implements Pick<Excel.Worksheet, "name"> {
    readonly grid: Grid;
    constructor(grid: Grid) {
      super();
      this.grid = grid;
    }
    get name(): string {
      return this.given("name", () => this.grid.name);
    }
    getRange(address: string): RangeStandIn {
      return new RangeStandIn(this.grid, boxOf(address));
    }
    getUsedRangeOrNullObject(): RangeStandIn {
      return new RangeStandIn(this.grid, usedIn(this.grid, everything));
    }
    activate(): void {
      queue.push(() => {
        active = this.grid.name;
      });
    }
    delete(): void {
      queue.push(() => {
        grids.splice(grids.indexOf(this.grid), 1);
        calls.push(["delete sheet", this.grid.name]);
      });
    }
    get names(): unknown {
      return { load: () => {}, items: this.grid.names.map((name) => ({ name })) };
    }
    get protection(): unknown {
      const { grid } = this;
      return {
        load: () => {},
        get protected() {
          return grid.protectedNow;
        },
        options: { allowSort: true },
        unprotect: () =>
          queue.push(() => {
            if (grid.protection === "with password") fail("AccessDenied");
            grid.protectedNow = false;
            calls.push(["unprotect", grid.name]);
          }),
        protect: (options: unknown) =>
          queue.push(() => {
            grid.protectedNow = true;
            calls.push(["protect", grid.name, options]);
          }),
      };
    }
  }

  const worksheets = {
    load: () => {},
    get items() {
      return grids.map((grid) => {
        const sheet = new SheetStandIn(grid);
        sheet.load("name");
        return sheet;
      });
    },
    getItem: (name: string) => {
      // A sheet that is not there is only noticed when the work is done.
      const grid = grids.find((known) => known.name === name || known.id === name);
      if (!grid) queue.push(() => void fail("ItemNotFound"));
      return new SheetStandIn(grid ?? (grids[0] as Grid));
    },
    getActiveWorksheet: () => new SheetStandIn(gridNamed(active)),
    add: () => {
      const name = `Sheet${grids.length + 1}`;
      const grid: Grid = {
        name,
        id: name,
        cells: new Map(),
        tables: [],
        totals: [],
        protection: undefined,
        protectedNow: false,
        names: [],
        arrays: [],
      };
      queue.push(() => {
        if (book.closed) fail("AccessDenied");
        grids.push(grid);
        calls.push(["add sheet", name]);
      });
      return new SheetStandIn(grid);
    },
  };
  const context = {
    workbook: {
      worksheets,
      getSelectedRange: () => {
        if (selected.includes(",")) queue.push(() => void fail("InvalidSelection"));
        return new RangeStandIn(gridNamed(active), boxOf(selected.split(",")[0] ?? ""));
      },
      getActiveCell: () => {
        const { top, left } = boxOf(selected.split(",")[0] ?? "");
        return new RangeStandIn(gridNamed(active), { top, left, height: 1, width: 1 });
      },
      names: {
        load: () => {},
        items: Object.keys(book.names ?? {}).map((name) => ({ name })),
        getItem: (name: string) => ({
          getRange: () => {
            const address = book.names?.[name];
            if (address === undefined) queue.push(() => void fail("ItemNotFound"));
            const [sheet, cells] = split(address ?? `${grids[0]?.name}!A1`);
            return new RangeStandIn(gridNamed(sheet), boxOf(cells));
          },
        }),
      },
      tables: {
        getItem: (name: string) => ({
          columns: {
            getItem: (heading: string) => ({
              getDataBodyRange: () => {
                const grid = grids.find((known) => known.tables.length > 0 && known.name.replaceAll(" ", "") === name);
                const box = boxOf(grid?.tables[0] ?? "A1:A2");
                const headings = Array.from({ length: box.width }, (_, index) =>
                  grid?.cells.get(key(box.top, box.left + index)),
                );
                const index = headings.indexOf(heading);
                if (index < 0) queue.push(() => void fail("ItemNotFound"));
                return new RangeStandIn(grid ?? (grids[0] as Grid), {
                  top: box.top + 1,
                  left: box.left + index,
                  height: box.height - 1,
                  width: 1,
                });
              },
            }),
          },
        }),
      },
      functions: { date: () => ({ value: book.dateSystem === 1904 ? 0 : 1462, load: () => {} }) },
      insertWorksheetsFromBase64: (base64: string, options: Excel.InsertWorksheetOptions) => {
        const ids = { value: [] as string[] };
        queue.push(() => {
          calls.push(["insert", base64, options]);
          for (const name of ["Start", "Gathers"]) {
            const grid: Grid = {
              name,
              id: `{${name}}`,
              cells: new Map(),
              tables: [],
              totals: [],
              protection: undefined,
              protectedNow: false,
              names: [],
              arrays: [],
            };
            grids.push(grid);
            ids.value.push(grid.id);
          }
        });
        return ids;
      },
    },
    sync: async () => {
      syncs += 1;
      [cellsAsked, bytesAsked] = [0, 0];
      const work = queue.splice(0);
      for (const step of work) step();
    },
  };
  const page = globalThis as unknown as Record<string, unknown>;
  page.standIn = {
    calls,
    select: (address: string) => {
      [active, selected] = split(address);
    },
    sheets: () => grids.map(({ name }) => name),
    syncs: () => syncs,
    shown: (cell: string) => {
      const [sheet, address] = split(cell);
      const { top, left } = boxOf(address);
      return shown(gridNamed(sheet), top, left);
    },
  };
  page.Office = {
    onReady: async () => ({ host: "Excel", platform: "PC" }),
    context: {
      requirements: {
        isSetSupported: (name: string, version: string) => (book.sets ?? []).includes(`${name} ${version}`),
      },
    },
  };
  page.Excel = {
    run: async (batch: (given: typeof context) => Promise<unknown>) => {
      queue.length = 0;
      return batch(context);
    },
    createWorkbook: async (base64: string) => {
      calls.push(["create workbook", base64]);
    },
  };
  page.CustomFunctions = {
    associate: (name: string) => calls.push(["associate", name]),
    Error: class {},
    ErrorCode: {},
  };
}
