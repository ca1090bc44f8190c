import { type CareStep, carePlan } from "../../src/core/treatment/carePlans/carePlan.ts";
import { lesions } from "../../src/core/words/lesionName.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { lesion, yesNo } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const headings = ["step", "what", "why", "caution"] as const;

type StepText = readonly [what: string, why: string, caution: string];

const medicine =
  "Only as your vet prescribed; read the data sheet, keep to its route and write its withdrawal days down.";

const maybeReportable: StepText = [
  "Blisters or raw sores on feet, mouth or teats, or many sheep suddenly lame or feverish: move and treat none, and ring your vet or the authority at once.",
  "It may be a disease that must by law be reported, such as foot-and-mouth disease or bluetongue. Look at mouth and teats too: sheep may show little but lameness.",
  "Wear gloves where the skin is sore, and wash your hands: orf infects people.",
];

const bathLimits: StepText = [
  "No antibiotic in a footbath unless your vet has prescribed that, and no formalin bath for raw feet.",
  "An antibiotic bath is off its label, breeds resistance and is hard to get rid of; formalin on raw flesh hurts badly.",
  medicine,
];

const lookAgain: StepText = [
  "Look at her again in 7 days. Not better: to the vet.",
  "Most feet that were treated right are clearly better in a week; one that is not may be something else.",
  "",
];

const pain: StepText = [
  "Ask your vet whether she needs something against the pain.",
  "A lame foot hurts, and a sheep in pain eats less and stays behind.",
  `${medicine} It has withdrawal days of its own.`,
];

const writeDown: readonly StepText[] = [
  [
    "Mark her, and write down: tag, date, lesion, feet treated, what was given, how much, by which route, batch, withdrawal days.",
    "Without a record nobody knows when she is clear or that it is her second case.",
    "Write the withdrawal days down even when they are 0.",
  ],
  [
    "Work out the clear date before she goes for food. Her milk has days of its own.",
    "The withdrawal period runs from the last dose, and data sheets give one for meat and another for milk.",
    "Days that are missing are not 0 days: hold her until you know them.",
  ],
  [
    "Load her only when she walks without pain and bears weight on every foot; in doubt ask your vet first whether she may be loaded at all.",
    "The transport law of the EU and of Great Britain calls an animal that cannot move without pain unfit for the journey, be it to market or to slaughter.",
    "",
  ],
];

const kill: StepText = [
  "She cannot rise, bears no weight although she was treated, or her pain cannot be eased: ask your vet the same day whether to have her killed humanely.",
  "A sheep that cannot get better must not be left to suffer.",
  "",
];

const rules: StepText = [
  "Ask what else binds you: some countries want footrot and other diseases reported, and organic rules have limits and withdrawal periods of their own.",
  "Law and certifier differ from place to place, and none of it can be seen from here.",
  "",
];

const everyCase: readonly StepText[] = [
  pain,
  ["Disinfect hands and knife before the next animal.", "They carry the infection from foot to foot.", ""],
  ...writeDown,
  [
    "Keep her apart until she is sound, at housing, turnout and weaning above all.",
    "Where sheep are crowded or come onto clean ground, one lame sheep infects many.",
    "",
  ],
  kill,
  [
    "Two cases in one season: consider culling her, once she is sound and clear.",
    "A few sheep that fall ill again and again keep the infection in the flock.",
    "",
  ],
  rules,
];

const notCatching: readonly StepText[] = [
  pain,
  ...writeDown,
  [
    "Keep her on dry ground, near feed and water, until she is sound.",
    "She does not walk far on a sore foot, and falls off in condition.",
    "",
  ],
  kill,
  [
    "The same again in one season: ask your vet why.",
    "What comes back has a cause in ground, handling, trimming or breeding.",
    "",
  ],
  rules,
];

const planOf = (...steps: readonly StepText[]) => [headings, ...steps.map((step, index) => [index + 1, ...step])];

export const carePlanFunction = defineFunction({
  name: "CAREPLAN",
  summary: "What to do with a lame sheep, step by step, from what was found on the foot.",
  questions: [
    "how to treat footrot",
    "what to do with a white line abscess",
    "should I trim this foot",
    "what now with this lame sheep",
    "treat scald or CODD",
    "trimming",
    "scald",
    "fit to travel",
    "fit to load",
  ],
  notes: [
    "The lesion is read as LESIONNAME reads it. With a question mark the plan begins with making sure; of two lesions it is the graver's, and names the other.",
    "Where the skin is sore, or it is not sure what it is, the plan begins with the look for a disease that must be reported. Steps against infection stand only where it passes from sheep to sheep, or may.",
    "In a flock that has footrot, interdigital dermatitis is treated as footrot, but for lambs as your vet says. In a flock that has contagious ovine digital dermatitis, other lesions get a look at the top of the hoof, and the step for a first case is left out.",
    "pus_drained matters for a white line abscess and a foreign body; severe for footrot and contagious ovine digital dermatitis.",
    "The steps are plain words, to be read by whoever treats. The functions that go with them: RECHECKDUE for the second look, CLEARDATE for the clear date, SITEML for the sites of an injection, KEEPAPART for whom to keep apart, BATHLITRES, BATHMIX and BATHSHEEP for a footbath, QUARANTINEEND for bought sheep.",
    "It names no medicine and no dose. What each step rests on, and how sure that is: docs/methods/care.md.",
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
  sources: [
    sources.practice,
    sources.promptTreatment,
    sources.footrotAdvice,
    sources.kaler2010,
    sources.laven2012,
    sources.smith2014,
    sources.coddAdvice,
    sources.footbathAdvice,
    sources.antibioticBaths,
    sources.west1983,
    sources.granulomas,
    sources.footAndMouth,
    sources.bluetongue,
    sources.orfAdvice,
    sources.transport2005,
    sources.reportableFootrot,
    sources.organicWithdrawal,
    sources.quarantineWeeks,
  ],
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
        maybeReportable,
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
          "Many in the group have it: ask your vet about a footbath for all of them.",
          "Scald runs through a group, lambs above all, and one by one takes too long.",
          medicine,
        ],
        bathLimits,
        ["Do not trim.", "There is no loose horn to take away, and a cut lets infection in.", ""],
        lookAgain,
        ...everyCase,
      ),
    },
    {
      shows: "Severe footrot",
      call: ["footrot", true, undefined, undefined, true],
      gives: planOf(
        maybeReportable,
        [
          "Treat her the day you see her lame, at most within 3 days.",
          "She heals sooner, and has less time to infect the others.",
          "",
        ],
        [
          "Inject the long-acting antibiotic that your vet prescribed.",
          "The infection sits under the horn, where nothing put on from outside reaches it.",
          medicine,
        ],
        [
          "Inject by the route, at the place and over as many sites as the data sheet or your vet says. Draw back before you inject into a muscle.",
          "Route, place and the most in one site belong to the product; given otherwise, its withdrawal days no longer hold.",
          `${medicine} Keep away from major nerves. Blood in the syringe: take the needle out and choose another place. If you prick yourself, get medical help and take the data sheet along.`,
        ],
        [
          "Clean between the claws, and spray all four feet while she is caught.",
          "The other feet may carry it before it shows.",
          medicine,
        ],
        [
          "Do not trim.",
          "Trimmed feet heal more slowly, and blood and horn carry the infection to knife and ground.",
          "",
        ],
        bathLimits,
        [
          "Look at her again in 7 days. Only then decide whether loose or bent horn must come away. Not better: to the vet.",
          "Once the infection is gone much of the horn grows right by itself, and what is loose then comes away without pain.",
          "Never into living horn, and never until it bleeds.",
        ],
        [
          "More than a few cases: plan for the whole flock with your vet, vaccination included.",
          "Treating one by one does not keep up with an infection that spreads faster.",
          medicine,
        ],
        ...everyCase,
      ),
    },
    {
      shows: "A white line abscess before the pus is out, with a slip of the hand",
      call: ["white line abcess"],
      gives: planOf(
        [
          'What you wrote was read as "white line abscess". If you meant something else, ask for its plan.',
          "The two words differ by one slip of the hand.",
          "",
        ],
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
          "Ask your vet whether she is covered against tetanus.",
          "It comes from dirt in a deep hole, and a sheep that has it mostly dies.",
          medicine,
        ],
        [
          "No weight on the foot, a swelling above the hoof, or not clearly better two days after the pus ran: to the vet today.",
          "The pus may have reached the joint.",
          "",
        ],
        lookAgain,
        ...notCatching,
      ),
    },
    {
      call: ["limping"],
      gives: problem(`lesion: "limping" is not a lesion known here; use one of: ${lesions.join(", ")}`),
    },
    {
      call: ["footrot", "perhaps"],
      gives: problem('flock_has_footrot: "perhaps" is neither yes nor no; enter TRUE or FALSE'),
    },
  ],
});
