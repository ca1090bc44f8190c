import { days1904 } from "../cells/day.ts";
import { type Limits, usualLimits } from "./limits.ts";
import type { DefinedName, SheetRow, Table } from "./model.ts";
import { mainPart } from "./openWorkbook.ts";
import { partsOnDemand } from "./parts/partsOnDemand.ts";
import { readSheet } from "./parts/readSheet.ts";
import { readTable } from "./parts/readTable.ts";
import { readRelationships } from "./parts/relationships.ts";
import { readSharedStrings } from "./parts/sharedStrings.ts";
import { readWorkbookPart } from "./parts/workbookPart.ts";
import type { Packing } from "./zip/packing.ts";
import { refuseOtherFiles } from "./zip/refuseOtherFiles.ts";

/** A sheet that has not been read yet. */
export interface UnreadSheet {
  readonly name: string;
  readonly tables: readonly Table[];
  /** Reads its cells, as they were saved; nothing is worked out. */
  readonly rows: () => readonly SheetRow[];
}

/** A workbook of which only what is asked for is unpacked and read. */
export interface UnreadWorkbook {
  readonly sheets: readonly UnreadSheet[];
  readonly names: readonly DefinedName[];
  /** Days to add to a date's number to get its serial in the 1900 system. */
  readonly dayOffset: number;
}

/**
 * Looks into a workbook whose values are wanted and that is not to be changed: much quicker than opening it when it
 * holds more than is asked for.
 *
 * @param packing - what unpacks its parts, where it is not to be the library
 * @throws WorkbookProblem with one sentence that says why it cannot be read; also later, when a sheet is read
 */
export function lookInto(bytes: Uint8Array, limits: Limits = usualLimits, packing?: Packing): UnreadWorkbook {
  refuseOtherFiles(bytes);
  const parts = partsOnDemand(bytes, limits, packing);
  const main = mainPart(parts);
  const { sheets, names, date1904 } = readWorkbookPart(main, parts.text(main));
  const relationships = readRelationships(parts, main);
  const dayOffset = date1904 ? days1904 : 0;
  const sharedStrings = once(() => {
    const part = relationships.find(({ kind }) => kind === "sharedStrings")?.target;
    return part === undefined ? [] : readSharedStrings(part, parts.text(part));
  });
  return {
    names,
    dayOffset,
    sheets: sheets.flatMap(({ name, relationship }): UnreadSheet[] => {
      const link = relationships.find(({ id }) => id === relationship);
      if (link?.kind !== "worksheet") return [];
      const part = link.target;
      const tables = readRelationships(parts, part)
        .filter(({ kind }) => kind === "table")
        .map(({ target }) => readTable(target, parts.text(target)));
      const rows = once(
        () =>
          readSheet({
            part,
            text: parts.text(part),
            sharedStrings: sharedStrings(),
            isDynamic: () => false,
            shift: (formula) => formula,
            dayOffset,
          }).rows,
      );
      return [{ name, tables, rows }];
    }),
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
