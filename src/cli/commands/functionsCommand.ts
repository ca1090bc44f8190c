import type { ListedFunction } from "../../definition/defineFunction.ts";
import { namespace, signature } from "../../definition/formulaText.ts";
import { functionPage } from "../../definition/functionPage.ts";
import { type Topic, topics } from "../../definition/topics.ts";
import { BadInput } from "../badInput.ts";
import type { Command } from "../command.ts";
import { readOptions } from "../readOptions.ts";

/** Prints the reference: every function in a line, or one of them whole. */
export const functionsCommand: Command = {
  name: "functions",
  takes: "[NAME]",
  summary: "print the worksheet functions, or one of them with its rules and examples",
  details: `NAME   the name of a function, in any of these forms: CLEARDATE, foot.cleardate, =FOOT_CLEARDATE(

The list can be searched: soundfold functions | more`,
  run: async (given, { say }) => {
    const [wanted] = readOptions("functions", given, {}, 1).positionals;
    // Loaded here, so that the other commands start without every definition.
    const { catalogue } = await import("../../../functions/catalogue.ts");
    say(wanted === undefined ? listOfAll(catalogue) : pageOf(wanted, catalogue));
  },
};

function pageOf(wanted: string, catalogue: readonly ListedFunction[]): string {
  const name = wanted
    .toUpperCase()
    .replace(/^=/, "")
    .replace(new RegExp(`^${namespace}[._]`), "")
    .replace(/\(.*$/, "");
  const definition = catalogue.find((candidate) => candidate.name === name);
  if (!definition) throw new BadInput(`There is no function ${wanted}; soundfold functions lists them all.`);
  return functionPage(definition).trimEnd();
}

const listOfAll = (catalogue: readonly ListedFunction[]): string =>
  (Object.entries(topics) as [Topic, string][])
    .map(([topic, words]) => ({ words, functions: catalogue.filter((definition) => definition.topic === topic) }))
    .filter(({ functions }) => functions.length > 0)
    .map(({ words, functions }) =>
      [words, ...functions.map((definition) => `  =${signature(definition)}\n      ${definition.summary}`)].join("\n"),
    )
    .join("\n\n");
