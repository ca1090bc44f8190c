import { dayOf } from "../../src/cells/day.ts";
import { type SaleAnswer, saleCheck } from "../../src/core/dates/saleCheck.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { moment } from "../../src/reading/days.ts";
import { doubtColumn, gappedDoubtColumnOrNone, one } from "../../src/reading/parameter.ts";
import { nameText, tag } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { countingChoice, groupColumn, groupNotes, treatmentColumns, treatmentNotes } from "./treatmentColumns.ts";

export const saleCheckFunction = defineFunction({
  name: "SALECHECK",
  summary: "Which of the animals for sale are clear of medicine, and how long the others must wait.",
  questions: [
    "may these go to the abattoir",
    "which sheep can go to market",
    "check a sale list for withdrawal",
    "are these lambs clear to sell",
    "when can these sheep be sold",
    "slaughter",
  ],
  notes: [
    '"hold" means that the animal is in withdrawal on the day of sale, that a treatment of it lacks its days or its date or cannot be read, or that another treatment may be its own; the clear date is then a date, or says why it is not known.',
    "A treatment dated after the sale counts too: it is planned, or its date is a slip of the hand, and neither is a reason to sell.",
    'A tag that is in no treatment record says "no treatment recorded": look whether it was typed right. A treated animal whose tag is alike is named; until it is clear the answer is "hold".',
    ...treatmentNotes,
    ...groupNotes,
  ],
  parameters: {
    sale_tags: doubtColumn(tag, "Tags of the animals for sale", { group: "sale" }),
    sale_date: one(moment, "Day of the sale"),
    ...treatmentColumns,
    counting: countingChoice,
    groups: groupColumn,
    sale_groups: gappedDoubtColumnOrNone(
      nameText("the name of a group"),
      "Group of each animal for sale, the same rows; blank where it is not known",
      { group: "sale" },
    ),
  },
  result: table<SaleAnswer>(
    "no animals on the sale list",
    ["tag", "text", (animal) => animal.tag],
    ["answer", "text", (animal) => animal.answer],
    ["clear date", "date", (animal) => animal.clear],
    ["days to wait", "days", (animal) => animal.daysToWait],
  ),
  caution: cautions.withdrawal,
  sources: [sources.fimeaWithdrawal, sources.practice],
  compute: ({ sale_tags, sale_date, tags, treated, withdrawal_days, counting, groups, sale_groups }, origin) =>
    saleCheck(
      { tags: sale_tags, groups: sale_groups },
      sale_date,
      { tags, treated, withdrawalDays: withdrawal_days, groups },
      counting,
      { sale: (index) => origin.row(index, "sale"), treatment: (index) => origin.row(index) },
    ),
  examples: [
    {
      shows: "Four animals on 10 Mar 2026",
      call: [
        ["041", "042", "043", "044"],
        dayOf("2026-03-10"),
        ["042", "041", null, "043"],
        [dayOf("2026-02-10"), dayOf("2026-02-10"), null, dayOf("2026-02-20")],
        [28, 5, null, null],
      ],
      gives: [
        ["tag", "answer", "clear date", "days to wait"],
        ["041", "clear", dayOf("2026-02-16"), 0],
        ["042", "hold", dayOf("2026-03-11"), 1],
        ["043", "hold", "withdrawal_days, row 4: a treatment without withdrawal days", ""],
        ["044", "no treatment recorded", "", ""],
      ],
    },
    {
      shows: "A sale list of numbers, which have lost the zeros of the records' tags",
      call: [[42, 44], dayOf("2026-03-10"), ["042", "043"], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, 28]],
      gives: [
        ["tag", "answer", "clear date", "days to wait"],
        ["42", "hold", "it may be 042, row 1, not clear until 11 Mar 2026", ""],
        ["44", "no treatment recorded", "", ""],
      ],
    },
    {
      call: [["041", "042"], "soon", ["042"], [dayOf("2026-02-10")], [28]],
      gives: problem('sale_date: "soon" is not a date; enter a real date, or text such as 2026-03-14'),
    },
    {
      shows: "Days in words cost only their own animal; a sale tag that lost its digits is held",
      call: [
        ["041", "042", "9.99012E+14"],
        dayOf("2026-03-20"),
        ["041", "042"],
        [dayOf("2026-02-10"), dayOf("2026-02-12")],
        [28, "about 28"],
      ],
      gives: [
        ["tag", "answer", "clear date", "days to wait"],
        ["041", "clear", dayOf("2026-03-11"), 0],
        [
          "042",
          "hold",
          'withdrawal_days, row 2: "about 28" is not a number; enter a whole number of days, 0 or more, without a unit',
          "",
        ],
        [
          "not known",
          "hold",
          'sale_tags, row 3: "9.99012E+14" has lost digits in the spreadsheet; enter the tag again as text',
          "",
        ],
      ],
    },
    {
      shows: "Lambs treated as a group: a lamb, a ewe, and one whose group is not known",
      call: [
        ["051", "041", "052"],
        dayOf("2026-03-10"),
        [null],
        [dayOf("2026-03-01")],
        [14],
        undefined,
        ["Lambs"],
        ["lambs", "Ewes", null],
      ],
      gives: [
        ["tag", "answer", "clear date", "days to wait"],
        ["051", "hold", dayOf("2026-03-16"), 6],
        ["041", "no treatment recorded", "", ""],
        ["052", "hold", "it may be of the group Lambs, row 1, not clear until 16 Mar 2026", ""],
      ],
    },
  ],
});
