import { type CareStep, carePlan } from "../../src/core/careplans/carePlan.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { lesion, yesNo } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const headings = ["step", "what", "why", "caution"] as const;

type StepText = readonly [what: string, why: string, caution: string];

const medicine = "Only as your vet prescribed; read the data sheet.";

const lookAgain: StepText = [
  "Look at her again in 7 days (RECHECKDUE). Not better: to the vet.",
  "Most feet that were treated right are clearly better in a week; one that is not may be something else.",
  "",
];

const everyCase: readonly StepText[] = [
  [
    "Ask your vet whether she needs something against the pain.",
    "A lame foot hurts, and a sheep in pain eats less and stays behind.",
    `${medicine} It has withdrawal days of its own.`,
  ],
  ["Disinfect hands and knife before the next animal.", "They carry the infection from foot to foot.", ""],
  [
    "Mark her, and write down: tag, date, lesion, feet treated, what was given and how much, withdrawal days.",
    "Without a record nobody knows when she is clear or that it is her second case.",
    "Write the withdrawal days down even when they are 0.",
  ],
  [
    "Work out the clear date (CLEARDATE) before she goes for food. Her milk has days of its own.",
    "The withdrawal period runs from the last dose, and data sheets give one for meat and another for milk.",
    "Days that are missing are not 0 days: hold her until you know them.",
  ],
  [
    "Keep her apart at housing, turnout and weaning until she is sound.",
    "Where sheep are crowded or come onto clean ground, one lame sheep infects many.",
    "",
  ],
  [
    "Two cases in one season: consider culling her.",
    "A few sheep that fall ill again and again keep the infection in the flock.",
    "",
  ],
];

const planOf = (...steps: readonly StepText[]) => [
  headings,
  ...[...steps, ...everyCase].map((step, place) => [place + 1, ...step]),
];

export const carePlanFunction = defineFunction({
  name: "CAREPLAN",
  topic: "treatment",
  summary: "What to do with a lame sheep, step by step, from what was found on the foot.",
  questions: [
    "how to treat footrot",
    "what to do with a white line abscess",
    "should I trim this foot",
    "what now with this lame sheep",
    "treat scald or CODD",
  ],
  notes: [
    "The lesion is read as LESIONNAME reads it.",
    "In a flock that has footrot, interdigital dermatitis is treated as footrot. In a flock that has contagious ovine digital dermatitis, other lesions get a look at the top of the hoof, and the step for a first case is left out.",
    "pus_drained matters for a white line abscess and a foreign body; severe for footrot and contagious ovine digital dermatitis.",
    "It names no medicine and no dose.",
  ],
  parameters: {
    lesion: one(lesion, "What was found on the foot"),
    flock_has_footrot: oneOr(yesNo, false, "Whether the flock has footrot"),
    flock_has_codd: oneOr(yesNo, false, "Whether the flock has contagious ovine digital dermatitis"),
    pus_drained: oneOr(yesNo, false, "Whether the pus has been let out"),
    severe: oneOr(yesNo, false, "Loose or bent horn"),
  },
  result: table<CareStep>(
    "no steps",
    ["step", "count", ({ step }) => step],
    ["what", "text", ({ what }) => what],
    ["why", "text", ({ why }) => why],
    ["caution", "text", ({ caution }) => caution],
  ),
  caution: cautions.carePlan,
  sources: [sources.practice, sources.promptTreatment, sources.kaler2010, sources.quarantineWeeks],
  compute: ({ lesion, flock_has_footrot, flock_has_codd, pus_drained, severe }) =>
    carePlan(lesion, {
      flockHasFootrot: flock_has_footrot,
      flockHasCodd: flock_has_codd,
      pusDrained: pus_drained,
      severe,
    }),
  examples: [
    {
      shows: "Scald in a flock without footrot",
      call: ["scald"],
      gives: planOf(
        [
          "Look along the edge of the horn. Horn lifting or a foul smell: follow the plan for footrot.",
          "Scald stays in the skin; once the horn lifts it is footrot.",
          "",
        ],
        [
          "Treat the skin between the claws from outside, such as with a spray.",
          "The trouble is in the skin, and does not reach under the horn.",
          medicine,
        ],
        [
          "Many in the group have it: ask your vet about a footbath for all of them (BATHLITRES, BATHMIX).",
          "Scald runs through a group, lambs above all, and one by one takes too long.",
          "",
        ],
        ["Do not trim.", "There is no loose horn to take away, and a cut lets infection in.", ""],
        [
          "Blisters or raw sores on feet, mouth or teats, or many sheep suddenly lame or feverish: move none, and ring your vet at once.",
          "It may be a disease that must by law be reported.",
          "",
        ],
        lookAgain,
      ),
    },
    {
      shows: "Severe footrot",
      call: ["footrot", true, undefined, undefined, true],
      gives: planOf(
        [
          "Treat her the day you see her lame, at most within 3 days.",
          "She heals sooner, and has less time to infect the others.",
          "",
        ],
        [
          "Inject the long-acting antibiotic that your vet prescribed, where its data sheet says: mostly into the muscle.",
          "The infection sits under the horn, where nothing put on from outside reaches it.",
          medicine,
        ],
        [
          "Share the volume over two sites, one on each side, unless the data sheet says otherwise. Draw back before you inject.",
          "A long-acting injection is absorbed over about two days and irritates the muscle; half in each place hurts less and is taken up better.",
          `${medicine} Choose the site that the data sheet allows, away from major nerves. Blood in the syringe: take the needle out and choose another place. If you prick yourself, get medical help and take the data sheet along.`,
        ],
        ["Spray all four feet while she is caught.", "The other feet may carry it before it shows.", medicine],
        [
          "Do not trim.",
          "Trimmed feet heal more slowly, and blood and horn carry the infection to knife and ground.",
          "",
        ],
        [
          "Look at her again in 7 days (RECHECKDUE). Only then decide whether loose or bent horn must come away. Not better: to the vet.",
          "Once the infection is gone much of the horn grows right by itself, and what is loose then comes away without pain.",
          "Never into living horn, and never until it bleeds.",
        ],
      ),
    },
    {
      shows: "A white line abscess before the pus is out",
      call: ["WLA"],
      gives: planOf(
        [
          "Make sure of the foot: very lame, and one claw hot.",
          "The pus is shut in between horn and flesh, and presses.",
          "",
        ],
        [
          "Let the pus out first: take out the stone or thorn, and open one small hole where the line is soft or dark.",
          "Once the pus runs the pain goes, mostly within a day or two.",
          "A small hole is enough. Stop before it bleeds. No pus found: to the vet.",
        ],
        [
          "No antibiotic yet.",
          "Given before it drains, the abscess may form again.",
          `${medicine} Once it has drained, ask for this plan again with pus_drained.`,
        ],
        ["Do not strip the wall.", "She walks on it; bare flesh is slow to grow horn.", ""],
        [
          "No weight on the foot, a swelling above the hoof, or not clearly better two days after the pus ran: to the vet today.",
          "The pus may have reached the joint.",
          "",
        ],
        lookAgain,
      ),
    },
    {
      call: ["limping"],
      gives: problem(
        'lesion: "limping" is not a lesion known here; use one of: interdigital dermatitis, footrot, contagious ovine digital dermatitis, white line abscess, shelly hoof, toe granuloma, joint infection, foreign body, other, no lesion',
      ),
    },
    {
      call: ["footrot", "perhaps"],
      gives: problem('flock_has_footrot: "perhaps" is neither yes nor no; enter TRUE or FALSE'),
    },
  ],
});
