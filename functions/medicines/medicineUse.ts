import { animalsFault, medicineUse, type ProductUse, productFault } from "../../src/core/medicines/medicineUse.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { countFrom, positive } from "../../src/reading/numbers.ts";
import { column, gappedColumnOrNone, leavingOut } from "../../src/reading/parameter.ts";
import { nameText } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { leftOutNote } from "../leftOutNote.ts";
import { sources } from "../sources.ts";
import { pcuNotes, pcuParameters } from "./pcuParameters.ts";

const headings = ["product", "courses", "ml", "mg active", "mg/PCU"] as const;

export const medicineUseFunction = defineFunction({
  name: "MEDICINEUSE",
  summary: "How much of each medicine was used, by product and all together.",
  questions: [
    "how much of each medicine did we use",
    "antibiotic use by product",
    "medicine totals of the year",
    "report for the vet",
  ],
  notes: [
    "A row is one course of one animal, or of a group: then groups names it and animals says how many there were, and ml is what each was given. A group without its number of animals is left out.",
    "Products are listed in order of first appearance, then all; capitals and spaces do not make another product.",
    "A spray or a footbath is not given in ml a sheep: leave it out here.",
    "One cell of mg_per_ml may stand for the whole column. A strength of 20 % is 200 mg per ml.",
    ...pcuNotes,
    leftOutNote,
  ],
  parameters: {
    products: leavingOut(column(nameText("the name of a product"), "Product of each course")),
    ml: leavingOut(column(positive("ml given"), "ml given in each course, the same rows")),
    mg_per_ml: leavingOut(
      column(positive("mg of active substance in each ml"), "Strength: mg in each ml, the same rows", {
        repeats: true,
      }),
    ),
    ...pcuParameters,
    groups: leavingOut(
      gappedColumnOrNone(
        nameText("the name of a group"),
        "The group, in rows where a whole group was treated; blank for one animal; the same rows",
      ),
    ),
    animals: leavingOut(
      gappedColumnOrNone(
        countFrom(1, "animals"),
        "How many animals were given the ml each; blank for one; the same rows",
      ),
    ),
  },
  result: table<ProductUse>(
    "no courses",
    ["product", "text", ({ product }) => product],
    ["courses", "count", ({ courses }) => courses],
    ["ml", "ml", ({ ml }) => ml],
    ["mg active", "number", ({ activeMg }) => activeMg],
    ["mg/PCU", "rate", ({ mgPerPcu }) => mgPerPcu],
  ),
  caution: cautions.medicineUse,
  sources: [sources.esvacWeights],
  rowFault: ({ products, groups, animals }, index) =>
    productFault(products, index) ?? animalsFault(groups, animals, index),
  compute: ({ products, ml, mg_per_ml, breeding_sheep, slaughter_lambs, animals }) =>
    medicineUse({ products, ml, mgPerMl: mg_per_ml, animals }, breeding_sheep, slaughter_lambs),
  examples: [
    {
      shows: "Two products, a blank row, 31,500 kg of sheep",
      call: [["A", "B", null, " a"], [7.6, 10, null, 7.7], [200, 300, null, 200], 300, 450],
      gives: [
        headings,
        ["A", 2, 15.3, 3060, about(3060 / 31500)],
        ["B", 1, 10, 3000, about(3000 / 31500)],
        ["all", 3, 25.3, 6060, about(6060 / 31500)],
      ],
    },
    {
      shows: "One strength for the whole column",
      call: [["A", "A"], [7.5, 6], 200, 300, 450],
      gives: [headings, ["A", 2, 13.5, 2700, about(2700 / 31500)], ["all", 2, 13.5, 2700, about(2700 / 31500)]],
    },
    {
      shows: "A ewe, 23 lambs treated as a group, and a group without its number",
      call: [["A", "A", "A"], [7.5, 2, 2], 200, 300, 450, [null, "Lambs", "Hoggs"], [null, 23, null]],
      gives: [
        headings,
        ["A", 24, 53.5, 10700, about(10700 / 31500)],
        ["all", 24, 53.5, 10700, about(10700 / 31500)],
        [
          "1 row left out; to mend: animals, row 3: Hoggs was treated as a group, but not how many; enter the number of animals",
          "",
          "",
          "",
          "",
        ],
      ],
    },
    {
      shows: "No courses yet",
      call: [[null], [null], [null], 300, 450],
      gives: [headings, ["no courses", "", "", "", ""]],
    },
    {
      shows: "A course without its ml, and a total row among the courses",
      call: [["A", "B", "All"], [7.5, null, 7.5], 200, 300, 450],
      gives: [
        headings,
        ["A", 1, 7.5, 1500, about(1500 / 31500)],
        ["all", 1, 7.5, 1500, about(1500 / 31500)],
        [
          "2 rows left out; the first to mend: ml, row 2: it is blank, but the row holds a record; enter ml given, above 0",
          "",
          "",
          "",
          "",
        ],
      ],
    },
    {
      call: [["All"], [7.5], [200], 300, 450],
      gives: problem(
        'products: "all" is the name of the last row of the answer; leave total rows out, or name the product',
      ),
    },
    {
      call: [["A"], [7.5], [200], 0, 0],
      gives: nothing("breeding_sheep: there are no breeding sheep and no slaughter lambs"),
    },
  ],
});
