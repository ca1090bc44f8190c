import { isoText } from "../../cells/day.ts";
import { lesions } from "../../core/words/lesionName.ts";
import { year } from "../inventedFlock/flockYear.ts";
import { inventedFlock } from "../inventedFlock/inventedFlock.ts";
import { printedTag } from "../inventedFlock/printedTag.ts";
import { lesionWords } from "../tables/recordWords.ts";
import type { VisitContent } from "./visitContent.ts";

const monthAgo = year.last - 31;

/** A visit to the invented flock on the last day of its year. The medicine and its numbers are made up. */
export function inventedVisit(seed: number): VisitContent {
  const { animals, gathers, cases } = inventedFlock(seed);
  // One record of each: some were treated twice.
  const lately = cases
    .filter(({ seen }) => seen > monthAgo)
    .filter(
      ({ animal, lesion }, index, all) =>
        all.findIndex((one) => one.animal === animal && one.lesion === lesion) === index,
    );
  const looked = gathers.filter(({ date }) => date > monthAgo);
  const treated = lately.filter(({ medicine, animal }) => medicine === "medicine A" && !animal.group.lambs);
  return {
    farm: "Invented flock",
    made: isoText(year.last),
    invented: true,
    day: year.last,
    adviser: "adviser (invented)",
    target: 0.05,
    plan: { expected: 0.08, margin: 0.02, design: 0.02 },
    flockHas: { footrot: true, codd: false },
    groups: looked.map(({ group, seen, lame }) => ({
      group,
      sheep: Math.max(
        seen,
        animals.filter((animal) => animal.group.name === group && animal.until === year.last).length,
      ),
      lookedAt: seen,
      lame,
    })),
    found: lesions
      .flatMap((lesion) => {
        const its = lately.filter((record) => record.lesion === lesion);
        if (its.length === 0 || lesion === "no lesion found") return [];
        const severe = its.some(({ score }) => score >= 5) ? "yes" : "no";
        return [
          {
            lesion: lesionWords[lesion],
            cases: its.length,
            severe,
            pusLetOut: lesion === "white line abscess" ? "yes" : null,
          },
        ];
      })
      .slice(0, 4),
    medicine: {
      name: "medicine A (invented)",
      mgPerKg: 20,
      mgPerMl: 200,
      mostPerSite: 5,
      bottleMl: 50,
      route: "into the muscle",
      withdrawalDays: 35,
    },
    otherMedicines: [
      { medicine: "medicine C (invented)", route: "under the skin", mgPerKg: 1, mgPerMl: 20, withdrawalDays: 15 },
    ],
    weighed: treated.slice(0, 14).map(({ animal, weightKg }) => ({ animal: printedTag(animal.number), kg: weightKg })),
    bath: { lengthCm: 300, topWidthCm: 30, depthCm: 6, percent: 10, kind: "zinc sulphate heptahydrate" },
    quarantine: { arrived: year.last - 9, sheep: 6, lastNewCase: year.last - 4, baths: 3, bathEvery: 7 },
    agreed: [
      { what: "Catch and treat every lame ewe within 3 days", who: "shepherd", by: year.last + 3, done: "no" },
      { what: "No trimming of lame feet", who: "all", by: null, done: null },
      {
        what: "Keep bought-in sheep apart for 4 weeks",
        who: "shepherd",
        by: year.last + 28,
        done: "no",
      },
      { what: "List the ewes lame twice, for culling", who: "farmer", by: year.last + 30, done: "no" },
    ],
  };
}
