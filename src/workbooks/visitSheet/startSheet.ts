import { cautions } from "../../../functions/cautions.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { writeStart } from "../writing/writeStart.ts";
import { sheetNames } from "./placedVisit.ts";
import type { VisitContent } from "./visitContent.ts";

/** What the visit sheet is, whether the functions answer here, and what to take care of. */
export const startSheet = ({ invented }: VisitContent): SheetPlan => ({
  name: sheetNames.start,
  write(sheet) {
    writeStart(sheet, {
      title: "Visit sheet",
      subtitle: 'IF(farm_name="","One visit to one flock, for the adviser",farm_name)',
      invented: invented ? "This visit is invented. No flock, animal or medicine in it exists." : undefined,
      states: [],
      steps: [
        [
          sheetNames.visit,
          "Before: how many sheep to look at. There: what was looked at in each group, and what was found on the feet.",
        ],
        [
          sheetNames.doses,
          "The medicine of the day with its numbers from the data sheet, the weights met, and the footbath.",
        ],
        [sheetNames.plan, "What to do with each lesion that was found, step by step."],
        [sheetNames.page, "One page to leave with the farm. Type at its end what was agreed, and print it."],
        [
          sheetNames.quarantine,
          "For sheep that were bought in: what to ask and to look at, what is done on which day, and when they may join.",
        ],
        [sheetNames.planLines, "What the care plan is made from. Nothing to type there."],
      ],
      care: [cautions.carePlan.words, cautions.dosing.words, cautions.footbath.words],
      notes: [
        "Yellow cells are yours to fill; everything else follows. No medicine and no dose is filled in for you, because a wrong number here is a wrong number everywhere.",
        "The numbers of sheep to look at suppose a fair sample. Lame sheep that hang back, or a look at the first through the gate, find fewer.",
        "Cells that are worked out are locked so that nobody types over them. There is no password.",
        "One file for each visit: save it under the name of the flock and the day.",
      ],
    });
  },
});
