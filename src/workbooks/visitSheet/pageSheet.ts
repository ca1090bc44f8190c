import { cautions } from "../../../functions/cautions.ts";
import { reportable } from "../../core/treatment/carePlans/reportable.ts";
import type { Place } from "../../workbook/address.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { agreed, type otherMedicines } from "../tables/visitTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { formulas, type GridColumn, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { cellOn, fixedCell } from "../writing/references.ts";
import type { Content, SheetAuthor } from "../writing/sheetAuthor.ts";
import {
  batch,
  flockRow,
  groupAnswers,
  othersAnswers,
  pageFound,
  pageGroups,
  pageMedicines,
  placedAgreed,
  placedFound,
  placedGroups,
  placedOthers,
  planRow,
  sheetNames,
  wordsRow,
} from "./placedVisit.ts";
import type { VisitContent } from "./visitContent.ts";

const { right } = pageGroups.area;
const careRow = placedAgreed.area.bottom + 2;

const care = [cautions.carePlan.words, cautions.dosing.words, cautions.footbath.words];
/** Letters that fit in a line across the page. */
const lineLength = 112;
const heightOf = (words: string): number => Math.ceil(words.length / lineLength) * 15 + 3;

const percent = (share: string): string => `ROUND(100*${share},1)&" %"`;
const shown = (cell: string): string => `IF(LEN(${cell})=0,"",${cell})`;
/** What failed on another sheet says there what to mend; on paper it is said in words. */
const answered = (cell: string): string => `IF(ISERROR(${cell}),"not worked out",${shown(cell)})`;

/** The page that stays with the farm: what was looked at, what was found, what to do, and what was agreed. */
export const pageSheet = ({ agreed: actions }: VisitContent): SheetPlan => ({
  name: sheetNames.page,
  write(sheet) {
    sheet.widths(40, 12, 13, 10, 12, 20);
    sheet.title("Foot health visit");
    sayWhenMissing(sheet, { row: 0, column: 2 });
    sheet.put({ row: 1, column: 0 }, { formula: shown("farm_name") }, "subtitle");
    sheet.put({ row: 2, column: 0 }, { formula: shown("visit_date") }, "workedDate");
    sheet.put({ row: 2, column: 1 }, { formula: shown("adviser") }, "worked");
    writeGroups(sheet);
    writeFound(sheet);
    writeWords(sheet);
    const { area } = placedAgreed;
    sheet.put({ row: area.top - 1, column: 0 }, "What was agreed", "question");
    writeTable(sheet, agreed, placedAgreed, actions);
    care.forEach((words, step) => {
      const row = careRow + step;
      across(sheet, { row, column: 0 }, words, heightOf(words));
      sheet.dress({ top: row, left: 0, bottom: row, right }, "care");
    });
    sheet.protect();
    sheet.print({ upTo: { row: careRow + care.length - 1, column: right }, onOnePage: true });
  },
});

/** Words that run over all columns from one to the last. */
function across(sheet: SheetAuthor, { row, column }: Place, content: Content, height: number): void {
  const area = { top: row, left: column, bottom: row, right };
  sheet.dress(area, "words");
  sheet.put({ row, column }, content);
  sheet.merge(area);
  sheet.rowHeight(row, height);
}

type GroupKey = Parameters<typeof pageGroups.range>[0];

/** The row of the sheet Visit that a line is about: the whole flock first. */
const visitRow = (index: number): number => (index === 0 ? flockRow : placedGroups.area.top + index);
const typed = (key: Parameters<typeof placedGroups.range>[0], index: number): string =>
  cellOn(sheetNames.visit, { row: visitRow(index), column: placedGroups.column(key).left });
const answer = (key: Parameters<typeof groupAnswers.range>[0], index: number): string =>
  cellOn(sheetNames.visit, { row: visitRow(index), column: groupAnswers.column(key).left });

const groupColumns: Readonly<Record<GroupKey, GridColumn<GroupKey>>> = {
  group: formulas("Group", "worked", ({ place }) => shown(typed("group", place))),
  sheep: formulas("Sheep", "workedCount", ({ place }) => shown(typed("sheep", place))),
  lookedAt: formulas("Looked at", "workedCount", ({ place }) => shown(typed("lookedAt", place))),
  lame: formulas("Lame", "workedCount", ({ place }) => shown(typed("lame", place))),
  share: formulas("Share lame", "workedPercent", ({ place }) => answered(answer("share", place))),
  range: formulas("Range", "centred", ({ place }) => {
    const [low, high] = [answer("low", place), answer("high", place)];
    return `IF(ISNUMBER(${low}),${percent(low)}&" to "&${percent(high)},"")`;
  }),
};

function writeGroups(sheet: SheetAuthor): void {
  const { area, rows, cell } = pageGroups;
  sheet.put({ row: area.top - 1, column: 0 }, "What was looked at", "question");
  writeGrid(sheet, pageGroups, groupColumns);
  sheet.put({ row: rows.top, column: 0 }, null, "strong");
  sheet.emphasize(rows, [`LEN(${cell("group")})>0`, "line"]);
  const [estimate, find, against] = (["toEstimate", "toFind", "against"] as const).map((key) => answer(key, 0));
  const words = [
    `IF(ISERROR(${against}),"",IF(LEN(${against})=0,"","Target "&${percent("target")}&": "&${against}&"."))`,
    `IF(ISNUMBER(${estimate}),"To know the share within "&${percent("margin")}&": look at "&${estimate}&". ","")&IF(ISNUMBER(${find}),"To find lameness of "&${percent("design_share")}&": look at "&${find}&".","")`,
  ];
  words.forEach((formula, step) => {
    across(sheet, { row: area.bottom + 1 + step, column: 0 }, { formula }, 16);
  });
}

function writeFound(sheet: SheetAuthor): void {
  const { area, rows, cell } = pageFound;
  sheet.put({ row: area.top - 2, column: 0 }, "What was found, and what to do first", "question");
  // The first step of most plans: said once, and left out of those below.
  const firstOfAll = { row: area.top - 1, column: 0 };
  const said = fixedCell(firstOfAll);
  across(sheet, firstOfAll, { formula: `IF(COUNTA(VisitFound[Lesion])=0,"","${reportable.what}")` }, 30);
  const line = (row: number, column = 2): string => cellOn(sheetNames.planLines, { row, column });
  const typedFound = (key: Parameters<typeof placedFound.range>[0], index: number): string =>
    cellOn(sheetNames.visit, { row: placedFound.rows.top + index, column: placedFound.column(key).left });
  writeGrid(sheet, pageFound, {
    lesion: formulas("Lesion", "words", ({ place }) => line(planRow(place))),
    cases: formulas("Cases", "wordsCentre", ({ place }) => shown(typedFound("cases", place))),
    steps: { heading: "First steps; all of them stand on the sheet Care plan", look: "words" },
  });
  const steps = { top: area.top, left: area.right, bottom: area.top, right };
  sheet.dress(steps, "workedHeading");
  sheet.merge(steps);
  for (let row = rows.top; row <= rows.bottom; row++) {
    const index = row - rows.top;
    const plan = planRow(index);
    const [one, two, three] = [2, 3, 4].map((step) => line(plan + step));
    // Joined to nothing, what a function gave is found equal to a typed text in every spreadsheet.
    const steps = `IF(${one}&""=${said},${two}&" "&${three},IF(LEN(${one})=0,${line(plan, 3)},${one}&" "&${two}))`;
    across(
      sheet,
      { row, column: area.right },
      { formula: `IF(LEN(${typedFound("lesion", index)})=0,"",${steps})` },
      46,
    );
  }
  sheet.emphasize({ ...rows, right }, [`LEN(${cell("lesion")})>0`, "line"]);
}

type MedicineKey = Parameters<typeof pageMedicines.range>[0];

/** What is typed of a medicine: of the first in fields of its own, of the others in their table. */
function typedOf(index: number): Readonly<Record<"name" | "route" | "days" | "clear", string>> {
  if (index === 0)
    return {
      name: "medicine_name",
      route: "medicine_route",
      days: "medicine_withdrawal",
      clear: cellOn(sheetNames.doses, batch.at("clear", 0)),
    };
  const typed = (key: KeyOf<typeof otherMedicines>): string => {
    const { top, left: column } = placedOthers.column(key);
    return cellOn(sheetNames.doses, { row: top + index - 1, column });
  };
  return {
    name: typed("medicine"),
    route: typed("route"),
    days: typed("withdrawalDays"),
    clear: cellOn(sheetNames.doses, othersAnswers.at("clear", index - 1)),
  };
}

const medicineColumns: Readonly<Record<MedicineKey, GridColumn<MedicineKey>>> = {
  medicine: formulas("Medicine", "worked", ({ place }) => {
    const { name } = typedOf(place);
    const unnamed = place === 0 ? 'IF(ISNUMBER(dose_total),"medicine without a name","")' : '""';
    return `IF(LEN(${name})=0,${unnamed},${name})`;
  }),
  days: formulas("Withdrawal days, meat", "workedCount", ({ place, cell }) => {
    const { days } = typedOf(place);
    return `IF(LEN(${cell("medicine")})=0,"",IF(LEN(${days})=0,"NOT TYPED",${days}))`;
  }),
  clear: formulas("Clear for food from", "workedDate", ({ place, cell }) => {
    const { clear } = typedOf(place);
    const unknown = `IF(ISNUMBER(${cell("days")}),"HOLD: day?","HOLD, ask vet")`;
    return `IF(LEN(${cell("medicine")})=0,"",IF(ISNUMBER(${clear}),${clear},${unknown}))`;
  }),
  how: formulas("Given how", "worked", ({ place, cell }) => {
    const { route } = typedOf(place);
    return `IF(LEN(${cell("medicine")})=0,"",IF(LEN(${route})=0,"not typed",${route}))`;
  }),
};

function writeWords(sheet: SheetAuthor): void {
  const { area, rows, cell } = pageMedicines;
  sheet.put({ row: wordsRow, column: 0 }, "Medicine, last given on the day of the visit, and footbath", "question");
  const doses = [
    'IF(ISNUMBER(dose_total),COUNT(Weighed[Weight kg])&" sheep weighed, "&MIN(Weighed[Weight kg])&" to "&MAX(Weighed[Weight kg])&" kg; "&mg_per_kg&" mg per kg at "&mg_per_ml&" mg per ml.",IF(ISERROR(dose_total),"","No dose was worked out."))',
    `IF(ISNUMBER(dose_total),"In all "&ROUND(dose_total,1)&" ml with a spare of "&${percent("spare")}&IF(ISNUMBER(dose_bottles),"; bottles: "&dose_bottles,"")&".",IF(ISERROR(dose_total),"The ml in all are not worked out: see the sheet Doses.",""))`,
    'IF(ISNUMBER(dose_total),"The largest dose is "&dose_largest&" ml"&IF(LEN(sites_least)=0,"",", over "&sites_least&" sites or more")&".","")',
  ];
  const bath = [
    'IF(ISNUMBER(bath_product),"Footbath of "&ROUND(bath_litres,1)&" litres: "&bath_percent&" % of "&bath_kind&".","No footbath was worked out.")',
    'IF(ISNUMBER(bath_product),IF(OR(bath_kind="formalin",bath_kind="liquid"),ROUND(bath_product,2)&" litres of it in "&ROUND(bath_water,2)&" litres of water.",ROUND(bath_product,2)&" kg of it, filled up to "&ROUND(bath_water,2)&" litres."),"")',
  ];
  doses.forEach((formula, step) => {
    across(sheet, { row: wordsRow + 1 + step, column: 0 }, { formula }, 16);
  });
  bath.forEach((formula, step) => {
    across(sheet, { row: area.bottom + 1 + step, column: 0 }, { formula }, 16);
  });
  writeGrid(sheet, pageMedicines, medicineColumns);
  sheet.rowHeight(area.top, 48);
  for (let row = area.top; row <= area.bottom; row++) {
    const how = { top: row, left: area.right, bottom: row, right };
    sheet.dress(how, row === area.top ? "workedHeading" : "worked");
    sheet.merge(how);
  }
  sheet.emphasize(
    { ...rows, right },
    [`LEFT(${cell("clear")},4)="HOLD"`, "strong"],
    [`LEN(${cell("medicine")})>0`, "line"],
  );
}
