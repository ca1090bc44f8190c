import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { dateField, numberField, sheepField } from "../writing/fields.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { fixedCell } from "../writing/references.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import { sheetNames } from "./placedVisit.ts";
import type { VisitContent } from "./visitContent.ts";
import { optional, unlessBlank } from "./visitFormulas.ts";

const wholeDays = { of: { whole: ["1", "365"] as const }, words: "Type whole days, 1 to 365." };

const fieldsFor = ({ quarantine }: VisitContent): readonly Field[] => [
  dateField(
    "arrived",
    "Day they arrived",
    quarantine?.arrived,
    "Such as 2026-03-14. Lots that came on two days need a sheet each.",
  ),
  sheepField("bought_sheep", "Sheep that came", quarantine?.sheep, "All of them, lame or not."),
  numberField(
    "apart_days",
    "Days to keep them apart",
    28,
    "Published advice is 28 days, or 21 to 28. Your vet may say more.",
    wholeDays,
  ),
  dateField(
    "last_new_case",
    "Last new case among them",
    quarantine?.lastNewCase,
    "The days are counted anew from it; blank when there was none.",
  ),
  numberField(
    "bath_count",
    "Footbaths",
    quarantine?.baths,
    "How many, as the vet or data sheet says; the first on arrival. At most 5.",
    { of: { whole: ["0", "5"] }, words: "Type a whole number, 0 to 5." },
  ),
  numberField(
    "bath_every",
    "Days between footbaths",
    quarantine?.bathEvery,
    "As your vet or the data sheet says.",
    wholeDays,
  ),
  dateField(
    "vaccine_first",
    "First vaccination against footrot",
    quarantine?.vaccine,
    "Only if your vet advises it; blank when not.",
  ),
  numberField(
    "vaccine_after",
    "Days to the second one",
    quarantine?.vaccineAfter,
    "From the data sheet of the vaccine.",
    wholeDays,
  ),
];

// Common practice, no source.
const checks = [
  [
    "Ask the seller",
    [
      "Has the flock had footrot in the last two years? CODD, ever?",
      "Were any of these sheep lame or treated in the last 3 months? With what, and on which day?",
      "Which medicines are they still in withdrawal for, and until when?",
      "Were they vaccinated against footrot, and when?",
      "Were they footbathed before they came, in what, and how long ago?",
      "Did they come through a market or a dealer, or mix with other sheep?",
    ],
  ],
  [
    "On the day they arrive",
    [
      "Unload them onto dry standing that the flock does not use; no shared handling race, trailer or track.",
      "Turn up every sheep: look at all four feet, between the claws and at the coronary band. Do not trim.",
      "Write down each lesion and each tag in Cases of the flock's own book; lame sheep are treated, or go back.",
      "Work through the rest of the intake with your vet: scab, worms and fluke, and what else your flock is free of.",
    ],
  ],
  [
    "While they are apart",
    [
      "Watch them walk every day; look at their feet again each week.",
      "See to them last, and clean boots, hurdles and knives afterwards.",
      "A new case: treat it, type its day above, and count the days anew.",
    ],
  ],
  [
    "Before they join",
    [
      "Turn up every sheep once more: no lesion, none lame. One that is lame or in doubt stays behind.",
      "Withdrawal days of what they were given stand in the flock's own book.",
    ],
  ],
] as const;

const firstField = 3;
const calendarRow = firstField + 8 + 2;
const checksRow = calendarRow + 5;

/** For sheep that were bought in: what to ask and look at, the days of what is done, and the day they may join. */
export const quarantineSheet = (content: VisitContent): SheetPlan => ({
  name: sheetNames.quarantine,
  write(sheet, nameCell) {
    sheet.widths(32, 15, 15, 15, 15, 15);
    sheet.title("Quarantine");
    sayWhenMissing(sheet, { row: 0, column: 2 });
    sheet.put(
      { row: 1, column: 0 },
      "For sheep that were bought in or come back from elsewhere. Yellow cells are yours to fill.",
      "note",
    );
    writeFields(sheet, nameCell, firstField, fieldsFor(content));
    writeCalendar(sheet);
    writeChecks(sheet);
    sheet.protect();
    sheet.print({ upTo: { row: lastRow, column: 5 }, onOnePage: true });
  },
});

const lastRow = checksRow + checks.reduce((rows, [, lines]) => rows + lines.length + 2, 0) - 2;

function writeCalendar(sheet: SheetAuthor): void {
  sheet.put({ row: calendarRow - 1, column: 0 }, "The days", "question");
  const label = (row: number, words: string): void => sheet.put({ row, column: 0 }, words, "strong");
  label(calendarRow, "Footbaths on");
  for (let bath = 0; bath < 5; bath++) {
    const needs = ["arrived", "bath_count", ...(bath === 0 ? [] : ["bath_every"])];
    const on = bath === 0 ? "arrived" : `arrived+${bath}*bath_every`;
    const formula = unlessBlank(needs, `IF(bath_count>${bath},${on},"")`);
    sheet.put({ row: calendarRow, column: 1 + bath }, { formula }, "workedDate");
  }
  label(calendarRow + 1, "Vaccinations on");
  sheet.put({ row: calendarRow + 1, column: 1 }, { formula: optional("vaccine_first") }, "workedDate");
  sheet.put(
    { row: calendarRow + 1, column: 2 },
    { formula: unlessBlank(["vaccine_first", "vaccine_after"], "vaccine_first+vaccine_after") },
    "workedDate",
  );
  label(calendarRow + 2, "May join from");
  const joins = { row: calendarRow + 2, column: 1 };
  sheet.put(
    joins,
    {
      formula: unlessBlank(
        ["arrived", "apart_days"],
        `FOOT.QUARANTINEEND(arrived,apart_days,${optional("last_new_case")})`,
      ),
    },
    "figureDate",
  );
  const second = fixedCell({ row: calendarRow + 1, column: 2 });
  sheet.put(
    { ...joins, column: 2 },
    {
      formula: `IF(ISNUMBER(${fixedCell(joins)}),IF(AND(ISNUMBER(${second}),${second}>${fixedCell(joins)}),"if none is lame; the second vaccination comes later","if every foot was looked at and none is lame"),"")`,
    },
    "note",
  );
}

function writeChecks(sheet: SheetAuthor): void {
  let row = checksRow;
  for (const [question, lines] of checks) {
    sheet.put({ row: row - 1, column: 0 }, question, "question");
    sheet.put({ row: row - 1, column: 4 }, "Answer, or done on", "note");
    for (const line of lines) {
      const words = { top: row, left: 0, bottom: row, right: 3 };
      sheet.dress(words, "words");
      sheet.put({ row, column: 0 }, line);
      sheet.merge(words);
      const answer = { top: row, left: 4, bottom: row, right: 5 };
      sheet.dress(answer, "fieldWords");
      sheet.merge(answer);
      sheet.rowHeight(row, 31);
      row++;
    }
    row += 2;
  }
}
