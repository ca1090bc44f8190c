import type { ISetNumfmtMutationParams } from "@univerjs/preset-sheets-core";
import type { GridBook } from "./gridBook.ts";
import { showsDay } from "./showsDay.ts";

/**
 * A date that is typed below the others of its column is shown like them. Of its own the embedded spreadsheet looks at the
 * cell for a format, not at its column, and shows the date the way it was typed.
 *
 * @param put - the formats that cells are about to be given, changed in place
 */
export function datesLikeColumn({ api }: GridBook, { subUnitId, values, refMap }: ISetNumfmtMutationParams): void {
  const sheet = api.getActiveWorkbook()?.getWorkbook().getSheetBySheetId(subUnitId);
  for (const [id, given] of Object.entries(refMap)) {
    const patterns = (values[id]?.ranges ?? []).flatMap(({ startColumn, endColumn }) =>
      Array.from(
        { length: endColumn - startColumn + 1 },
        (_, at) => sheet?.getColumnStyle(startColumn + at)?.n?.pattern,
      ),
    );
    const [pattern] = patterns;
    if (pattern !== undefined && isDay(given.pattern) && isDay(pattern) && patterns.every((known) => known === pattern))
      given.pattern = pattern;
  }
}

/** A date without an hour, which would be lost with another format. */
const isDay = (pattern: string): boolean => showsDay(pattern) && !/h/i.test(pattern);
