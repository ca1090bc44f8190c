import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { writeStart } from "../writing/writeStart.ts";
import { cautionsOfComparing } from "./cautionsOfComparing.ts";
import { type ComparisonContent, isCollated } from "./comparisonContent.ts";
import { roomFor, sheetNames } from "./placedComparison.ts";

/** What the comparison is, whether the functions answer here, and what to take care of. */
export const startSheet = (content: ComparisonContent): SheetPlan => ({
  name: sheetNames.start,
  write(sheet) {
    const { invented, done } = content;
    const collated = isCollated(content);
    const steps: readonly (readonly [sheet: string, words: string] | false)[] = [
      [
        sheetNames.flocks,
        collated
          ? "A row for each flock over one year, as it stands in the flock's own foot book."
          : "A row for each flock over one year. Type them, or let soundfold collate fill them from the flocks' own foot books.",
      ],
      !collated && [
        sheetNames.gathers,
        "Each gather of a flock, if you have more than totals: ranges then allow for gathers that differ.",
      ],
      [
        sheetNames.comparison,
        "Each flock's share lame with its range, whether it is out of line, its steadied share and rank, what changed, medicine used.",
      ],
      done !== undefined && [
        sheetNames.done,
        "New cases, how soon they were treated, how many got sound, lesions and medicine used; and why a figure cannot be counted.",
      ],
      [sheetNames.pictures, "The funnel, and the flocks in order of their steadied share."],
      [
        sheetNames.one,
        "Choose a flock: a page for its farmer that names this flock only, the others by letters. Print that page, or save it as PDF; do not send this file, which names them all.",
      ],
      collated && [sheetNames.books, "Which files the rows came from, and which could not be used."],
      [sheetNames.figures, "What the lists and charts are drawn from. Nothing to type there."],
    ];
    writeStart(sheet, {
      title: "Flock comparison",
      valuesOnly: collated,
      subtitle: '"Flocks side by side, for the consultant"&IF(LEN(year_compared)=0,"",": "&year_compared)',
      invented: invented ? "These flocks are invented. No farm, animal or medicine in them exists." : undefined,
      states: [
        [
          "Flocks",
          `COUNTA(Flocks[Flock])&" flocks"&IF(rows_to_mend=0,"",", "&rows_to_mend&" of them left out: see the last column of Comparison")`,
        ],
      ],
      steps: steps.filter((step) => step !== false),
      care: cautionsOfComparing,
      notes: [
        "Chance alone puts a small flock at the top or the bottom. The funnel shows how far chance, and how much these flocks differ among themselves, reach for a flock of its size; the steadied share draws small flocks towards the others before it ranks them.",
        "The letters on the page of one flock follow the order of the chart, so that they give nothing away.",
        collated
          ? "Flocks and figures stand as they were collated, and need no functions to be read; to change one, mend that flock's book and collate again. Only the page of one flock follows what is chosen on it."
          : `There is room for ${roomFor(content)} flocks. For more, let soundfold collate make the file.`,
        collated
          ? "The one yellow cell, on the page of one flock, is yours to fill. All else is locked, without a password."
          : "Yellow cells are yours to fill. What is worked out is locked, without a password.",
      ],
    });
  },
});
