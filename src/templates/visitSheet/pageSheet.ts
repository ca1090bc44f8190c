import { cautions } from "../../../functions/cautions.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import { rules } from "../authoring/rules.ts";
import type { SheetAuthor } from "../authoring/sheetAuthor.ts";
import type { VisitContent } from "./visitContent.ts";
import { flockRow, places, planRow } from "./visitFormulas.ts";
import { headings, inOrder, room, sheetNames, tableAt } from "./visitTables.ts";

const groupsRow = 4;
const foundRow = groupsRow + room.groups + 5;
const wordsRow = foundRow + room.found + 2;
const actionsRow = wordsRow + 6;
const careRow = actionsRow + room.actions + 2;
const right = 5;

const care = [cautions.carePlan.words, cautions.dosing.words, cautions.footbath.words];
/** Letters that fit in a line across the page. */
const lineLength = 112;
const heightOf = (words: string): number => Math.ceil(words.length / lineLength) * 15 + 3;

const visit = (column: string, row: number): string => `${quoteSheet(sheetNames.visit)}$${column}$${row + 1}`;
const doses = (column: string, row: number): string => `${quoteSheet(sheetNames.doses)}$${column}$${row + 1}`;
const percent = (share: string): string => `ROUND(100*${share},1)&" %"`;
const range = (low: string, high: string): string => `IF(ISNUMBER(${low}),${percent(low)}&" to "&${percent(high)},"")`;
const shown = (cell: string): string => `IF(LEN(${cell})=0,"",${cell})`;

/** The page that stays with the farm: what was looked at, what was found, what to do, and what was agreed. */
export const pageSheet = ({ actions }: VisitContent): SheetPlan => ({
  name: sheetNames.page,
  write(sheet) {
    sheet.widths(40, 11, 13, 10, 12, 20);
    sheet.title("Foot health visit");
    sheet.put({ row: 1, column: 0 }, { formula: shown("farm_name") }, "subtitle");
    sheet.put({ row: 1, column: 2 }, { formula: shown("visit_date") }, "workedDate");
    sheet.put({ row: 1, column: 4 }, { formula: shown("adviser") }, "worked");
    writeGroups(sheet);
    writeFound(sheet);
    writeWords(sheet);
    writeActions(sheet, actions);
    care.forEach((words, step) => {
      across(sheet, careRow + step, 0, words, heightOf(words), "note");
    });
    sheet.protect();
    sheet.print({ cells: `$A$1:$F$${careRow + care.length}`, onOnePage: true });
  },
});

function across(
  sheet: SheetAuthor,
  row: number,
  left: number,
  content: string | { readonly formula: string },
  height: number,
  look: "words" | "note",
): void {
  sheet.dress({ top: row, left, bottom: row, right }, "words");
  sheet.put({ row, column: left }, content);
  sheet.merge({ top: row, left, bottom: row, right });
  sheet.rowHeight(row, height);
  if (look === "note") sheet.dress({ top: row, left, bottom: row, right }, "care");
}

function writeGroups(sheet: SheetAuthor): void {
  sheet.put({ row: groupsRow - 1, column: 0 }, "What was looked at", "question");
  sheet.put({ row: groupsRow, column: 0 }, "Group", "workedHeading");
  sheet.putRow(
    { row: groupsRow, column: 1 },
    ["Sheep", "Looked at", "Lame", "Share lame", "Range"],
    "workedHeadingCentre",
  );
  for (let place = 0; place <= room.groups; place++) {
    const whole = place === 0;
    const from = whole ? flockRow : places.groups + place;
    const row = groupsRow + 1 + place;
    sheet.put({ row, column: 0 }, { formula: shown(visit("A", from)) }, whole ? "strong" : "worked");
    ["B", "C", "D"].forEach((column, step) => {
      sheet.put({ row, column: 1 + step }, { formula: shown(visit(column, from)) }, "workedCount");
    });
    sheet.put({ row, column: 4 }, { formula: shown(visit("G", from)) }, "workedPercent");
    sheet.put({ row, column: 5 }, { formula: range(visit("H", from), visit("I", from)) }, "centred");
  }
  sheet.emphasize({ top: groupsRow + 1, left: 0, bottom: groupsRow + 1 + room.groups, right }, [
    `LEN($A${groupsRow + 2})>0`,
    "line",
  ]);
  const [estimate, find] = [visit("E", flockRow), visit("F", flockRow)];
  const against = visit("J", flockRow);
  across(
    sheet,
    groupsRow + room.groups + 2,
    0,
    {
      formula: `IF(LEN(${against})=0,"","Target "&${percent("target")}&": "&${against}&". ")&IF(ISNUMBER(${estimate}),"To know the share within "&${percent("margin")}&": look at "&${estimate}&". ","")&IF(ISNUMBER(${find}),"To find lameness of "&${percent("design_share")}&": look at "&${find}&".","")`,
    },
    16,
    "words",
  );
}

function writeFound(sheet: SheetAuthor): void {
  sheet.put({ row: foundRow - 1, column: 0 }, "What was found, and what to do first", "question");
  sheet.put({ row: foundRow, column: 0 }, "Lesion", "workedHeading");
  sheet.put({ row: foundRow, column: 1 }, "Cases", "workedHeadingCentre");
  sheet.dress({ top: foundRow, left: 2, bottom: foundRow, right }, "workedHeading");
  sheet.put({ row: foundRow, column: 2 }, "First steps; all of them stand on the sheet Care plan");
  sheet.merge({ top: foundRow, left: 2, bottom: foundRow, right });
  const plan = (row: number): string => `${quoteSheet(sheetNames.planLines)}$C$${row + 1}`;
  for (let place = 0; place < room.found; place++) {
    const row = foundRow + 1 + place;
    const from = places.found + 1 + place;
    const top = planRow(place) + 1;
    sheet.put({ row, column: 0 }, { formula: `${quoteSheet(sheetNames.planLines)}$C$${planRow(place) + 1}` }, "words");
    sheet.put({ row, column: 1 }, { formula: shown(visit("B", from)) }, "wordsCentre");
    across(
      sheet,
      row,
      2,
      { formula: `IF(LEN(${visit("A", from)})=0,"",${plan(top + 1)}&" "&${plan(top + 2)})` },
      60,
      "words",
    );
  }
  sheet.emphasize({ top: foundRow + 1, left: 0, bottom: foundRow + room.found, right }, [
    `LEN($A${foundRow + 2})>0`,
    "line",
  ]);
}

function writeWords(sheet: SheetAuthor): void {
  const row = wordsRow;
  sheet.put({ row, column: 0 }, "Medicine and footbath", "question");
  const [total, bottles, largest] = ["B", "C", "D"].map((column) => doses(column, places.batch + 1)) as [
    string,
    string,
    string,
  ];
  const [litres, product, water] = [
    doses("B", places.bathAnswers),
    doses("B", places.bathAnswers + 1),
    doses("C", places.bathAnswers + 1),
  ];
  const liquid = 'OR(bath_kind="formalin",bath_kind="liquid")';
  const lines = [
    `IF(ISNUMBER(${total}),${shown("medicine_name")}&": "&COUNT(Weighed[Weight kg])&" sheep weighed, "&MIN(Weighed[Weight kg])&" to "&MAX(Weighed[Weight kg])&" kg; "&mg_per_kg&" mg per kg at "&mg_per_ml&" mg per ml.","No medicine was worked out.")`,
    `IF(ISNUMBER(${total}),"In all "&ROUND(${total},1)&" ml with a spare of "&${percent("spare")}&IF(ISNUMBER(${bottles}),", "&${bottles}&" bottles","")&"; the largest dose is "&${largest}&" ml"&IF(LEN(sites_least)=0,"",", over "&sites_least&" sites or more")&".","")`,
    `IF(ISNUMBER(${product}),"Footbath of "&ROUND(${litres},1)&" litres at "&bath_percent&" %: "&ROUND(${product},2)&IF(${liquid}," litres of liquid in "," kg of "&bath_kind&", filled up to ")&ROUND(${water},2)&" litres"&IF(${liquid}," of water.","."),"No footbath was worked out.")`,
  ];
  lines.forEach((formula, step) => {
    across(sheet, row + 1 + step, 0, { formula }, 16, "words");
  });
}

function writeActions(sheet: SheetAuthor, actions: VisitContent["actions"]): void {
  const row = actionsRow;
  const area = tableAt("actions", row);
  sheet.put({ row: row - 1, column: 0 }, "What was agreed", "question");
  sheet.putRow({ row, column: 0 }, headings.actions, "heading");
  sheet.dress({ ...area, top: row + 1, right: 1 }, "fieldWords");
  sheet.dress({ ...area, top: row + 1, left: 2, right: 2 }, "fieldDate");
  sheet.dress({ ...area, top: row + 1, left: 3 }, "fieldText");
  actions.forEach((action, place) => {
    sheet.putRow({ row: row + 1 + place, column: 0 }, inOrder("actions", action));
  });
  sheet.table("Agreed", area, false);
  sheet.accept({ ...area, top: row + 1, left: 2, right: 2 }, rules.day);
  sheet.accept({ ...area, top: row + 1, left: 3 }, rules.yesNo);
}
