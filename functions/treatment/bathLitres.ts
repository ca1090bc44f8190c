import { bathLitres } from "../../src/core/treatment/bathLitres.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { between } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const width = between(5, 500, "a width in cm");

export const bathLitresFunction = defineFunction({
  name: "BATHLITRES",
  summary: "How many litres a footbath holds, with straight or slanting sides.",
  questions: ["how many litres in the footbath", "volume of a foot bath", "how much water does the trough hold"],
  notes: [
    "Measure inside, in cm: the length, the width at the surface of the liquid, and the depth of the liquid, not of the trough.",
    "Mean width × depth × length. Without a base width the sides are straight.",
    "Lengths typed in metres or mm fall outside what is accepted, and are refused.",
  ],
  parameters: {
    length_cm: one(between(30, 5000, "a length in cm"), "Length inside, in cm"),
    top_width_cm: one(width, "Width at the surface of the liquid, in cm"),
    depth_cm: one(between(1, 150, "a depth in cm"), "Depth of the liquid, in cm"),
    base_width_cm: oneOrNone(width, "Width at the bottom, in cm, when the sides slant"),
  },
  result: single("litres", "number"),
  caution: cautions.footbath,
  sources: [sources.practice],
  compute: ({ length_cm, top_width_cm, depth_cm, base_width_cm }) =>
    bathLitres({ lengthCm: length_cm, topWidthCm: top_width_cm, depthCm: depth_cm, baseWidthCm: base_width_cm }),
  examples: [
    { shows: "3 m long, 30 cm wide, 6 cm deep", call: [300, 30, 6], gives: 54 },
    { shows: "60 cm wide at the top, 40 cm at the bottom", call: [300, 60, 15, 40], gives: 225 },
    {
      shows: "Metres in the place of cm",
      call: [3, 30, 6],
      gives: problem("length_cm: 3 is below 30; enter a length in cm from 30 to 5000"),
    },
    {
      call: [300, 30, 0.06],
      gives: problem("depth_cm: 0.06 is below 1; enter a depth in cm from 1 to 150"),
    },
  ],
});
