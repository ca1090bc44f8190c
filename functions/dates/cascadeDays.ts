import type { Fault } from "../../src/cells/fault.ts";
import { bases, cascadeDays, produces, regions } from "../../src/core/dates/cascadeDays.ts";
import { atRow } from "../../src/core/dates/clearDates.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { between, wholeDays } from "../../src/reading/numbers.ts";
import { column, gappedColumn, gappedColumnOrNone, oneOr } from "../../src/reading/parameter.ts";
import { choice, choiceOr } from "../../src/reading/words.ts";
import { alongside } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const noRegion: Fault = {
  what: "names no rule that is known here",
  mend: 'enter "GB" for England, Scotland and Wales, and "EU" for a country of the European Union or for Northern Ireland; anywhere else neither is the law, so ask your vet',
};

export const cascadeDaysFunction = defineFunction({
  name: "CASCADEDAYS",
  summary: "The least withdrawal days the law allows when a vet uses a product off its label.",
  questions: [
    "withdrawal period off label",
    "cascade withdrawal days",
    "product not licensed for sheep, how long to wait",
    "how long to keep milk back off label",
  ],
  notes: [
    '"authorised": the product is authorised for food animals (for meat) or for milk animals (for milk), but is used otherwise than its label says. The longest period on the label for that produce, in any species, × 1.5, rounded up to whole days: Article 115(1)(a)(i) and (b)(i).',
    '"not authorised for food animals": 28 days for meat, Article 115(1)(a)(ii), and 7 days for milk. "not authorised for milk animals": 7 days for milk, Article 115(1)(b)(ii). Leave label_days blank.',
    '"zero period, same family" or "zero period, another family": the label says 0 days, and the sheep is or is not of the same taxonomic family as the animals on the label (cattle, sheep and goats are one family). Meat: 0 days or 1 day, Article 115(1)(a)(iii). Milk: 1 day in both cases, Article 115(1)(b)(iii).',
    "A 0 in label_days never stands for a zero period, since a blank cell may arrive as 0: choose one of the two zero bases.",
    "vet_days is the period the vet has set. If it is longer it stands; if it is shorter the least of the law stands.",
    'Region "GB" is the Veterinary Medicines Regulations 2013, Schedule 4 paragraph 2(3), from May 2024. Its milk rules were read. Its meat rules (× 1.5, 28 days) were only read about, and no one-day rule for meat was found: the European day is used, which is never shorter. Before May 2024 it was a flat 28 days for meat and 7 for milk, whatever the label; that is not offered.',
    'A country is no region: England, Scotland and Wales take the rule of "GB"; the countries of the European Union and, from memory, Northern Ireland take that of "EU". Where neither is the law, neither is taken: ask your vet.',
    "The rounding up was not read in the law; it is the safe side.",
    "A period given in hours: divide by 24, so 84 hours are 3.5 days.",
  ],
  parameters: {
    label_days: gappedColumn(
      between(0, 3650, "the longest period on the label in days,"),
      "Longest period on the label for this produce, in days; blank when not authorised",
    ),
    produce: column(choice(...produces), '"meat" or "milk"', { repeats: true }),
    basis: column(choice(...bases), "What the label says; see the rules", { repeats: true }),
    region: oneOr(
      choiceOr(regions, () => noRegion),
      "EU",
      '"EU", or "GB" for Great Britain',
    ),
    vet_days: gappedColumnOrNone(wholeDays, "Days set by the vet, if any"),
  },
  result: alongside("least withdrawal days", "days"),
  caution: cautions.offLabel,
  sources: [
    sources.eu2019art115,
    sources.eu2019rounding,
    sources.gbCascadeMilk,
    sources.gbCascadeMeat,
    sources.northernIreland,
  ],
  compute: ({ label_days, produce, basis, region, vet_days }) =>
    basis.map((word, index) =>
      atRow(index, () =>
        cascadeDays(
          {
            labelDays: label_days[index],
            produce: produce[index] ?? "meat",
            basis: word,
            vetDays: vet_days?.[index],
          },
          region,
        ),
      ),
    ),
  examples: [
    { shows: "35 days on the label, rounded up from 52.5", call: [35, "meat", "authorised"], gives: 53 },
    { shows: "Not for food animals at all", call: [null, "meat", "not authorised for food animals"], gives: 28 },
    { shows: "Not for milk animals", call: [null, "milk", "not authorised for milk animals"], gives: 7 },
    { shows: "A zero period, from cattle to sheep", call: [0, "meat", "zero period, same family"], gives: 0 },
    { shows: "A zero period, from pigs to sheep", call: [0, "meat", "zero period, another family"], gives: 1 },
    { shows: "84 hours on the label for milk", call: [3.5, "milk", "authorised", "GB"], gives: 6 },
    {
      shows: "The vet has set 42 days, longer than the law asks",
      call: [5, "meat", "authorised", "GB", 42],
      gives: 42,
    },
    {
      shows: "A column of products, one row left blank",
      call: [[5, null, 7, 35], "meat", "authorised"],
      gives: [[8], [""], [11], [53]],
    },
    {
      call: [null, "meat", "authorised"],
      gives: problem(
        "label_days: it is blank; enter the longest meat period on the label, or say in basis that the product is not authorised",
      ),
    },
    {
      call: [0, "milk", "authorised"],
      gives: problem(
        'label_days: it is 0 or blank; when the label says 0 days, enter "zero period, same family" or "zero period, another family" as the basis',
      ),
    },
    {
      call: [
        [28, 5],
        ["meat", "meat"],
        ["authorised", "not authorised for food animals"],
      ],
      gives: problem(
        'label_days, row 2: 5 days do not go with the basis "not authorised for food animals"; leave label_days blank, or enter "authorised" as the basis',
      ),
    },
    {
      call: [null, "meat", "not authorised for milk animals"],
      gives: problem(
        'basis: for meat it does not matter whether the product is authorised for milk animals; enter "authorised" or "not authorised for food animals"',
      ),
    },
    {
      shows: "A country in the place of the region",
      call: [28, "meat", "authorised", "Scotland"],
      gives: problem(
        'region: "Scotland" names no rule that is known here; enter "GB" for England, Scotland and Wales, and "EU" for a country of the European Union or for Northern Ireland; anywhere else neither is the law, so ask your vet',
      ),
    },
    {
      call: [28, "wool", "authorised"],
      gives: problem('produce: "wool" is not a choice here; enter one of: "meat", "milk"'),
    },
  ],
});
