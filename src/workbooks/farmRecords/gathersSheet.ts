import type { KeyOf } from "../tables/defineTable.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { type Holds, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { rowCell } from "../writing/references.ts";
import { farmGathers, type TypedGather } from "./farmTables.ts";
import { firstRecord, headingRow, type PlacedRecords, sheetNames } from "./placedRecords.ts";

type Key = Parameters<PlacedRecords["besideGathers"]["range"]>[0];

/** The gathers as typed, with the share of each beside it, and the latest ones again for the answers. */
export const gathersSheet = (
  records: readonly TypedGather[],
  { gathers, besideGathers }: PlacedRecords,
): SheetPlan => ({
  name: sheetNames.gathers,
  write(sheet) {
    sheet.title("Gathers");
    sheet.put({ row: 1, column: 0 }, "Typed in on the left; the pale green columns are worked out.", "note");
    sheet.rowHeight(headingRow, 32);
    writeTable(sheet, farmGathers, gathers, records, { widths: true, striped: true });
    const typed = (key: KeyOf<typeof farmGathers>, index: number): string =>
      rowCell({ row: gathers.rows.top + index, column: gathers.column(key).left });
    const latest =
      (key: KeyOf<typeof farmGathers>): Holds<Key> =>
      ({ place }) => {
        const date = typed("date", place);
        return { formula: `IF(${date}="","",IF(${date}>=latest_from,${typed(key, place)},""))` };
      };
    writeGrid(sheet, besideGathers, {
      share: {
        heading: "Share lame",
        width: 12,
        look: "workedShare",
        holds: ({ place }) => ({
          formula: `IF(${typed("seen", place)}="","",FOOT.FLOCKPREV(${typed("lame", place)},${typed("seen", place)}))`,
        }),
      },
      latestGroup: { heading: "Latest: group", width: 24, look: "worked", holds: latest("group") },
      latestLame: { heading: "Latest: lame", width: 10, look: "worked", holds: latest("lame") },
      latestSeen: { heading: "Latest: seen", width: 10, look: "worked", holds: latest("seen") },
    });
    sheet.freezeAt({ row: firstRecord, column: 0 });
    sheet.print({ sideways: true, repeat: [headingRow, headingRow] });
  },
});
