import { found, visitGroups } from "../tables/visitTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { dateField, shareField, textField, yesNoField } from "../writing/fields.ts";
import type { List } from "../writing/listFormula.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { type GridColumn, type GridRow, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { fixedCell, rowCell } from "../writing/references.ts";
import { rules } from "../writing/rules.ts";
import type { Content, NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import { flockRow, groupAnswers, placedFound, placedGroups, sheetNames } from "./placedVisit.ts";
import type { VisitContent } from "./visitContent.ts";
import { anyBlank, optional, unlessBlank } from "./visitFormulas.ts";

const yesOrNo = (answer: boolean | undefined): string | null => (answer === undefined ? null : answer ? "yes" : "no");

const fieldsFor = ({ farm, day, adviser, target, plan, flockHas }: VisitContent): readonly Field[] => [
  textField("farm_name", "Flock", farm, "Stands on the page that is left with the farm."),
  dateField("visit_date", "Day of the visit", day, "Such as 2026-03-14."),
  textField("adviser", "Adviser", adviser, "Who looked at the feet."),
  shareField("target", "Target", target, "The share lame that the flock aims to stay below."),
  shareField(
    "expected_share",
    "Share lame expected",
    plan?.expected,
    "Before the visit; when unsure, the highest you think possible.",
    rules.share,
  ),
  shareField("margin", "To be known within", plan?.margin, "The margin either side, such as 3%."),
  shareField(
    "design_share",
    "Smallest share that matters",
    plan?.design,
    "So many are looked at that it would be found 95 times in 100.",
  ),
  yesNoField("has_footrot", "Flock has footrot", yesOrNo(flockHas?.footrot), "yes or no; the care plans ask for it."),
  yesNoField("has_codd", "Flock has CODD", yesOrNo(flockHas?.codd), "yes or no; contagious ovine digital dermatitis."),
];

const firstField = 3;

/** What was typed before and during the visit, and beside it how many to look at and what that shows. */
export const visitInputs = (content: VisitContent): SheetPlan => ({
  name: sheetNames.visit,
  write(sheet, nameCell) {
    sheet.widths(28, 20, 12, 12, 13, 13, 11, 9, 9, 44);
    sheet.title("Visit");
    sayWhenMissing(sheet, { row: 0, column: 4 });
    sheet.put({ row: 1, column: 0 }, "Yellow cells are yours to fill. Everything else follows.", "note");
    writeFields(sheet, nameCell, firstField, fieldsFor(content));
    writeGroups(sheet, content);
    writeFound(sheet, content, nameCell);
    sheet.freezeAt({ row: 1, column: 0 });
    sheet.protect();
    sheet.print({
      sideways: true,
      upTo: { row: placedFound.area.bottom, column: groupAnswers.area.right },
      onOnePage: true,
    });
  },
});

const counted = visitGroups.keys.filter((key) => key !== "group").map((key) => `LEN(${visitGroups.of(key)})`);
/** Groups that were counted in part. */
const unfinished = `SUMPRODUCT((${counted.join("+")}>0)*(${counted.join("*")}=0))`;
/** Says so, under the whole flock. */
const unfinishedAt = { row: flockRow + 1, column: 0 };
const isUnfinished = `LEN(${fixedCell(unfinishedAt)})>0`;

type Answer = Parameters<typeof groupAnswers.range>[0];

const asContent = (answer: string | List): Content => (typeof answer === "string" ? { formula: answer } : answer);

/** What is worked out of a group, or of the whole flock where there is another way for it. */
const eachGroup =
  (answer: (cells: Readonly<Record<"sheep" | "lookedAt" | "lame", string>>) => string | List, flock?: string | List) =>
  ({ place }: GridRow<Answer>): Content => {
    if (place === visitGroups.room) return flock === undefined ? null : asContent(flock);
    const row = placedGroups.rows.top + place;
    const cell = (key: "sheep" | "lookedAt" | "lame"): string =>
      rowCell({ row, column: placedGroups.column(key).left });
    return asContent(answer({ sheep: cell("sheep"), lookedAt: cell("lookedAt"), lame: cell("lame") }));
  };

const flockSize = fixedCell({ row: flockRow, column: placedGroups.column("sheep").left });
const planned = (formula: string, needs: readonly string[]) =>
  eachGroup(
    ({ sheep }) => unlessBlank([sheep, ...needs], formula.replace("SIZE", sheep)),
    `IF(${flockSize}=0,"",${unlessBlank(needs, formula.replace("SIZE", flockSize))})`,
  );
const flockLimit = (key: "low" | "high"): string => fixedCell({ row: flockRow, column: groupAnswers.column(key).left });

const answers: Readonly<Record<Answer, GridColumn<Answer>>> = {
  toEstimate: {
    heading: "look at, to know the share",
    look: "workedCount",
    holds: planned("FOOT.SAMPLETOESTIMATE(expected_share,margin,SIZE)", ["expected_share", "margin"]),
  },
  toFind: {
    heading: "look at, to find it",
    look: "workedCount",
    holds: planned("FOOT.SAMPLETOFIND(SIZE,design_share)", ["design_share"]),
  },
  share: {
    heading: "share lame",
    look: "workedPercent",
    holds: eachGroup(
      ({ lookedAt, lame }) => unlessBlank([lookedAt, lame], `FOOT.FLOCKPREV(${lame},${lookedAt})`),
      // Groups are looked at in unlike parts, so the flock's share weighs each group by its size.
      {
        list: "FOOT.WEIGHTEDPREV(VisitGroups[Sheep],VisitGroups[Lame],VisitGroups[Looked at])",
        room: { rows: 1, columns: 3 },
        unless: [`OR(COUNT(VisitGroups[Looked at])=0,${isUnfinished})`, `IF(${isUnfinished},"incomplete","")`],
      },
    ),
  },
  low: {
    heading: "low",
    look: "workedPercent",
    holds: eachGroup(({ lookedAt, lame, sheep }) => ({
      list: `FOOT.PREVRANGE(${lame},${lookedAt},0.95,${optional(sheep)})`,
      room: { rows: 1, columns: 2 },
      unless: [anyBlank([lookedAt, lame]), '""'],
    })),
  },
  high: { heading: "high", look: "workedPercent" },
  against: {
    heading: "against the target",
    look: "words",
    holds: eachGroup(
      ({ lookedAt, lame, sheep }) =>
        unlessBlank([lookedAt, lame], `FOOT.TARGETCHECK(${lame},${lookedAt},target,0.95,${optional(sheep)})`),
      `IF(ISNUMBER(${flockLimit("low")}),IF(${flockLimit("high")}<target,"below target",IF(${flockLimit("low")}>target,"above target",IF(${flockLimit("low")}=${flockLimit("high")},"on target","not settled yet"))),"")`,
    ),
  },
};

function writeGroups(sheet: SheetAuthor, { groups }: VisitContent): void {
  const { area } = placedGroups;
  sheet.put({ row: area.top - 1, column: 0 }, "Groups looked at", "question");
  sheet.rowHeight(area.top, 48);
  writeTable(sheet, visitGroups, placedGroups, groups);
  writeGrid(sheet, groupAnswers, answers);
  sheet.put({ row: area.top, column: groupAnswers.area.right }, "against the target", "workedHeadingCentre");
  sheet.put({ row: flockRow, column: 0 }, "Whole flock, by size of group", "strong");
  for (const key of ["sheep", "lookedAt", "lame"] as const)
    sheet.put(
      { row: flockRow, column: placedGroups.column(key).left },
      { formula: `SUM(${visitGroups.of(key)})` },
      "workedCount",
    );
  sheet.put({ row: flockRow, column: groupAnswers.area.right }, null, "worked");
  sheet.put(
    unfinishedAt,
    { formula: `IF(${unfinished}=0,"","For the whole flock every group needs its sheep, looked at and lame.")` },
    "careHeading",
  );
  sheet.emphasize(
    groupAnswers.rows,
    [`LEFT(${groupAnswers.cell("against")},5)="above"`, "strong"],
    [`LEN(${groupAnswers.cell("toEstimate")}&${groupAnswers.cell("share")})>0`, "line"],
  );
}

function writeFound(sheet: SheetAuthor, { found: findings }: VisitContent, nameCell: NameCell): void {
  const { area, column } = placedFound;
  sheet.put({ row: area.top - 1, column: 0 }, "What was found on the feet", "question");
  writeTable(sheet, found, placedFound, findings);
  sheet.put(
    { row: area.top, column: area.right + 1 },
    "Severe: loose or bent horn. A care plan for each follows on its own sheet.",
    "note",
  );
  nameCell("lesions_found", sheet.name, column("lesion"));
}
