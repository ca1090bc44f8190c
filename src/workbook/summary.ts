import { type ErrorCode, isCellError } from "../cells/cell.ts";
import { placeText } from "./address.ts";
import type { Workbook } from "./workbook.ts";
import type { WorkedOut } from "./workOut.ts";

interface CellNote {
  readonly sheet: string;
  readonly address: string;
}

/** What a recalculation did, for a person to read. */
export interface Summary {
  readonly formulas: number;
  /** Formulas that were not asked for: the answers that the spreadsheet has saved stand. */
  readonly kept: number;
  /** Formulas that call each function, most first. */
  readonly calls: readonly { readonly name: string; readonly formulas: number }[];
  /** Cells that ended in an error; the message is there when a FOOT function refused. */
  readonly errors: readonly (CellNote & { readonly code: ErrorCode; readonly message?: string })[];
  /** Cells that keep the value they were saved with. */
  readonly left: readonly (CellNote & { readonly reason: string })[];
  /** What the file holds that was carried along without being looked into. */
  readonly untouched: readonly string[];
  readonly circular: boolean;
  readonly changedCells: number;
  readonly changedParts: readonly string[];
}

/** Counts and lists what became of each formula. */
export function summarize(
  workbook: Workbook,
  { sheets, left, kept, circular }: WorkedOut,
  saved: Pick<Summary, "changedCells" | "changedParts">,
): Summary {
  const nameOf = (sheet: number): string => workbook.sheets[sheet]?.name ?? "";
  const calls = new Map<string, number>();
  const errors: Summary["errors"][number][] = [];
  sheets.forEach((worked, sheet) => {
    for (const { cell, traits, answer } of worked) {
      for (const name of traits.calls) calls.set(name, (calls.get(name) ?? 0) + 1);
      if (!isCellError(answer.value)) continue;
      const message = answer.message === undefined ? {} : { message: answer.message };
      errors.push({ sheet: nameOf(sheet), address: placeText(cell), code: answer.value.error, ...message });
    }
  });
  return {
    formulas: sheets.reduce((sum, worked) => sum + worked.length, 0),
    kept,
    calls: [...calls]
      .map(([name, formulas]) => ({ name, formulas }))
      .sort((one, other) => other.formulas - one.formulas || (one.name < other.name ? -1 : 1)),
    errors,
    left: left.map((cell) => ({ sheet: nameOf(cell.sheet), address: placeText(cell), reason: cell.reason })),
    untouched: workbook.untouched,
    circular,
    changedCells: saved.changedCells,
    changedParts: saved.changedParts,
  };
}
