import type { ICellData } from "@univerjs/core";
import {
  type ISetNumfmtMutationParams,
  SetNumfmtMutation,
  SheetPasteShortKeyCommandName,
} from "@univerjs/preset-sheets-core";
import { placeText } from "../../../workbook/address.ts";
import { quoteSheet } from "../../../workbook/formula/structured.ts";
import type { BookRules } from "./bookRules.ts";
import { datesLikeColumn } from "./datesLikeColumn.ts";
import type { FormulasAsTyped } from "./formulasAsTyped.ts";
import type { CellAt, GridBook } from "./gridBook.ts";
import type { Doubt, GridEvents } from "./gridEvents.ts";
import { isRefused } from "./refusedCommands.ts";
import { markUnclearDates, type Pasted } from "./unclearDates.ts";
import { widenForDates } from "./widenForDates.ts";

/** What the embedded spreadsheet is about to put into cells, by row and column. */
interface Put {
  readonly subUnitId: string;
  readonly cellValue?: Readonly<Record<string, Readonly<Record<string, ICellData | null>>>>;
}

/** Looks at all that a person puts into cells before it is there, and refuses what would move cells about. */
export function watchTyping(
  book: GridBook,
  rules: BookRules,
  typed: FormulasAsTyped,
  { onChanged, onDoubts, onRefused }: Pick<GridEvents, "onChanged" | "onDoubts" | "onRefused">,
): void {
  book.commands.beforeCommandExecuted(({ id, params }, options) => {
    if (isRefused(id)) {
      onRefused();
      throw new Error("cells stay where they are");
    }
    if (id === SheetPasteShortKeyCommandName) markUnclearDates(params as Pasted);
    if (id === SetNumfmtMutation.id) datesLikeColumn(book, params as ISetNumfmtMutationParams);
    // What is cut and pasted is moved, not put.
    if (id === "sheet.mutation.move-range") {
      rules.lookAgain();
      onChanged();
    }
    if (id !== "sheet.mutation.set-range-values" || options?.fromFormula || options?.onlyLocal) return;
    const put = cellsPut(params as Put);
    const contents = put.filter(({ content }) => content && ("v" in content || "f" in content));
    for (const { at, content } of contents) if (content) typed.read(content, at);
    if (!put.some(({ content }) => content === null || "v" in content || "f" in content || "p" in content)) return;
    const doubts = contents.flatMap(({ at, content }): Doubt[] => {
      const isPlain = content && "v" in content && !content.f && !content.si;
      const sentence = isPlain ? rules.doubtIn(content.v, at) : undefined;
      return sentence === undefined ? [] : [{ address: addressOf(book, at), sentence }];
    });
    rules.lookAgain();
    onChanged();
    onDoubts(doubts);
    // Once the cells hold it, with its format.
    setTimeout(() => {
      widenForDates(
        book,
        contents.map(({ at }) => at),
      );
    });
  });
}

const cellsPut = ({ subUnitId, cellValue = {} }: Put): readonly { at: CellAt; content: ICellData | null }[] =>
  Object.entries(cellValue).flatMap(([row, line]) =>
    Object.entries(line).map(([column, content]) => ({
      at: { sheet: subUnitId, row: Number(row), column: Number(column) },
      content,
    })),
  );

/** `Cases!C4`; the name of a sheet has quotes only where it needs them. */
const addressOf = ({ sheetName }: GridBook, at: CellAt): string =>
  quoteSheet(sheetName(at.sheet)).replace(/^'([A-Za-z_]\w*)'!$/, "$1!") + placeText(at);
