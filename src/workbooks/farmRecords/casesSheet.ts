import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { rowCell } from "../writing/references.ts";
import { farmCases, type TypedCase } from "./farmTables.ts";
import { firstRecord, headingRow, type PlacedRecords, sheetNames } from "./placedRecords.ts";

type Key = Parameters<PlacedRecords["besideCases"]["range"]>[0];

function workedColumns({ cases, besideCases }: PlacedRecords): Readonly<Record<Key, GridColumn<Key>>> {
  const typed = (key: "treated" | "lesion", index: number): string =>
    rowCell({ row: cases.rows.top + index, column: cases.column(key).left });
  const whole =
    (formula: string): Holds<Key> =>
    ({ place }) =>
      place === 0 ? { formula } : null;
  return {
    clear: {
      heading: "Clear for food from",
      width: 13,
      look: "workedDate",
      // One formula for the column: a blank single cell reaches some spreadsheets' functions as 0, and forgotten days
      // must never become 0 days. Within a column a blank stays blank.
      holds: whole("FOOT.CLEARDATE(Cases[Treated],Cases[Withdrawal days])"),
    },
    lookAgain: {
      heading: "Look again on",
      width: 13,
      look: "workedDate",
      holds: ({ place }) => {
        const treated = typed("treated", place);
        return { formula: `IF(${treated}="","",FOOT.RECHECKDUE(${treated},look_again_after))` };
      },
    },
    lookState: {
      heading: "Second look",
      width: 16,
      look: "worked",
      // One formula for the column too: a later treatment in another row answers an earlier look.
      holds: whole(
        `FOOT.RECHECKSTATE(${besideCases.range("lookAgain")},Cases[Looked again],as_of,Cases[Tag],Cases[Treated])`,
      ),
    },
    lesion: {
      heading: "Lesion, usual name",
      width: 32,
      look: "worked",
      holds: ({ place }) => {
        const lesion = typed("lesion", place);
        return { formula: `IF(${lesion}="","",FOOT.LESIONNAME(${lesion}))` };
      },
    },
  };
}

/** The case records as typed, with the dates and states that follow from each row beside it. */
export const casesSheet = (records: readonly TypedCase[], placed: PlacedRecords): SheetPlan => ({
  name: sheetNames.cases,
  write(sheet) {
    sheet.title("Cases");
    sheet.put({ row: 1, column: 0 }, "Typed in on the left; the pale green columns are worked out.", "note");
    sheet.rowHeight(headingRow, 32);
    writeTable(sheet, farmCases, placed.cases, records, { widths: true, striped: true });
    writeGrid(sheet, placed.besideCases, workedColumns(placed));
    sheet.freezeAt({ row: firstRecord, column: farmCases.placeOf("tag") + 1 });
    sheet.print({ sideways: true, repeat: [headingRow, headingRow], across: 2, repeatColumns: 3 });
  },
});
