import type { Area } from "../../../workbook/address.ts";
import { sheetWords } from "../sheetWords.ts";
import { type CellRule, cellRules, ruleFor } from "./cellRules.ts";
import type { CellAt, GridBook } from "./gridBook.ts";
import { type CellLink, type Link, linkAt, readLinks } from "./links.ts";
import { looksLikeDate } from "./looksLikeDate.ts";
import { sheetId, sheetPlace } from "./sheetId.ts";
import { isUnclear } from "./unclearDates.ts";

/** What the open workbook says of its cells, beside what they hold. */
export interface BookRules {
  /** What may be picked for a cell; undefined where the workbook offers nothing. */
  readonly choicesAt: (cell: CellAt) => readonly string[] | undefined;
  /** What the workbook wants in a cell, in a sentence. */
  readonly wantedAt: (cell: CellAt) => string | undefined;
  /** What is doubtful about a content that was typed, in a sentence. */
  readonly doubtIn: (value: unknown, cell: CellAt) => string | undefined;
  readonly linkIn: (cell: CellAt) => Link | undefined;
  /** Some cell holds something else: what cells offer to pick from may be another. */
  readonly lookAgain: () => void;
  /** Another workbook is open. */
  readonly start: () => void;
}

export function bookRules({ api, opened }: GridBook): BookRules {
  // Each sheet is read when it is first looked at.
  const rules = new Map<string, readonly CellRule[]>();
  const links = new Map<string, readonly CellLink[]>();
  // Asked for every cell that is drawn, and the same until some cell holds something else.
  const choicesOf = new Map<CellRule, readonly string[] | undefined>();

  const ruleAt = ({ sheet, row, column }: CellAt): CellRule | undefined => {
    const book = opened();
    if (!book) return undefined;
    const known = rules.get(sheet) ?? cellRules(book.workbook, sheetPlace(sheet));
    rules.set(sheet, known);
    return ruleFor(known, { row, column });
  };

  const filledIn = ({ sheet, area: { top, left, bottom, right } }: { sheet: number; area: Area }): string[] => {
    const found = api.getActiveWorkbook()?.getSheetBySheetId(sheetId(sheet));
    const shown = found?.getRange(top, left, bottom - top + 1, right - left + 1).getDisplayValues() ?? [];
    return shown.flat().filter((text) => text !== "");
  };

  const choicesAt = (cell: CellAt): readonly string[] | undefined => {
    const rule = ruleAt(cell);
    if (!rule?.choices) return undefined;
    if (!choicesOf.has(rule)) {
      const found = "area" in rule.choices ? filledIn(rule.choices) : rule.choices;
      choicesOf.set(rule, found.length > 0 ? found : undefined);
    }
    return choicesOf.get(rule);
  };

  return {
    choicesAt,
    wantedAt(cell) {
      const choices = choicesAt(cell);
      if (choices) return sheetWords.chooseOne(choices);
      const rule = ruleAt(cell);
      // What is wrong with an entry is no help before there is one.
      if (rule?.choices && "area" in rule.choices)
        return sheetWords.nothingToChoose(opened()?.workbook.sheets[rule.choices.sheet]?.name ?? "");
      return rule?.sentence;
    },
    doubtIn(value, cell) {
      if (value === undefined || value === null || value === "") return undefined;
      const text = String(value).trim();
      if (typeof value === "string" && (isUnclear(text) || looksLikeDate(text))) return sheetWords.noDate;
      const choices = choicesAt(cell);
      const isChoice = choices?.some((choice) => choice.trim().toLowerCase() === text.toLowerCase()) ?? true;
      return choices && !isChoice ? sheetWords.notChosen(text, choices) : undefined;
    },
    linkIn({ sheet, row, column }) {
      const book = opened();
      if (!book) return undefined;
      const known = links.get(sheet) ?? readLinks(book.workbook, sheetPlace(sheet));
      links.set(sheet, known);
      return linkAt(known, { row, column });
    },
    lookAgain: () => choicesOf.clear(),
    start() {
      rules.clear();
      links.clear();
      choicesOf.clear();
    },
  };
}
