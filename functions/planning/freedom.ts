import { freedom } from "../../src/core/planning/freedom.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { count, share } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { findingNotes, findingParameters } from "./findingParameters.ts";

export const freedomFunction = defineFunction({
  name: "FREEDOM",
  summary: "How probable it is that a flock is below the share you name, when none of the sheep looked at was lame.",
  questions: ["is the flock free of footrot", "none found: how sure are we", "probability of freedom from disease"],
  notes: [
    ...findingNotes,
    "Only for a look that found none. It says how probable it is that the flock has less than design_prevalence, never that it has none.",
    "prior is how probable you thought that before looking. 0.5 says that you did not know; what was bought in or seen before belongs into it.",
  ],
  parameters: {
    flock_size: findingParameters.flock_size,
    looked_at: one(count("sheep looked at"), "Sheep looked at, none of them lame, each counted once"),
    design_prevalence: findingParameters.design_prevalence,
    sensitivity: findingParameters.sensitivity,
    prior: oneOr(share, 0.5, "How probable you thought it before looking: 0.5 is not known"),
    method: findingParameters.method,
  },
  result: single("probability of being below", "share"),
  caution: undefined,
  sources: [sources.martin2007, sources.cameronBaldock1998, sources.macDiarmid1988],
  compute: ({ flock_size, looked_at, design_prevalence, sensitivity, prior, method }) =>
    freedom(
      { flockSize: flock_size, lookedAt: looked_at, designPrevalence: design_prevalence, sensitivity },
      prior,
      method,
    ),
  examples: [
    {
      shows: "19 looked at of 20 of which one would be lame: a chance of 0.95 of finding it",
      call: [20, 19, 0.05],
      gives: about(0.9523809524),
    },
    { shows: "None looked at: what was thought before still stands", call: [100, 0, 0.05, 1, 0.7], gives: about(0.7) },
    { shows: "A look that finds 8 of 10", call: [300, 54, 0.05, 0.8, 0.5], gives: about(0.9151825943) },
    {
      shows: "The same by the usual approximation",
      call: [300, 54, 0.05, 0.8, 0.5, "formula"],
      gives: about(0.9115148821),
    },
    {
      call: [20, 21, 0.05],
      gives: problem("looked_at: 21 is more than the 20 sheep of the flock; enter each sheep looked at once"),
    },
    {
      call: [20, 19, 0.05, 1, 50],
      gives: problem("prior: 50 is above 1; enter a share from 0 to 1, such as 0.05 or 5%"),
    },
  ],
});
