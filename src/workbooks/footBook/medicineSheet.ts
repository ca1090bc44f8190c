import { medicineUseFunction } from "../../../functions/medicines/medicineUse.ts";
import { medicines } from "../tables/settingsTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import { sheetNames } from "./bookSheets.ts";

const headings = 6;
const useRows = medicines.room + 3;
const use = placeList(sheetNames.medicine, medicineUseFunction, { row: headings, column: 0 });

const used =
  'FOOT.MEDICINEUSE(used_medicine,used_ml,used_strength,breeding_sheep,slaughter_lambs,IF(LEN(used_animals)>0,group_treated,""),used_animals)';
const withoutMl = "SUM(is_antibiotic-use_counted)";

/** How much medicine went into the flock. */
export const medicineSheet: SheetPlan = {
  name: sheetNames.medicine,
  write(sheet) {
    dressColumns(sheet, use);
    // Of so many mg no part is of interest.
    const mg = use.column("mg active", 1).left;
    sheet.columnLook(mg, mg, "workedCount");
    sheet.widths(34, 14, 14, 16, 14);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 4 }, "note");
    sheet.title("Medicine use");
    sayWhenMissing(sheet, { row: 0, column: 1 });
    sheet.put({ row: 1, column: 0 }, "Treated from", "label");
    sheet.put({ row: 1, column: 1 }, { formula: "year_from" }, "workedDate");
    sheet.put({ row: 1, column: 2 }, "up to", "label");
    sheet.put({ row: 1, column: 3 }, { formula: "as_of" }, "workedDate");
    sheet.put(
      { row: 2, column: 0 },
      "Antibiotics only: a medicine that says no in the settings is left out. mg/PCU sets use against flock weight.",
    );
    sheet.put(
      { row: 3, column: 0 },
      {
        formula: `IF(${withoutMl}=0,"",${withoutMl}&" treatments with an antibiotic have no ml, such as sprays, and are in no total here.")`,
        array: true,
      },
      "note",
    );
    writeList(sheet, use, {
      question: "Antibiotics",
      rows: useRows - 2,
      room: useRows,
      unless: ["OR(LEN(breeding_sheep)=0,LEN(slaughter_lambs)=0)", "type breeding sheep and lambs in Settings"],
      formula: used,
      strong: (cell) => `LEFT(${cell("product")},9)="all"`,
    });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({ upTo: { row: headings + useRows - 1, column: 4 }, onOnePage: true });
  },
};
