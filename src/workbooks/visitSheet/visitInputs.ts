import { lesions } from "../../core/lesions/lesionName.ts";
import { lesionWords } from "../footBook/bookTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { orWords } from "../writing/orWords.ts";
import { rules } from "../writing/rules.ts";
import type { NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import { writeHeadings } from "../writing/writeHeadings.ts";
import type { VisitContent } from "./visitContent.ts";
import { flockRow, optional, places, unlessBlank } from "./visitFormulas.ts";
import { headings, inOrder, room, sheetNames, tableAt } from "./visitTables.ts";

const yesOrNo = (answer: boolean | undefined): string | null => (answer === undefined ? null : answer ? "yes" : "no");

const fieldsFor = ({ farm, day, adviser, target, plan, flockHas }: VisitContent): readonly Field[] => [
  {
    name: "farm_name",
    label: "Flock",
    value: farm ?? null,
    look: "fieldText",
    words: "Stands on the page that is left with the farm.",
  },
  {
    name: "visit_date",
    label: "Day of the visit",
    value: day ?? null,
    look: "fieldDate",
    words: "Such as 2026-03-14.",
    rule: rules.day,
  },
  { name: "adviser", label: "Adviser", value: adviser ?? null, look: "fieldText", words: "Who looked at the feet." },
  {
    name: "target",
    label: "Target",
    value: target,
    look: "fieldShare",
    words: "The share lame that the flock aims to stay below.",
    rule: rules.innerShare,
  },
  {
    name: "expected_share",
    label: "Share lame expected",
    value: plan?.expected ?? null,
    look: "fieldShare",
    words: "Before the visit; when unsure, the highest you think possible.",
    rule: rules.share,
  },
  {
    name: "margin",
    label: "To be known within",
    value: plan?.margin ?? null,
    look: "fieldShare",
    words: "The margin either side, such as 3%.",
    rule: rules.innerShare,
  },
  {
    name: "design_share",
    label: "Smallest share that matters",
    value: plan?.design ?? null,
    look: "fieldShare",
    words: "So many are looked at that it would be found 95 times in 100.",
    rule: rules.innerShare,
  },
  {
    name: "has_footrot",
    label: "Flock has footrot",
    value: yesOrNo(flockHas?.footrot),
    look: "fieldText",
    words: "yes or no; the care plans ask for it.",
    rule: rules.yesNo,
  },
  {
    name: "has_codd",
    label: "Flock has CODD",
    value: yesOrNo(flockHas?.codd),
    look: "fieldText",
    words: "yes or no; contagious ovine digital dermatitis.",
    rule: rules.yesNo,
  },
];

/** What was typed before and during the visit, and beside it how many to look at and what that shows. */
export const visitInputs = (content: VisitContent): SheetPlan => ({
  name: sheetNames.visit,
  write(sheet, nameCell) {
    sheet.widths(28, 20, 12, 12, 13, 13, 11, 9, 9, 44);
    sheet.title("Visit");
    sheet.put({ row: 1, column: 0 }, "Yellow cells are yours to fill. Everything else follows.", "note");
    writeFields(sheet, nameCell, places.fields, fieldsFor(content));
    writeGroups(sheet, content);
    writeFound(sheet, content, nameCell);
    sheet.freezeAt({ row: 1, column: 0 });
    sheet.protect();
    sheet.print({ sideways: true, cells: `$A$1:$J$${places.found + room.found + 1}`, onOnePage: true });
  },
});

const seeRow = "look at the yellow cells of this row";

function writeGroups(sheet: SheetAuthor, { groups }: VisitContent): void {
  const row = places.groups;
  const area = tableAt("groups", row);
  const first = row + 1;
  sheet.put({ row: row - 1, column: 0 }, "Groups looked at", "question");
  writeHeadings(sheet, { row, column: 0 }, headings.groups, ["fieldText", "fieldCount", "fieldCount", "fieldCount"]);
  sheet.putRow(
    { row, column: headings.groups.length },
    ["look at, to know the share", "look at, to find it", "share lame", "low", "high", "against the target"],
    "workedHeadingCentre",
  );
  sheet.rowHeight(row, 48);
  sheet.dress({ ...area, top: first, right: 0 }, "fieldText");
  sheet.dress({ ...area, top: first, left: 1 }, "fieldCount");
  groups.forEach((group, place) => {
    sheet.putRow({ row: first + place, column: 0 }, inOrder("groups", group));
  });
  sheet.table("VisitGroups", area, false);
  sheet.accept({ ...area, top: first, left: 1, right: 2 }, rules.sheep);
  sheet.accept(
    { ...area, top: first, left: 3 },
    {
      of: { whole: ["0", `IF($C${first + 1}="",1000000,$C${first + 1})`] },
      words: "Type how many were lame: a whole number, not more than were looked at.",
    },
  );
  for (let place = 0; place < room.groups; place++) writeGroupRow(sheet, first + place);
  writeFlockRow(sheet);
  sheet.emphasize(
    { top: first, left: 4, bottom: flockRow, right: 9 },
    [`LEFT($J${first + 1},5)="above"`, "strong"],
    [`LEN($E${first + 1}&$G${first + 1})>0`, "line"],
  );
}

function writeGroupRow(sheet: SheetAuthor, row: number): void {
  const [size, seen, lame] = ["B", "C", "D"].map((column) => `$${column}${row + 1}`) as [string, string, string];
  writePlanned(sheet, row, size);
  const counted = (formula: string): string => unlessBlank([seen, lame], orWords(formula, seeRow));
  const put = (column: number, formula: string, look: "workedPercent" | "words") =>
    sheet.put({ row, column }, { formula: counted(formula) }, look);
  put(6, `FOOT.FLOCKPREV(${lame},${seen})`, "workedPercent");
  put(7, `FOOT.PREVRANGE(${lame},${seen},0.95,${optional(size)})`, "workedPercent");
  sheet.put({ row, column: 8 }, null, "workedPercent");
  put(9, `FOOT.TARGETCHECK(${lame},${seen},target,0.95,${optional(size)})`, "words");
}

function writePlanned(sheet: SheetAuthor, row: number, size: string): void {
  const formulas = [
    unlessBlank(
      [size, "expected_share", "margin"],
      orWords(`FOOT.SAMPLETOESTIMATE(expected_share,margin,${size})`, seeRow),
    ),
    unlessBlank([size, "design_share"], orWords(`FOOT.SAMPLETOFIND(${size},design_share)`, seeRow)),
  ];
  formulas.forEach((formula, step) => {
    sheet.put({ row, column: 4 + step }, { formula }, "workedCount");
  });
}

// Groups are looked at in unlike parts, so the flock's share weighs each group by its size.
function writeFlockRow(sheet: SheetAuthor): void {
  const row = flockRow;
  const sum = (column: string): string => `SUM(VisitGroups[${column}])`;
  sheet.put({ row, column: 0 }, "Whole flock, by size of group", "strong");
  ["Sheep", "Looked at", "Lame"].forEach((column, step) => {
    sheet.put({ row, column: 1 + step }, { formula: sum(column) }, "workedCount");
  });
  const size = `$B$${row + 1}`;
  const planned = [`FOOT.SAMPLETOESTIMATE(expected_share,margin,${size})`, `FOOT.SAMPLETOFIND(${size},design_share)`];
  const needs = [["expected_share", "margin"], ["design_share"]] as const;
  planned.forEach((formula, step) => {
    sheet.put(
      { row, column: 4 + step },
      { formula: `IF(${size}=0,"",${unlessBlank(needs[step] ?? [], orWords(formula, seeRow))})` },
      "workedCount",
    );
  });
  sheet.dress({ top: row, left: 6, bottom: row, right: 8 }, "workedPercent");
  sheet.put(
    { row, column: 6 },
    {
      formula: `IF(COUNT(VisitGroups[Looked at])=0,"",${orWords(
        "FOOT.WEIGHTEDPREV(VisitGroups[Sheep],VisitGroups[Lame],VisitGroups[Looked at])",
        "every group needs its sheep, looked at and lame",
      )})`,
    },
  );
  const [low, high] = [`$H$${row + 1}`, `$I$${row + 1}`];
  sheet.put(
    { row, column: 9 },
    {
      formula: `IF(ISNUMBER(${low}),IF(${high}<target,"below target",IF(${low}>target,"above target",IF(${low}=${high},"on target","not settled yet"))),"")`,
    },
    "worked",
  );
}

function writeFound(sheet: SheetAuthor, { found }: VisitContent, nameCell: NameCell): void {
  const row = places.found;
  const area = tableAt("found", row);
  const column = (place: number) => ({ ...area, top: row + 1, left: place, right: place });
  sheet.put({ row: row - 1, column: 0 }, "What was found on the feet", "question");
  writeHeadings(sheet, { row, column: 0 }, headings.found, ["fieldText", "fieldCount", "fieldText", "fieldText"]);
  sheet.put({ row, column: 4 }, "Severe: loose or bent horn. A care plan for each follows on its own sheet.", "note");
  sheet.dress({ ...area, top: row + 1 }, "fieldText");
  sheet.dress(column(1), "fieldCount");
  found.forEach((finding, place) => {
    sheet.putRow({ row: row + 1 + place, column: 0 }, inOrder("found", finding));
  });
  sheet.table("VisitFound", area, false);
  sheet.accept(column(0), {
    of: { list: `"${lesions.map((lesion) => lesionWords[lesion]).join(",")}"` },
    words: "Choose a lesion from the list; what is none of them is other.",
  });
  sheet.accept(column(1), rules.sheep);
  sheet.accept({ ...area, top: row + 1, left: 2 }, rules.yesNo);
  nameCell("lesions_found", sheet.name, column(0));
}
