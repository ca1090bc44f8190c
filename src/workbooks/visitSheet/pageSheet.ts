import { cautions } from "../../../functions/cautions.ts";
import type { Place } from "../../workbook/address.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { agreed, otherMedicines } from "../tables/visitTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { type GridColumn, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { cellOn } from "../writing/references.ts";
import type { Content, SheetAuthor } from "../writing/sheetAuthor.ts";
import {
  batch,
  bathRow,
  flockRow,
  groupAnswers,
  othersAnswers,
  pageFound,
  pageGroups,
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
    sheet.widths(40, 11, 13, 10, 12, 20);
    sheet.title("Foot health visit");
    sayWhenMissing(sheet, { row: 0, column: 2 });
    sheet.put({ row: 1, column: 0 }, { formula: shown("farm_name") }, "subtitle");
    sheet.put({ row: 1, column: 2 }, { formula: shown("visit_date") }, "workedDate");
    sheet.put({ row: 1, column: 4 }, { formula: shown("adviser") }, "worked");
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
const visitRow = (place: number): number => (place === 0 ? flockRow : placedGroups.area.top + place);
const typed = (key: Parameters<typeof placedGroups.range>[0], place: number): string =>
  cellOn(sheetNames.visit, { row: visitRow(place), column: placedGroups.column(key).left });
const answer = (key: Parameters<typeof groupAnswers.range>[0], place: number): string =>
  cellOn(sheetNames.visit, { row: visitRow(place), column: groupAnswers.column(key).left });

const groupColumns: Readonly<Record<GroupKey, GridColumn<GroupKey>>> = {
  group: { heading: "Group", look: "worked", holds: ({ place }) => ({ formula: shown(typed("group", place)) }) },
  sheep: { heading: "Sheep", look: "workedCount", holds: ({ place }) => ({ formula: shown(typed("sheep", place)) }) },
  lookedAt: {
    heading: "Looked at",
    look: "workedCount",
    holds: ({ place }) => ({ formula: shown(typed("lookedAt", place)) }),
  },
  lame: { heading: "Lame", look: "workedCount", holds: ({ place }) => ({ formula: shown(typed("lame", place)) }) },
  share: {
    heading: "Share lame",
    look: "workedPercent",
    holds: ({ place }) => ({ formula: answered(answer("share", place)) }),
  },
  range: {
    heading: "Range",
    look: "centred",
    holds: ({ place }) => {
      const [low, high] = [answer("low", place), answer("high", place)];
      return { formula: `IF(ISNUMBER(${low}),${percent(low)}&" to "&${percent(high)},"")` };
    },
  },
};

function writeGroups(sheet: SheetAuthor): void {
  const { area, rows, cell } = pageGroups;
  sheet.put({ row: area.top - 1, column: 0 }, "What was looked at", "question");
  writeGrid(sheet, pageGroups, groupColumns);
  sheet.put({ row: rows.top, column: 0 }, null, "strong");
  sheet.emphasize(rows, [`LEN(${cell("group")})>0`, "line"]);
  const [estimate, find, against] = (["toEstimate", "toFind", "against"] as const).map((key) => answer(key, 0));
  across(
    sheet,
    { row: area.bottom + 1, column: 0 },
    {
      formula: `IF(IF(ISERROR(${against}),0,LEN(${against}))=0,"","Target "&${percent("target")}&": "&${against}&". ")&IF(ISNUMBER(${estimate}),"To know the share within "&${percent("margin")}&": look at "&${estimate}&". ","")&IF(ISNUMBER(${find}),"To find lameness of "&${percent("design_share")}&": look at "&${find}&".","")`,
    },
    16,
  );
}

function writeFound(sheet: SheetAuthor): void {
  const { area, rows, cell } = pageFound;
  sheet.put({ row: area.top - 1, column: 0 }, "What was found, and what to do first", "question");
  const line = (row: number): string => cellOn(sheetNames.planLines, { row, column: 2 });
  const typedFound = (key: Parameters<typeof placedFound.range>[0], place: number): string =>
    cellOn(sheetNames.visit, { row: placedFound.rows.top + place, column: placedFound.column(key).left });
  writeGrid(sheet, pageFound, {
    lesion: { heading: "Lesion", look: "words", holds: ({ place }) => ({ formula: line(planRow(place)) }) },
    cases: {
      heading: "Cases",
      look: "wordsCentre",
      holds: ({ place }) => ({ formula: shown(typedFound("cases", place)) }),
    },
    steps: { heading: "First steps; all of them stand on the sheet Care plan", look: "words" },
  });
  const steps = { top: area.top, left: area.right, bottom: area.top, right };
  sheet.dress(steps, "workedHeading");
  sheet.merge(steps);
  for (let row = rows.top; row <= rows.bottom; row++) {
    const place = row - rows.top;
    const plan = planRow(place);
    across(
      sheet,
      { row, column: area.right },
      { formula: `IF(LEN(${typedFound("lesion", place)})=0,"",${line(plan + 2)}&" "&${line(plan + 3)})` },
      60,
    );
  }
  sheet.emphasize({ ...rows, right }, [`LEN(${cell("lesion")})>0`, "line"]);
}

function writeWords(sheet: SheetAuthor): void {
  sheet.put({ row: wordsRow, column: 0 }, "Medicine and footbath", "question");
  const [total, bottles, largest, clear] = (["total", "bottles", "largest", "clear"] as const).map((key) =>
    cellOn(sheetNames.doses, batch.at(key, 0)),
  );
  const [litres, product, water] = [
    { row: bathRow, column: 1 },
    { row: bathRow + 1, column: 1 },
    { row: bathRow + 1, column: 2 },
  ].map((place) => cellOn(sheetNames.doses, place));
  const months = '"Jan","Feb","Mar","Apr","May","Jun","Jul","Aug","Sep","Oct","Nov","Dec"';
  const dayText = (at: string): string => `DAY(${at})&" "&CHOOSE(MONTH(${at}),${months})&" "&YEAR(${at})`;
  const day = dayText(`${clear}`);
  const others = Array.from({ length: otherMedicines.room }, (_, place) => {
    const typed = (key: KeyOf<typeof otherMedicines>): string => {
      const { top, left: column } = placedOthers.column(key);
      return cellOn(sheetNames.doses, { row: top + place, column });
    };
    const [name, route, days] = [typed("medicine"), typed("route"), typed("withdrawalDays")];
    const clearAt = cellOn(sheetNames.doses, othersAnswers.at("clear", place));
    return `IF(LEN(${name})=0,"",${name}&", given "&IF(LEN(${route})=0,"how is not typed",${route})&IF(LEN(${days})=0,". WITHDRAWAL NOT TYPED: hold every animal that was given it.",". Withdrawal "&${days}&" days for meat: "&IF(ISNUMBER(${clearAt}),"clear for food from "&${dayText(clearAt)}&".","the clear date needs the day of the visit.")))`;
  });
  const liquid = 'OR(bath_kind="formalin",bath_kind="liquid")';
  const lines = [
    `IF(ISNUMBER(${total}),${shown("medicine_name")}&": "&COUNT(Weighed[Weight kg])&" sheep weighed, "&MIN(Weighed[Weight kg])&" to "&MAX(Weighed[Weight kg])&" kg; "&mg_per_kg&" mg per kg at "&mg_per_ml&" mg per ml.","No medicine was worked out.")`,
    `IF(ISNUMBER(${total}),"In all "&ROUND(${total},1)&" ml with a spare of "&${percent("spare")}&IF(ISNUMBER(${bottles}),", "&${bottles}&IF(${bottles}=1," bottle"," bottles"),"")&"; the largest dose is "&${largest}&" ml"&IF(LEN(sites_least)=0,"",", over "&sites_least&" sites or more")&".","")`,
    `IF(ISNUMBER(${total}),IF(LEN(medicine_route)=0,"How it is given: not typed.","Given "&medicine_route&".")&IF(LEN(medicine_withdrawal)=0," WITHDRAWAL NOT TYPED: hold every animal that was given it, and ask the vet."," Withdrawal "&medicine_withdrawal&" days for meat: "&IF(ISNUMBER(${clear}),"given last on the day of the visit, clear for food from "&${day}&".","the clear date needs the day of the visit.")),"")`,
    ...others,
    `IF(ISNUMBER(${product}),"Footbath of "&ROUND(${litres},1)&" litres at "&bath_percent&" %: "&ROUND(${product},2)&IF(${liquid}," litres of liquid in "," kg of "&bath_kind&", filled up to ")&ROUND(${water},2)&" litres"&IF(${liquid}," of water.","."),"No footbath was worked out.")`,
  ];
  lines.forEach((formula, step) => {
    across(sheet, { row: wordsRow + 1 + step, column: 0 }, { formula }, 16);
  });
}
