import type { ICellData, IRange, IWorkbookData } from "@univerjs/core";
import { ICommandService, LifecycleService, LifecycleStages } from "@univerjs/core";
import { FormulaDataModel, SetArrayFormulaDataMutation } from "@univerjs/engine-formula";
import {
  CellAlertManagerService,
  HoverManagerService,
  IEditorBridgeService,
  ILayoutService,
  SetNumfmtMutation,
  SheetInterceptorService,
  SheetPasteShortKeyCommandName,
  SheetsSelectionsService,
  transformCellsToRange,
} from "@univerjs/preset-sheets-core";
import type { Cell } from "../../../cells/cell.ts";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { namespace } from "../../../definition/formulaText.ts";
import { keepWhatIsTyped } from "../../../hosts/headless/insides/keepWhatIsTyped.ts";
import { withoutAlerts } from "../../../hosts/headless/insides/withoutAlerts.ts";
import { cellFromData } from "../../../hosts/headless/valueCells.ts";
import type { Clock } from "../../../hosts/localClock.ts";
import {
  type Area,
  areaText,
  columnNumber,
  type Place,
  placeText,
  readArea,
  readPlace,
} from "../../../workbook/address.ts";
import type { Engine } from "../../../workbook/engine.ts";
import { quoteSheet, unquoteSheet } from "../../../workbook/formula/structured.ts";
import { surroundingsOf } from "../../../workbook/formula/surroundingsOf.ts";
import { type Surroundings, translate } from "../../../workbook/formula/translate.ts";
import { lastRow } from "../../../workbook/limits.ts";
import { isOneCall } from "../../../workbook/saving/changesOf.ts";
import { writeEdits } from "../../../workbook/saving/writeEdits.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { patternFor } from "../../../writing/format.ts";
import type { Found, FoundCells } from "../../parts/explain/cellsGiven.ts";
import { askedOf, type Explanation, explainFormula } from "../../parts/explain/explainFormula.ts";
import { formulaHint } from "../../parts/explain/formulaHint.ts";
import { sheetWords } from "../sheetWords.ts";
import { asStored } from "./asStored.ts";
import { type Box, cellBox } from "./cellBox.ts";
import { type CellRule, cellRules, ruleFor } from "./cellRules.ts";
import { cellsIn } from "./cellsIn.ts";
import { writeDatesOut } from "./datesInEditor.ts";
import { editsIn } from "./editsIn.ts";
import { showHashes } from "./hashes.ts";
import { heard } from "./heard.ts";
import { keepInView } from "./keepInView.ts";
import { type CellLink, type Link, linkAt, readLinks } from "./links.ts";
import { looksLikeDate } from "./looksLikeDate.ts";
import { markDoubts } from "./markDoubts.ts";
import { isRefused } from "./refusedCommands.ts";
import { sheetId, sheetPlace } from "./sheetId.ts";
import { type ShownWorkbook, shownWorkbook } from "./shownWorkbook.ts";
import { startUniver } from "./startUniver.ts";
import { tellTypedFormula } from "./typedFormula.ts";
import { isUnclear, keepUnclearDates, markUnclearDates, type Pasted, withoutMark } from "./unclearDates.ts";
import { type CellAt, widenForDates } from "./widenForDates.ts";

/** What is to be said of the selected cell. */
export interface Selected {
  readonly sheet: string;
  readonly address: string;
  /** As the cell shows it. */
  readonly shown: string;
  readonly formula: string | undefined;
  /** What the function in it said when it refused. */
  readonly message: string | undefined;
  /** What is wanted there: by the workbook, or instead of a date that is none for certain. */
  readonly wanted: string | undefined;
  /** What the workbook offers to pick from. */
  readonly choices: readonly string[];
  readonly link: Link | undefined;
}

/** A cell that holds something doubtful, in words. */
export interface Doubt {
  /** With its sheet, as `place` is given to `go`. */
  readonly address: string;
  readonly sentence: string;
}

/** A table that a function's formula fills. */
export interface FilledTable {
  readonly functionName: string;
  readonly sheet: string;
  readonly address: string;
  readonly cells: readonly (readonly Cell[])[];
}

export interface GridEvents {
  /** Another cell is selected, or what it holds is another. */
  readonly onSelected: (selected: Selected) => void;
  readonly onCalculating: (calculating: boolean) => void;
  /** What a cell holds was changed, and not by working it out. */
  readonly onChanged: () => void;
  /** What was just typed or pasted is doubtful in some cells; none when it is doubtful in none. */
  readonly onDoubts: (doubts: readonly Doubt[]) => void;
  /** The sheet was scrolled, or lies elsewhere in the window. */
  readonly onMoved: () => void;
  /** The pointer rests on a cell of which something is to be said, or on none. */
  readonly onPointed: (pointed: { readonly cell: Box; readonly sentence: string } | undefined) => void;
  /** A formula is being typed: what stands before the caret; undefined once that is over. */
  readonly onTyping: (before: string | undefined) => void;
  /** The person asked for something that would move cells about. */
  readonly onRefused: () => void;
}

export interface PracticeGrid {
  /**
   * Shows a workbook; it can be typed into once this is answered.
   *
   * @param mayClose - asked once the workbook is known to be one that can be shown: whether the open one may go
   * @returns the cells that keep the value they were saved with, and why; undefined where the open one stays
   */
  readonly show: (workbook: Workbook, mayClose: () => Promise<boolean>) => Promise<readonly string[] | undefined>;
  /** No workbook has been shown yet. */
  readonly isEmpty: () => boolean;
  /** Lets the keys go to the selected cell. */
  readonly focus: () => void;
  /** Puts what is being typed into its cell. */
  readonly endTyping: () => Promise<void>;
  /** The workbook's file with what was typed, not yet worked out. */
  readonly file: () => Uint8Array;
  readonly selection: () => string;
  /** Where the selected cell is in the window, if it is in sight. */
  readonly selectedBox: () => Box | undefined;
  /** Puts one of the choices into the selected cell. */
  readonly choose: (choice: string) => void;
  /** Selects a cell, such as 'Sale check'!A1, or the first of some, and brings it into view. */
  readonly go: (place: string) => void;
  /** Brings the sheet so many places further on into view, or back; nothing happens at an end. */
  readonly turn: (further: number) => void;
  readonly shownAt: (cell: string) => string;
  readonly write: (cell: string, formula: string) => void;
  /** The formula of the selected cell in words; undefined where it holds none. */
  readonly explained: () => Explanation | undefined;
  readonly tables: (functionNames: ReadonlySet<string>) => readonly FilledTable[];
  readonly setDark: (dark: boolean) => void;
  readonly dispose: () => void;
}

interface Opened {
  readonly workbook: Workbook;
  readonly around: Surroundings;
  readonly shown: ShownWorkbook;
  /** By the place of the sheet; read when the sheet is first looked at. */
  readonly rules: Map<number, readonly CellRule[]>;
  readonly links: Map<number, readonly CellLink[]>;
}

/** The spreadsheet of the page: shows a workbook, works out what is typed, and gives the file back. */
export function practiceGrid(
  container: HTMLElement,
  catalogue: readonly AnyFunction[],
  engine: Pick<Engine, "knows" | "footNames">,
  clock: Clock,
  dark: boolean,
  events: GridEvents,
): PracticeGrid {
  const ears = heard();
  const { univer, api, injector } = startUniver(container, catalogue, clock, ears, dark);
  showHashes();
  const commands = injector.get(ICommandService);
  const formulas = injector.get(FormulaDataModel);
  let opened: Opened | undefined;
  const asked = new Set<string>();
  // Formulas as they were typed, by what the spreadsheet was given for them.
  const typed = new Map<string, string>();
  let count = 0;

  const unit = (): string => unitAt(count);
  const formulaAt = (sheet: string, row: number, column: number): string | undefined =>
    formulas.getFormulaStringByCell(row, column, sheet, unit()) || undefined;

  // Cells of an opened workbook hold their errors without a sentence: such a cell is worked out once more when looked at.
  const askAgain = (sheet: string, row: number, column: number, shown: string): void => {
    const isError = shown.startsWith("#") && formulaAt(sheet, row, column)?.includes(`${namespace}.`);
    const key = `${sheet} ${row} ${column}`;
    if (!isError || asked.has(key) || ears.message(sheet, row, column) !== undefined) return;
    asked.add(key);
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    void commands.executeCommand("formula.mutation.set-trigger-formula-calculation-start", {
      dirtyRanges: [{ unitId: unit(), sheetId: sheet, range }],
    });
  };

  const tell = (): void => {
    const active = api.getActiveWorkbook()?.getActiveSheet();
    const range = active?.getActiveRange();
    if (!active || !range || !opened) return;
    const [sheet, row, column] = [range.getSheetId(), range.getRow(), range.getColumn()];
    const cell = active.getRange(row, column);
    const formula = formulaAt(sheet, row, column);
    const value = formula === undefined ? cell.getRawValue() : undefined;
    askAgain(sheet, row, column, cell.getDisplayValue() ?? "");
    events.onSelected({
      sheet: opened.workbook.sheets[sheetPlace(sheet)]?.name ?? "",
      address: placeText({ row, column }),
      shown: cell.getDisplayValue() ?? "",
      formula,
      message: messageAt(sheet, row, column),
      wanted: doubtIn(value, sheetPlace(sheet), row, column) ?? wantedAt(sheetPlace(sheet), row, column),
      choices: choicesAt(sheetPlace(sheet), row, column) ?? [],
      link: linkOf(sheetPlace(sheet), row, column),
    });
  };

  const names = catalogue.map(({ name }) => name);
  /** What is to be said of a formula that came to an error: a misspelling before what a function makes of it. */
  const messageAt = (sheet: string, row: number, column: number): string | undefined => {
    const formula = formulaAt(sheet, row, column);
    const shown = formula && api.getActiveWorkbook()?.getSheetBySheetId(sheet)?.getRange(row, column).getDisplayValue();
    const hint = formula && String(shown).startsWith("#") ? formulaHint(formula, names) : undefined;
    return hint ?? ears.message(sheet, row, column);
  };

  const rulesOf = ({ workbook, rules }: Opened, sheet: number): readonly CellRule[] => {
    const known = rules.get(sheet) ?? cellRules(workbook, sheet);
    rules.set(sheet, known);
    return known;
  };
  const ruleAt = (sheet: number, row: number, column: number): CellRule | undefined =>
    opened && ruleFor(rulesOf(opened, sheet), { row, column });

  // Asked for every cell that is drawn, and the same until some cell holds something else.
  const choicesOf = new Map<CellRule, readonly string[] | undefined>();
  const choicesAt = (sheet: number, row: number, column: number): readonly string[] | undefined => {
    const rule = ruleAt(sheet, row, column);
    if (!rule?.choices) return undefined;
    if (!choicesOf.has(rule)) {
      const found = "area" in rule.choices ? filledIn(rule.choices) : rule.choices;
      choicesOf.set(rule, found.length > 0 ? found : undefined);
    }
    return choicesOf.get(rule);
  };

  const wantedAt = (sheet: number, row: number, column: number): string | undefined => {
    const choices = choicesAt(sheet, row, column);
    return choices ? sheetWords.chooseOne(choices) : ruleAt(sheet, row, column)?.sentence;
  };

  /** What is doubtful about a content that was typed, in a sentence. */
  const doubtIn = (value: unknown, sheet: number, row: number, column: number): string | undefined => {
    if (value === undefined || value === null || value === "") return undefined;
    const text = String(value).trim();
    if (typeof value === "string" && (isUnclear(text) || looksLikeDate(text))) return sheetWords.noDate;
    const choices = choicesAt(sheet, row, column);
    const isChoice = choices?.some((choice) => choice.trim().toLowerCase() === text.toLowerCase()) ?? true;
    return choices && !isChoice ? sheetWords.notChosen(text, choices) : undefined;
  };

  const linkOf = (sheet: number, row: number, column: number): Link | undefined => {
    if (!opened) return undefined;
    const known = opened.links.get(sheet) ?? readLinks(opened.workbook, sheet);
    opened.links.set(sheet, known);
    return linkAt(known, { row, column });
  };

  const filledIn = ({ sheet, area: { top, left, bottom, right } }: { sheet: number; area: Area }): string[] => {
    const found = api.getActiveWorkbook()?.getSheetBySheetId(sheetId(sheet));
    const shown = found?.getRange(top, left, bottom - top + 1, right - left + 1).getDisplayValues() ?? [];
    return shown.flat().filter((text) => text !== "");
  };

  // Names and tables of the workbook are put in place, since the embedded spreadsheet knows cells only.
  const readTyped = (cell: ICellData, sheet: string, row: number, column: number): void => {
    ears.forget(sheet, row, column);
    if (typeof cell.v === "string") cell.v = withoutMark(cell.v);
    if (typeof cell.f !== "string" || !cell.f.startsWith("=")) return;
    const given = givenFor(cell.f, sheetPlace(sheet), { row, column });
    // What cannot be read stays as it was typed, and shows its error.
    if (given === undefined || given === cell.f) return;
    typed.set(given, cell.f);
    cell.f = given;
  };

  const givenFor = (formula: string, sheet: number, at: Place): string | undefined => {
    try {
      return opened && translate(formula.slice(1), sheet, at, opened.around).formula;
    } catch {
      return undefined;
    }
  };

  const storedFor = (formula: string, sheet: number, at: Place): string => {
    const own = typed.get(formula);
    // A copy may stand where the same words mean other cells.
    const isSame = own !== undefined && givenFor(own, sheet, at) === formula;
    return asStored((isSame ? own : formula).slice(1), opened?.workbook.sheets[sheet]?.tables ?? [], at);
  };

  commands.beforeCommandExecuted(({ id, params }, options) => {
    if (isRefused(id)) {
      events.onRefused();
      throw new Error("cells stay where they are");
    }
    if (id === SheetPasteShortKeyCommandName) markUnclearDates(params as Pasted);
    if (id !== "sheet.mutation.set-range-values" || options?.fromFormula || options?.onlyLocal) return;
    const { subUnitId, cellValue } = params as {
      subUnitId: string;
      cellValue?: Record<string, Record<string, ICellData | null>>;
    };
    let changes = false;
    const doubts: Doubt[] = [];
    const toWiden: CellAt[] = [];
    const name = opened?.workbook.sheets[sheetPlace(subUnitId)]?.name ?? "";
    for (const [row, line] of Object.entries(cellValue ?? {}))
      for (const [column, cell] of Object.entries(line)) {
        if (cell && ("v" in cell || "f" in cell)) readTyped(cell, subUnitId, Number(row), Number(column));
        changes ||= cell === null || "v" in cell || "f" in cell || "p" in cell;
        if (cell && ("v" in cell || "f" in cell))
          toWiden.push({ sheet: subUnitId, row: Number(row), column: Number(column) });
        const isPlain = cell && "v" in cell && !cell.f && !cell.si;
        const sentence = isPlain ? doubtIn(cell.v, sheetPlace(subUnitId), Number(row), Number(column)) : undefined;
        const at = { row: Number(row), column: Number(column) };
        if (sentence !== undefined) doubts.push({ address: `${bareOr(quoteSheet(name))}${placeText(at)}`, sentence });
      }
    if (!changes) return;
    choicesOf.clear();
    events.onChanged();
    events.onDoubts(doubts);
    // Once the cells hold it, with its format.
    setTimeout(() => widenForDates(api, injector, toWiden));
  });

  const showAsWanted = (): void => {
    // A cell that gets a format takes from the open editor what was typed so far.
    if (injector.get(IEditorBridgeService).isVisible().visible) {
      setTimeout(showAsWanted, 300);
      return;
    }
    const wanted = new Map<string, { row: number; col: number; pattern: string }[]>();
    for (const { sheetId: sheet, row, column, shown } of ears.takeShown()) {
      if (!isOneCall(formulaAt(sheet, row, column)?.slice(1) ?? "")) continue;
      const data = api.getActiveWorkbook()?.getSheetBySheetId(sheet);
      if (!data) continue;
      const cells = wanted.get(sheet) ?? [];
      wanted.set(sheet, cells);
      const area = formulas.getArrayFormulaRange()[unit()]?.[sheet]?.[row]?.[column];
      const values = formulas.getArrayFormulaCellData()[unit()]?.[sheet];
      for (let at = row; at <= (area?.endRow ?? row); at += 1) {
        if (shown.headings && at === row) continue;
        for (let across = column; across <= (area?.endColumn ?? column); across += 1) {
          const format = shown.formats[Math.min(across - column, shown.formats.length - 1)];
          const range = data.getRange(at, across);
          const value = area ? values?.[at]?.[across]?.v : range.getRawValue();
          const pattern = format === undefined ? "General" : patternFor(format, value);
          if (pattern !== "General" && !range.getCellStyleData()?.n) cells.push({ row: at, col: across, pattern });
        }
      }
    }
    // Not by the command of the same name: the person would have to undo each format before what was typed.
    for (const [sheet, cells] of wanted)
      if (cells.length > 0)
        commands.syncExecuteCommand(SetNumfmtMutation.id, transformCellsToRange(unit(), sheet, cells));
    for (const [sheet, cells] of wanted)
      widenForDates(
        api,
        injector,
        cells.map(({ row, col }) => ({ sheet, row, column: col })),
      );
  };

  // These services are there only once a first workbook is.
  const listen = (): void => {
    const edited = injector.get(SheetInterceptorService);
    writeDatesOut(edited);
    markDoubts(edited, (value, { subUnitId, row, col }) => doubtIn(value, sheetPlace(subUnitId), row, col));
    keepUnclearDates(edited);
    const calculation = api.getFormula();
    calculation.calculationStart(() => events.onCalculating(true));
    calculation.calculationEnd(() => events.onCalculating(false));
    calculation.calculationResultApplied(() => {
      choicesOf.clear();
      showAsWanted();
      events.onCalculating(false);
      tell();
    });
    // The spreadsheet's own event is fired only from three seconds after the first picture on, and is not fired where
    // the same cell is selected on another sheet.
    const { selectionMoveEnd$, selectionSet$ } = injector.get(SheetsSelectionsService);
    for (const selected$ of [selectionMoveEnd$, selectionSet$]) {
      selected$.subscribe(tell);
      selected$.subscribe(showSelected);
    }
    api.addEvent(api.Event.Scroll, events.onMoved);
    api.addEvent(api.Event.CellClicked, ({ row, column, worksheet }) => {
      const link = linkOf(sheetPlace(worksheet.getSheetId()), row, column);
      if (link && "place" in link) go(link.place);
    });
    tellTypedFormula(injector, events.onTyping);
    keepWhatIsTyped(injector.get(IEditorBridgeService));
    withoutAlerts(injector.get(CellAlertManagerService));
    injector
      .get(HoverManagerService)
      .currentCell$.subscribe((at) => events.onPointed(at ? pointedAt(at.location) : undefined));
    api.addEvent(api.Event.ActiveSheetChanged, () => {
      selectFirstCell();
      tell();
    });
    api.addEvent(api.Event.SheetValueChanged, tell);
  };

  // What else moves the sheet when a cell is selected comes before.
  const showSelected = (): void => {
    setTimeout(() => {
      const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
      const shown = range && cellBox(injector, unit(), range.getRow(), range.getColumn());
      if (shown) keepInView(shown);
      events.onMoved();
    });
  };

  const pointedAt = ({ subUnitId, row, col }: { subUnitId: string; row: number; col: number }) => {
    const cell = api.getActiveWorkbook()?.getSheetBySheetId(subUnitId)?.getRange(row, col);
    const formula = formulaAt(subUnitId, row, col);
    const sentence =
      messageAt(subUnitId, row, col) ??
      (formula === undefined ? doubtIn(cell?.getRawValue(), sheetPlace(subUnitId), row, col) : undefined);
    const shown = sentence === undefined ? undefined : cellBox(injector, unit(), row, col);
    return shown && sentence !== undefined ? { cell: shown.cell, sentence } : undefined;
  };

  const go = (address: string): void => {
    const { found, range } = rangeAt(address);
    found.activate();
    range.activate();
    showSelected();
    tell();
  };

  const place = (cell: string): { sheet: string; row: number; column: number } => {
    const cut = cell.lastIndexOf("!");
    const name = unquoteSheet(cell.slice(0, Math.max(cut, 0)));
    const [first = ""] = cell.slice(cut + 1).split(":");
    const at = readPlace(first);
    const active = api.getActiveWorkbook()?.getActiveSheet()?.getSheetId() ?? sheetId(0);
    const named = opened?.workbook.sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase()) ?? -1;
    if (!at || (cut >= 0 && named < 0)) throw new Error(sheetWords.badCell);
    return { sheet: cut < 0 ? active : sheetId(named), ...at };
  };
  const rangeAt = (cell: string) => {
    const { sheet, row, column } = place(cell);
    const found = api.getActiveWorkbook()?.getSheetBySheetId(sheet);
    if (!found) throw new Error(sheetWords.badCell);
    return { found, range: found.getRange(row, column) };
  };

  const cellsAt = (sheet: string, area: Area) => {
    const filled = formulas.getArrayFormulaCellData()[unit()]?.[sheet];
    return cellsIn(api, sheet, area, (row, column) => filled?.[row]?.[column] ?? undefined);
  };

  /** The cells that an argument names as it stands in the formula of a cell of this sheet. */
  const foundFor = (asked: string, own: string): FoundCells | undefined => {
    const cut = asked.lastIndexOf("!");
    const name = unquoteSheet(asked.slice(0, Math.max(cut, 0)));
    const at = opened?.workbook.sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase()) ?? -1;
    const sheet = cut < 0 ? own : sheetId(at);
    const area = areaNamed(asked.slice(cut + 1), formulas.getArrayFormulaRange()[unit()]?.[sheet]);
    if (!area || (cut >= 0 && at < 0)) return undefined;
    return { address: `${asked.slice(0, cut + 1)}${areaText(area)}`, cells: cellsAt(sheet, area) };
  };

  const explained = (): Explanation | undefined => {
    const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
    if (!range) return undefined;
    const [sheet, row, column] = [range.getSheetId(), range.getRow(), range.getColumn()];
    const formula = formulaAt(sheet, row, column);
    if (formula === undefined) return undefined;
    const found: Found = new Map(
      askedOf(formula, catalogue).flatMap((asked) => {
        const cells = foundFor(asked, sheet);
        return cells ? [[asked, cells] as const] : [];
      }),
    );
    const filled = formulas.getArrayFormulaRange()[unit()]?.[sheet]?.[row]?.[column];
    const area = filled ? areaOf(filled) : { top: row, left: column, bottom: row, right: column };
    return explainFormula(formula, catalogue, found, {
      cells: cellsAt(sheet, area),
      message: messageAt(sheet, row, column),
    });
  };

  const selectFirstCell = (): void => {
    const sheet = api.getActiveWorkbook()?.getActiveSheet();
    if (sheet && !sheet.getActiveRange()) sheet.getRange(0, 0).activate();
  };

  const fillArrays = (shown: ShownWorkbook): void => {
    commands.syncExecuteCommand(
      SetArrayFormulaDataMutation.id,
      {
        arrayFormulaRange: { [unit()]: bySheet(shown, ({ areas }) => areas) },
        arrayFormulaCellData: { [unit()]: bySheet(shown, ({ cells }) => cells) },
        arrayFormulaEmbedded: {},
      },
      { onlyLocal: true },
    );
    formulas.setArrayFormulaRange({ [unit()]: bySheet(shown, ({ areas }) => areas) });
    formulas.setArrayFormulaCellData({ [unit()]: bySheet(shown, ({ cells }) => cells) } as never);
  };

  return {
    async show(workbook, mayClose) {
      if (workbook.dateSystem === 1904) throw new Error(sheetWords.from1904);
      const around = surroundingsOf(workbook, engine);
      const shown = shownWorkbook(unitAt(count + 1), workbook, around);
      if (!(await mayClose())) return undefined;
      if (opened) api.disposeUnit(unit());
      count += 1;
      asked.clear();
      typed.clear();
      ears.start();
      choicesOf.clear();
      opened = {
        workbook,
        around,
        shown: { ...shown, data: structuredClone(shown.data) },
        rules: new Map(),
        links: new Map(),
      };
      api.createWorkbook(shown.data);
      if (count === 1) listen();
      // In this turn the spreadsheet still puts away what the arrays of the workbook before filled, and all others with it.
      await new Promise((resolve) => setTimeout(resolve));
      if (opened?.shown.data.id !== shown.data.id) return shown.left;
      fillArrays(shown);
      // From this stage on the spreadsheet has its keys and editors.
      await injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
      selectFirstCell();
      tell();
      return shown.left;
    },
    isEmpty: () => opened === undefined,
    focus: () => injector.get(ILayoutService).focus(),
    async endTyping() {
      await api.getActiveWorkbook()?.endEditingAsync(true);
    },
    file() {
      const now = api.getActiveWorkbook()?.save() as IWorkbookData;
      if (!opened) throw new Error("no workbook is open");
      return writeEdits(
        opened.workbook,
        editsIn(opened.shown.data, { data: now, formula: formulaAt, stored: storedFor }),
      );
    },
    selection() {
      const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
      const name = opened?.workbook.sheets[sheetPlace(range?.getSheetId() ?? "")]?.name ?? "";
      return range ? `${quoteSheet(name)}${range.getA1Notation()}` : "";
    },
    selectedBox() {
      const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
      const shown = range && cellBox(injector, unit(), range.getRow(), range.getColumn());
      if (!shown) return undefined;
      const { cell, pane } = shown;
      const isSeen = cell.left >= pane.left && cell.top >= pane.top && cell.top < pane.top + pane.height;
      return isSeen && cell.left < pane.left + pane.width ? cell : undefined;
    },
    choose(choice) {
      const isNumber = choice.trim() !== "" && Number.isFinite(Number(choice));
      api
        .getActiveWorkbook()
        ?.getActiveSheet()
        ?.getActiveRange()
        ?.setValue(isNumber ? Number(choice) : choice);
    },
    go,
    turn(further) {
      const workbook = api.getActiveWorkbook();
      const sheets = workbook?.getSheets() ?? [];
      const at = sheets.findIndex((sheet) => sheet.getSheetId() === workbook?.getActiveSheet().getSheetId());
      const shown = sheets.filter((sheet, place) => (further > 0 ? place > at : place < at) && !sheet.isSheetHidden());
      (further > 0 ? shown[0] : shown.at(-1))?.activate();
      injector.get(ILayoutService).focus();
    },
    shownAt: (cell) => String(rangeAt(cell).range.getDisplayValue() ?? ""),
    write(cell, formula) {
      const { found, range } = rangeAt(cell);
      found.activate();
      range.activate();
      range.setValue({ f: formula });
    },
    explained,
    tables(names) {
      const areas = formulas.getArrayFormulaRange()[unit()] ?? {};
      const values = formulas.getArrayFormulaCellData()[unit()] ?? {};
      return Object.entries(areas).flatMap(([sheet, rows]) =>
        Object.entries(rows ?? {}).flatMap(([row, line]) =>
          Object.entries((line ?? {}) as Record<string, IRange>).flatMap(([column, area]): FilledTable[] => {
            const called = calledIn(formulaAt(sheet, Number(row), Number(column)) ?? "", names);
            if (called === undefined || !area) return [];
            const cells: Cell[][] = [];
            for (let at = area.startRow; at <= area.endRow; at += 1) {
              const filled: Cell[] = [];
              for (let across = area.startColumn; across <= area.endColumn; across += 1)
                filled.push(cellFromData(values[sheet]?.[at]?.[across]));
              cells.push(filled);
            }
            const name = opened?.workbook.sheets[sheetPlace(sheet)]?.name ?? "";
            return [
              {
                functionName: called,
                sheet: name,
                address: placeText({ row: Number(row), column: Number(column) }),
                cells,
              },
            ];
          }),
        ),
      );
    },
    setDark: (isDark) => api.toggleDarkMode(isDark),
    dispose: () => univer.dispose(),
  };
}

/** `'Cases'!` without the quotes that only other names need. */
const bareOr = (quoted: string): string => quoted.replace(/^'([A-Za-z_]\w*)'!$/, "$1!");

const areaOf = ({ startRow, startColumn, endRow, endColumn }: IRange): Area => ({
  top: startRow,
  left: startColumn,
  bottom: endRow,
  right: endColumn,
});

type Filled = Record<number, Record<number, IRange> | undefined> | null | undefined;

/** An area as a formula names it: cells, whole columns, or what the array at a cell fills. */
function areaNamed(text: string, filled: Filled): Area | undefined {
  const at = text.endsWith("#") ? readPlace(text.slice(0, -1)) : undefined;
  const array = at && filled?.[at.row]?.[at.column];
  if (array) return areaOf(array);
  const [, from, to] = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i.exec(text) ?? [];
  if (from === undefined || to === undefined) return readArea(text);
  return { top: 0, left: columnNumber(from), bottom: lastRow - 1, right: columnNumber(to) };
}

const unitAt = (count: number): string => `workbook${count}`;

const bySheet = <T>(
  { spills }: ShownWorkbook,
  pick: (spill: ShownWorkbook["spills"][string]) => T,
): Record<string, T> => Object.fromEntries(Object.entries(spills).map(([id, spill]) => [id, pick(spill)]));

/** The first of these functions that a formula calls. */
function calledIn(formula: string, names: ReadonlySet<string>): string | undefined {
  const calls = formula.matchAll(/FOOT\.([A-Z]+)\(/g);
  for (const [, name = ""] of calls) if (names.has(name)) return name;
  return undefined;
}
