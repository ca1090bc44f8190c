import { medicineUseFunction } from "../../../functions/medicines/medicineUse.ts";
import { medicines } from "../tables/settingsTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import { sheetNames } from "./bookSheets.ts";
import { ofMedicine, orSeeProblems } from "./formulas.ts";

const headings = 6;
const useRows = medicines.room + 3;
const use = placeList(sheetNames.medicine, medicineUseFunction, { row: headings, column: 0 });

// What is not said to be no antibiotic counts as one, so that a medicine that lacks its line is found and not left out.
const inYear = "(1-ISNUMBER(Cases[Treated])*((Cases[Treated]<year_from)+(Cases[Treated]>as_of)>0))";
const antibiotic = `(Cases[Medicine]<>"")*(${ofMedicine("antibiotic")}<>"no")*${inYear}`;
// A spray is in no ml: it cannot be added up with what is injected.
const counted = `${antibiotic}*(LEN(Cases[Dose ml])>0)`;
const withoutMl = `SUM(${antibiotic}*(LEN(Cases[Dose ml])=0))`;
const where = (column: string): string => `IF(${counted},${column},"")`;

/** How much medicine went into the flock. */
export const medicineSheet: SheetPlan = {
  name: sheetNames.medicine,
  write(sheet) {
    dressColumns(sheet, use);
    sheet.widths(34, 14, 14, 16, 14);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 4 }, "note");
    sheet.title("Medicine use");
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
      longest: useRows,
      formula: `IF(OR(LEN(breeding_sheep)=0,LEN(slaughter_lambs)=0),"type breeding sheep and lambs in Settings",${orSeeProblems(
        `FOOT.MEDICINEUSE(${where("Cases[Medicine]")},${where("Cases[Dose ml]")},${where(ofMedicine("mgPerMl"))},breeding_sheep,slaughter_lambs)`,
      )})`,
      strong: (cell) => `LEFT(${cell("product")},9)="all"`,
    });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({ upTo: { row: headings + useRows - 1, column: 4 }, onOnePage: true });
  },
};
