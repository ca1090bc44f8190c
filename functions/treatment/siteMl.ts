import { Problem } from "../../src/cells/problem.ts";
import { siteMl } from "../../src/core/treatment/siteMl.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { countFrom, positive } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { list } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { markMl } from "./dosingParameters.ts";

export const siteMlFunction = defineFunction({
  name: "SITEML",
  summary: "How to share a dose over several injection sites, in ml for each site.",
  questions: ["how much in each side", "split the injection over two sites", "most ml per injection site"],
  notes: [
    "How many sites there are, and the most in one, is for the data sheet or your vet to say: give one of the two. With the most in one site alone there are as many sites as that needs.",
    "The parts add up to the volume exactly. They are as equal as the marks allow, the larger ones first.",
    "Sites are added until no part is more than the most per site; the most is never passed by rounding. More than 10 sites are refused, and so is a volume above 60 ml.",
    "A volume that does not fall on a mark is refused, since its parts could not be measured. DOSEML with the same mark gives one that does.",
  ],
  parameters: {
    volume_ml: one(positive("a volume in ml"), "The whole dose in ml"),
    sites: oneOrNone(countFrom(1, "sites"), "How many sites at least, as the data sheet or your vet allows"),
    max_per_site_ml: oneOrNone(positive("ml in one site"), "The most ml in one site, from the data sheet"),
    mark_ml: markMl,
  },
  result: list("ml for each site", "ml"),
  caution: cautions.dosing,
  sources: [sources.practice],
  compute: ({ volume_ml, sites, max_per_site_ml, mark_ml }) => {
    if (sites === undefined && max_per_site_ml === undefined)
      throw new Problem(
        "it is blank, and so is max_per_site_ml; enter the sites, or the most ml in one site, that the data sheet or your vet allows",
        { argument: "sites" },
      );
    return siteMl(volume_ml, { sites: sites ?? 1, maxPerSiteMl: max_per_site_ml, markMl: mark_ml });
  },
  examples: [
    { shows: "7.5 ml at most 5 ml a site", call: [7.5, 2, 5], gives: [[3.8], [3.7]] },
    { shows: "The same with a finer syringe", call: [7.5, 2, 5, 0.05], gives: [[3.75], [3.75]] },
    { shows: "12 ml need a third site", call: [12, 2, 5], gives: [[4], [4], [4]] },
    {
      shows: "Rounding would pass 3.75 ml a site, so there are three",
      call: [7.5, 2, 3.75],
      gives: [[2.5], [2.5], [2.5]],
    },
    { shows: "Two sites, without a most in one", call: [6.1, 2], gives: [[3.1], [3]] },
    { shows: "As many sites as the most in one needs", call: [6.1, undefined, 5], gives: [[3.1], [3]] },
    {
      shows: "Nobody has said how many sites are allowed",
      call: [6.1],
      gives: problem(
        "sites: it is blank, and so is max_per_site_ml; enter the sites, or the most ml in one site, that the data sheet or your vet allows",
      ),
    },
    {
      call: [7.53, 2],
      gives: problem(
        "volume_ml: 7.53 ml does not fall on a mark of 0.1 ml; enter the dose to the mark, such as 7.5, or a finer mark",
      ),
    },
    {
      call: [0.1, 2],
      gives: problem(
        "volume_ml: 0.1 ml is too little to share over 2 sites at a mark of 0.1 ml; enter fewer sites or a finer mark",
      ),
    },
    {
      call: [30, 2, 2],
      gives: problem(
        "max_per_site_ml: 30 ml at most 2 ml a site needs 15 sites, more than 10; ask your vet for another way to give it",
      ),
    },
    {
      call: [30, 2, 0.05],
      gives: problem("max_per_site_ml: 0.05 ml is less than one mark of 0.1 ml; enter a finer mark"),
    },
    {
      shows: "A decimal point left out",
      call: [375, 2],
      gives: problem(
        "volume_ml: 375 ml for one animal cannot be right; enter the dose in ml, at most 60, or ask your vet",
      ),
    },
    { call: [30, 12], gives: problem("sites: 12 sites are more than 10; enter fewer, or ask your vet") },
  ],
});
