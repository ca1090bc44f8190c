import { cautions } from "../../../functions/cautions.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { writeStart } from "../writing/writeStart.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { roomFor, sheetNames } from "./placedComparison.ts";

/** What the comparison is, whether the functions answer here, and what to take care of. */
export const startSheet = ({ invented, flocks }: ComparisonContent): SheetPlan => ({
  name: sheetNames.start,
  write(sheet) {
    writeStart(sheet, {
      title: "Flock comparison",
      subtitle: '"Flocks side by side, for the consultant"&IF(LEN(year_compared)=0,"",": "&year_compared)',
      invented: invented ? "These flocks are invented. No farm, animal or medicine in them exists." : undefined,
      states: [
        [
          "Flocks",
          `COUNTA(Flocks[Flock])&" flocks"&IF(rows_to_mend=0,"",", "&rows_to_mend&" of them left out: see the last column of Comparison")`,
        ],
      ],
      steps: [
        [
          sheetNames.flocks,
          "A row for each flock over one year. Type them, or let soundfold collate fill them from the flocks' own foot books.",
        ],
        [
          sheetNames.comparison,
          "Each flock's share lame with its range, whether it is out of line, its steadied share and rank, what changed, medicine used.",
        ],
        [sheetNames.pictures, "The funnel, and the flocks in order of their steadied share."],
        [
          sheetNames.one,
          "Choose a flock: a page for its farmer that names this flock only, the others by letters. Print that page, or save it as PDF; do not send this file, which names them all.",
        ],
        [sheetNames.books, "Which files the rows came from, and which could not be used."],
        [sheetNames.figures, "What the lists and charts are drawn from. Nothing to type there."],
      ],
      care: [
        "A low rank is no proof of good care, nor a high one of bad: flocks differ in fields, breeds, weather, and in who looked. Compare flocks that were looked at in the same way.",
        "Sheep looked at more than once in the year count each time, so ranges are narrower than they should be.",
        cautions.medicineUse.words,
      ],
      notes: [
        "Chance alone puts a small flock at the top or the bottom. The funnel shows how far chance reaches for a flock of its size, and the steadied share draws small flocks towards the others before it ranks them.",
        "The letters on the page of one flock follow the order of the chart, so that they give nothing away.",
        `There is room for ${roomFor(flocks.length)} flocks. For more, let soundfold collate make the file.`,
        "Yellow cells are yours to fill. What is worked out is locked, without a password.",
      ],
    });
  },
});
