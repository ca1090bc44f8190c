import {
  CellAlertManagerService,
  HoverManagerService,
  IEditorBridgeService,
  SheetInterceptorService,
  SheetsSelectionsService,
} from "@univerjs/preset-sheets-core";
import { keepWhatIsTyped } from "../../../hosts/headless/insides/keepWhatIsTyped.ts";
import { withoutAlerts } from "../../../hosts/headless/insides/withoutAlerts.ts";
import type { BookRules } from "./bookRules.ts";
import type { CellWords } from "./cellWords.ts";
import { writeDatesOut } from "./datesInEditor.ts";
import { followSizes } from "./followSizes.ts";
import type { GridBook } from "./gridBook.ts";
import type { GridEvents } from "./gridEvents.ts";
import { markDoubts } from "./markDoubts.ts";
import { readTextsOnce } from "./readTextsOnce.ts";
import { showAsWanted } from "./showAsWanted.ts";
import { tellTypedFormula } from "./typedFormula.ts";
import { keepUnclearDates } from "./unclearDates.ts";

/** What is done with what happens in the sheet. */
export interface Doing {
  /** Says what is in the selected cell. */
  readonly tell: () => void;
  readonly showSelected: () => void;
  readonly selectFirstCell: () => void;
  readonly go: (place: string) => void;
  /** Freezes as many columns of the sheet in view as there is room for. */
  readonly freeze: () => void;
}

/** Listens to the embedded spreadsheet. Its services are there only once a first workbook is. */
export function listenToGrid(
  book: GridBook,
  rules: BookRules,
  words: CellWords,
  { tell, showSelected, selectFirstCell, go, freeze }: Doing,
  events: Pick<GridEvents, "onCalculating" | "onEditing" | "onMoved" | "onPointed" | "onTyping">,
): void {
  const { api, injector } = book;
  const edited = injector.get(SheetInterceptorService);
  writeDatesOut(edited);
  readTextsOnce(edited);
  markDoubts(edited, (value, { subUnitId, row, col }) => rules.doubtIn(value, { sheet: subUnitId, row, column: col }));
  keepUnclearDates(edited);
  const calculation = api.getFormula();
  calculation.calculationStart(() => events.onCalculating(true));
  calculation.calculationEnd(() => events.onCalculating(false));
  calculation.calculationResultApplied(() => {
    rules.lookAgain();
    showAsWanted(book);
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
  followSizes(injector, events.onMoved);
  api.addEvent(api.Event.CellClicked, ({ row, column, worksheet }) => {
    const link = rules.linkIn({ sheet: worksheet.getSheetId(), row, column });
    if (link && "place" in link) go(link.place);
  });
  tellTypedFormula(injector, events.onTyping);
  const editor = injector.get(IEditorBridgeService);
  editor.visible$.subscribe(({ visible }) => events.onEditing(visible));
  keepWhatIsTyped(editor);
  withoutAlerts(injector.get(CellAlertManagerService));
  injector.get(HoverManagerService).currentCell$.subscribe((hovered) => {
    if (!hovered) return events.onPointed(undefined);
    const { subUnitId, row, col } = hovered.location;
    return events.onPointed(words.pointedAt({ sheet: subUnitId, row, column: col }));
  });
  api.addEvent(api.Event.ActiveSheetChanged, () => {
    selectFirstCell();
    freeze();
    tell();
    showSelected();
  });
  api.addEvent(api.Event.SheetValueChanged, tell);
}
