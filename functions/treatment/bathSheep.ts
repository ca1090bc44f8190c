import { type BathSheep, bathSheep } from "../../src/core/treatment/bathSheep.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { between, countFrom, positive } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

export const bathSheepFunction = defineFunction({
  name: "BATHSHEEP",
  summary: "How many fills of the footbath and how many minutes of standing a flock needs, by the data sheet.",
  questions: [
    "how many sheep per footbath fill",
    "how long does footbathing take",
    "how often to change the footbath",
    "how long must they stand in the footbath",
  ],
  notes: [
    "sheep_a_fill and stand_minutes are the product's: take them from its data sheet. They differ widely; zinc sulphate is published with anything from a slow walk to half an hour of standing.",
    "No fill serves more sheep than the data sheet says, and a group in the bath does not go on over a change. A dirty bath is changed sooner.",
    "Where sheep walk through, leave stand_minutes and at_once blank. The minutes are those of standing; moving sheep, filling up and drying off on a clean hard floor come on top.",
  ],
  parameters: {
    sheep: one(countFrom(1, "sheep"), "Sheep to bathe"),
    sheep_a_fill: one(countFrom(1, "sheep to a fill"), "Sheep that one fill serves, from the data sheet"),
    stand_minutes: oneOrNone(between(0.25, 120, "minutes of standing"), "Minutes to stand, from the data sheet"),
    at_once: oneOrNone(countFrom(1, "sheep in the bath at once"), "Sheep that stand in the bath together"),
    litres_a_fill: oneOrNone(positive("litres of one fill"), "Litres of one fill; see BATHLITRES"),
  },
  result: row<BathSheep>(
    ["fills", "count", ({ fills }) => fills],
    ["groups one after the other", "count", ({ rounds }) => rounds],
    ["minutes of standing", "number", ({ minutes }) => minutes],
    ["litres of bath in all", "number", ({ litres }) => litres],
  ),
  caution: cautions.footbath,
  sources: [sources.footbathAdvice, sources.practice],
  compute: ({ sheep, sheep_a_fill, stand_minutes, at_once, litres_a_fill }) =>
    bathSheep({
      sheep,
      sheepAFill: sheep_a_fill,
      minutes: stand_minutes,
      atOnce: at_once,
      litres: litres_a_fill,
    }),
  examples: [
    {
      shows: "450 sheep, 200 to a fill of 200 litres, 30 at once for 3 minutes",
      call: [450, 200, 3, 30, 200],
      gives: [[3, 16, 48, 600]],
    },
    { shows: "They walk through", call: [450, 200], gives: [[3, "", "", ""]] },
    { shows: "A fill that is just used up", call: [400, 200, 3, 30], gives: [[2, 14, 42, ""]] },
    {
      call: [450, 200, 3],
      gives: problem(
        "at_once: it is blank; enter how many stand in the bath together, or leave stand_minutes blank too where they walk through",
      ),
    },
    {
      call: [450, 0, 3, 30],
      gives: problem("sheep_a_fill: 0 is below 1; enter a whole number of sheep to a fill, 1 or more"),
    },
  ],
});
