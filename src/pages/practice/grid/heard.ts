import type { Listener } from "../../../hosts/headless/bridge.ts";
import { placeKey } from "../../../workbook/engine.ts";
import type { Format } from "../../../writing/format.ts";

/** How a function wants its answer shown. */
interface Shown {
  readonly formats: readonly Format[];
  readonly headings: boolean;
}

/** An answer that arrived, by its cell. */
export interface Answered {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  readonly shown: Shown;
}

/** What the functions said of the cells they were last worked out in. */
export interface Heard extends Listener {
  readonly message: (sheetId: string, row: number, column: number) => string | undefined;
  /** Answers since this was last asked, by sheet and cell. */
  readonly takeShown: () => readonly Answered[];
  readonly forget: (sheetId: string, row: number, column: number) => void;
  readonly start: () => void;
}

/** Keeps what each call came to, since the embedded spreadsheet keeps values and error codes only. */
export function heard(): Heard {
  const messages = new Map<string, string>();
  const answers = new Map<string, Answered>();
  const key = (sheetId: string, row: number, column: number): string => `${sheetId} ${placeKey(row, column)}`;
  return {
    // Workbooks that count from 1904 are not opened here.
    dateSystem: () => 1900,
    refused({ sheetId, row, column }, message) {
      messages.set(key(sheetId, row, column), message);
    },
    answered({ sheetId, row, column }, { formats, headings }) {
      messages.delete(key(sheetId, row, column));
      answers.set(key(sheetId, row, column), { sheetId, row, column, shown: { formats, headings } });
    },
    message: (sheetId, row, column) => messages.get(key(sheetId, row, column)),
    takeShown() {
      const taken = [...answers.values()];
      answers.clear();
      return taken;
    },
    forget(sheetId, row, column) {
      messages.delete(key(sheetId, row, column));
    },
    start() {
      messages.clear();
      answers.clear();
    },
  };
}
