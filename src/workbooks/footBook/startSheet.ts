import { cautions } from "../../../functions/cautions.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { writeStart } from "../writing/writeStart.ts";
import type { BookContent } from "./bookContent.ts";
import { sheetNames } from "./bookSheets.ts";

const steps: readonly (readonly [sheet: string, words: string])[] = [
  [sheetNames.settings, "Once: your groups, your target, your medicines with the numbers from the data sheet."],
  [sheetNames.gathers, "At each gather: how many of each group were looked at, how many of them were lame."],
  [
    sheetNames.cases,
    "For each lame animal: when, which foot, what it was, what was done, and when she was sound again.",
  ],
  [
    sheetNames.today,
    "Read it in the morning: who may not go for food yet, whom to treat or look at again, who does not get sound.",
  ],
  [
    sheetNames.sale,
    "Before a sale: paste the tags and see who may go, and who is lame, gone or not clear of medicine.",
  ],
  [sheetNames.apart, "Before housing, turnout or weaning: whom to keep by themselves."],
  [sheetNames.picture, "Once a month: is it getting better, what makes them lame, how fast do they get sound."],
  [sheetNames.medicine, "Once a year, or when your vet asks: how much medicine was used."],
  [sheetNames.problems, "Now and then: slips of the hand in the records, row by row, and how to mend them."],
  [sheetNames.gatherForm, "To print blank and fill in at the gather, with a pen."],
  [sheetNames.caseForm, "The same for treatments in the pen."],
  [sheetNames.asOf, "What the lists are worked out from. Nothing to type there."],
];

const care = [
  cautions.withdrawal.words,
  cautions.notSound.words,
  cautions.medicineUse.words,
  cautions.recordCheck.words,
];

const notes = [
  "Dates: type real dates, or text such as 2026-03-14. Anything else is refused, because 03/04 means two days. A blank is never counted as a sound sheep, and a missing withdrawal period is never taken as 0 days.",
  "Cells that are worked out are locked so that nobody types over them. There is no password: take the protection off when you want to change the book.",
];

/** What this book is, how to fill it, whether the functions answer here, and what to take care of. */
export const startSheet = ({ invented }: BookContent): SheetPlan => ({
  name: sheetNames.start,
  write: (sheet) =>
    writeStart(sheet, {
      title: "Flock foot book",
      subtitle: 'IF(farm_name="","Sheep foot health, for the farm office",farm_name)',
      invented: invented ? "This flock is invented. No animal, farm or medicine in it exists." : undefined,
      states: [
        [
          "Records",
          'IF(ISERROR(problems_found),"Not worked out here.",IF(problems_found=0,"Nothing to mend was found.",problems_found&" things to look at: see Problems."))',
        ],
      ],
      steps,
      care,
      notes,
    }),
});
