import type { IWorkbookData } from "@univerjs/core";
import { LifecycleService, LifecycleStages } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { ILayoutService } from "@univerjs/preset-sheets-core";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import type { Clock } from "../../../hosts/localClock.ts";
import { placeText } from "../../../workbook/address.ts";
import type { Engine } from "../../../workbook/engine.ts";
import { quoteSheet } from "../../../workbook/formula/structured.ts";
import { surroundingsOf } from "../../../workbook/formula/surroundingsOf.ts";
import { writeEdits } from "../../../workbook/saving/writeEdits.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { sheetWords } from "../sheetWords.ts";
import { bookRules } from "./bookRules.ts";
import { type Box, cellBox, isInSight, type ShownCell } from "./cellBox.ts";
import { cellNamed } from "./cellNamed.ts";
import { cellWords } from "./cellWords.ts";
import { editsIn } from "./editsIn.ts";
import { type CellExplained, explainCell } from "./explainCell.ts";
import { fillArrays } from "./fillArrays.ts";
import { type FilledTable, filledTables } from "./filledTables.ts";
import { followPlace } from "./followPlace.ts";
import { formulasAsTyped } from "./formulasAsTyped.ts";
import { freezeToFit } from "./freezeToFit.ts";
import { gridBook } from "./gridBook.ts";
import type { GridEvents } from "./gridEvents.ts";
import { showHashes } from "./hashes.ts";
import { heard } from "./heard.ts";
import { isTypedInto } from "./isTypedInto.ts";
import { keepInView } from "./keepInView.ts";
import { keysOnScreen } from "./keysOnScreen.ts";
import { type Leap, leapFrom } from "./leapFrom.ts";
import { listenToGrid } from "./listenToGrid.ts";
import { nextSheet } from "./nextSheet.ts";
import { type SheetCharts, sheetCharts } from "./sheetCharts.ts";
import { type PrintedSheet, sheetToPrint } from "./sheetToPrint.ts";
import { shownWorkbook } from "./shownWorkbook.ts";
import { startUniver } from "./startUniver.ts";
import { touchTheSheet } from "./touchTheSheet.ts";
import { typeInBar } from "./typeInBar.ts";
import { watchTyping } from "./watchTyping.ts";

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
  /** Opens the selected cell for typing; where there are keys on the screen, they come if a person has just asked for it. */
  readonly type: () => void;
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
  /** Takes back what was done last, or does it again. */
  readonly undo: () => void;
  readonly redo: () => void;
  /** Selects another cell of the sheet in view; false where a cell is being typed into. */
  readonly leap: (to: Leap) => boolean;
  readonly shownAt: (cell: string) => string;
  readonly write: (cell: string, formula: string) => void;
  /** The formula of the selected cell in words, or that which fills it; undefined where there is none. */
  readonly explained: () => CellExplained | undefined;
  readonly tables: (functionNames: ReadonlySet<string>) => readonly FilledTable[];
  /** The charts of the sheet in view, and where they are in the window. */
  readonly charts: Pick<SheetCharts, "shown" | "places">;
  readonly toPrint: () => PrintedSheet | undefined;
  readonly setDark: (dark: boolean) => void;
  readonly dispose: () => void;
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
  const book = gridBook(startUniver(container, catalogue, clock, ears, dark), ears);
  showHashes();
  const { api, injector } = book;
  const rules = bookRules(book);
  const typed = formulasAsTyped(book);
  const names = catalogue.map(({ name }) => name);
  const words = cellWords(book, rules, names);
  const charts = sheetCharts(book);
  watchTyping(book, rules, typed, events);

  const tell = (): void => {
    const selected = words.selected();
    if (selected) events.onSelected(selected);
  };
  const selectedBox = (): ShownCell | undefined => {
    const at = book.selected();
    return at && cellBox(injector, book.unit(), at.row, at.column);
  };
  let tall = 0;
  // What else moves the sheet when a cell is selected comes before.
  const showSelected = (): void => {
    setTimeout(() => {
      const shown = selectedBox();
      if (shown) keepInView(shown);
      tall = shown?.pane.height ?? 0;
      events.onMoved();
    });
  };
  // What is said above the sheet may take of its height: whoever types goes on seeing the cell.
  const stayInSight = (): void => {
    const shown = selectedBox();
    const before = tall;
    tall = shown?.pane.height ?? 0;
    if (shown && tall < before && isInSight({ ...shown, pane: { ...shown.pane, height: before } })) keepInView(shown);
  };
  const rangeAt = (reference: string) => {
    const { sheet, row, column } = cellNamed(book, reference);
    const found = api.getActiveWorkbook()?.getSheetBySheetId(sheet);
    if (!found) throw new Error(sheetWords.badCell);
    return { found, range: found.getRange(row, column) };
  };
  const go = (place: string): void => {
    const { found, range } = rangeAt(place);
    found.activate();
    range.activate();
    showSelected();
    tell();
  };
  const selectFirstCell = (): void => selectFirst(api);
  const freeze = (): void => freezeToFit(book, container);
  const place = followPlace(book, () => {
    stayInSight();
    events.onMoved();
  });
  const fitting = new ResizeObserver(freeze);
  fitting.observe(container);
  const scroll = (right: number, down: number) => {
    const shown = selectedBox();
    const before = shown?.scrolled();
    shown?.scroll(right, down);
    const after = shown?.scrolled();
    return { right: before?.right !== after?.right, down: before?.down !== after?.down };
  };
  const isOpen = (): boolean => isTypedInto(injector);
  const screenKeys = keysOnScreen(container, isOpen);
  const type = (): void => {
    screenKeys.come();
    api.getActiveWorkbook()?.startEditing();
  };
  const selection = (): string => {
    const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
    return range ? `${quoteSheet(book.sheetName(range.getSheetId()))}${range.getA1Notation()}` : "";
  };
  const stopBar = typeInBar(container, injector);
  const stopTouch = touchTheSheet(container, scroll, {
    selected: selection,
    isTypedInto: isOpen,
    onTwice: type,
  });

  return {
    async show(workbook, mayClose) {
      if (workbook.dateSystem === 1904) throw new Error(sheetWords.from1904);
      const around = surroundingsOf(workbook, engine);
      const shown = shownWorkbook(book.nextUnit(), workbook, around);
      if (!(await mayClose())) return undefined;
      const isFirst = book.opened() === undefined;
      if (!isFirst) api.disposeUnit(book.unit());
      for (const part of [words, typed, ears, rules, charts]) part.start();
      book.put({ workbook, around, shown: { ...shown, data: structuredClone(shown.data) } });
      api.createWorkbook(shown.data);
      if (isFirst) listenToGrid(book, rules, words, { tell, showSelected, selectFirstCell, go, freeze }, events);
      // In this turn the spreadsheet still puts away what the arrays of the workbook before filled, and all others with it.
      await new Promise((resolve) => setTimeout(resolve));
      if (book.unit() !== shown.data.id) return shown.left;
      fillArrays(book, shown);
      freeze();
      const life = injector.get(LifecycleService);
      // From this stage on the spreadsheet has its keys and editors.
      await life.onStage(LifecycleStages.Rendered);
      // By itself it waits three seconds more until it hears a corner that is dragged, and a person who is quicker is not heard.
      life.stage = LifecycleStages.Steady;
      place.start();
      selectFirstCell();
      tell();
      return shown.left;
    },
    isEmpty: () => book.opened() === undefined,
    focus: () => injector.get(ILayoutService).focus(),
    type,
    async endTyping() {
      await api.getActiveWorkbook()?.endEditingAsync(true);
    },
    file() {
      const data = api.getActiveWorkbook()?.save() as IWorkbookData;
      const opened = book.opened();
      if (!opened) throw new Error("no workbook is open");
      const formula = (sheet: string, row: number, column: number) => book.formulaAt({ sheet, row, column });
      return writeEdits(opened.workbook, editsIn(opened.shown.data, { data, formula, stored: typed.stored }));
    },
    selection,
    selectedBox() {
      const shown = selectedBox();
      return shown && isInSight(shown) ? shown.cell : undefined;
    },
    choose(choice) {
      const isNumber = choice.trim() !== "" && Number.isFinite(Number(choice));
      const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
      range?.setValue(isNumber ? Number(choice) : choice);
    },
    go,
    turn(further) {
      nextSheet(api, further)?.activate();
      injector.get(ILayoutService).focus();
    },
    leap(to) {
      const at = book.selected();
      const sheet = api.getActiveWorkbook()?.getActiveSheet();
      if (!at || !sheet || isOpen()) return false;
      go(quoteSheet(book.sheetName(at.sheet)) + placeText(leapFrom(at, to, sheet)));
      return true;
    },
    undo: () => void api.undo(),
    redo: () => void api.redo(),
    shownAt: (cell) => String(rangeAt(cell).range.getDisplayValue() ?? ""),
    write(cell, formula) {
      const { found, range } = rangeAt(cell);
      found.activate();
      range.activate();
      range.setValue({ f: formula });
    },
    explained() {
      const at = book.selected();
      return at && explainCell(book, catalogue, at, words.messageAt);
    },
    charts,
    toPrint: () => sheetToPrint(book, charts.placed()),
    tables: (names) => filledTables(book, names),
    setDark: (isDark) => api.toggleDarkMode(isDark),
    dispose() {
      fitting.disconnect();
      stopTouch();
      stopBar();
      screenKeys.stop();
      place.stop();
      book.univer.dispose();
    },
  };
}

/** Selects the first cell of the sheet in view where none is selected. */
function selectFirst(api: FUniver): void {
  const sheet = api.getActiveWorkbook()?.getActiveSheet();
  if (sheet && !sheet.getActiveRange()) sheet.getRange(0, 0).activate();
}
