import { Problem } from "../cells/problem.ts";
import type { Parameter } from "../reading/parameter.ts";
import type { AnyFunction, Example, ListedFunction } from "./defineFunction.ts";
import { type ExampleShown, exampleInSheet, literal } from "./exampleInSheet.ts";
import { namespace, signature } from "./formulaText.ts";
import { resultInWords } from "./resultInWords.ts";
import { methodPages, type Topic, topics } from "./topics.ts";

/** The reference page of one function, in Markdown. */
export function functionPage(definition: ListedFunction): string {
  const parameters = parametersOf(definition);
  const examples: readonly Example[] = definition.examples;
  const answered = examples.filter(({ gives }) => !(gives instanceof Problem));
  const refused = examples.filter(({ gives }) => gives instanceof Problem);
  return [
    `# ${namespace}.${definition.name}`,
    definition.summary,
    ...(definition.caution ? [`> **Take care.** ${definition.caution.words}`] : []),
    "## How to type it",
    `\`=${signature(definition)}\``,
    parameters.length === 0 ? "It takes no arguments." : argumentTable(parameters),
    "## What it gives",
    resultInWords(definition.result),
    ...(definition.notes.length > 0 ? ["## Rules", bullets(definition.notes)] : []),
    "## Examples",
    ...answered.map((example, index) => exampleText(definition, example, index + 1)),
    ...(refused.length > 0
      ? [
          "## When it shows an error",
          errorLead(parameters),
          ...refused.map((example, index) => exampleText(definition, example, answered.length + index + 1)),
        ]
      : []),
    ...(definition.sources.length > 0
      ? [
          "## Sources",
          bullets(
            definition.sources.map(({ cite, checked }) => (cite.includes(checked) ? cite : `${cite} (${checked})`)),
          ),
        ]
      : []),
    `Topic: ${topics[definition.topic].toLowerCase()}. Google Sheets: \`=${namespace}_${definition.name}(${parameters.length > 0 ? "…" : ""})\`. [All functions](README.md)${methodLink(definition.topic)}`,
  ]
    .join("\n\n")
    .concat("\n");
}

function methodLink(topic: Topic): string {
  const page = methodPages[topic];
  return page === undefined ? "" : `. [Why this method, and where it fails](../methods/${page})`;
}

const parametersOf = (definition: AnyFunction): [string, Parameter<unknown>][] => Object.entries(definition.parameters);

const bullets = (lines: readonly string[]): string => lines.map((line) => `- ${line}`).join("\n");

const errorLead = (parameters: readonly [string, Parameter<unknown>][]): string =>
  parameters.some(([, { shape }]) => shape === "column")
    ? "`#VALUE!` means that something was refused, `#N/A` that there is nothing to report. The message says what to mend. A row in a message counts from the first row of the range: row 2 of `A2:A9` is row 3 of the sheet."
    : "`#VALUE!` means that something was refused, `#N/A` that there is nothing to report. The message says what to mend.";

const shapes = { one: "one cell", column: "a cell, a column or a row", block: "a range" } as const;

function argumentTable(parameters: readonly [string, Parameter<unknown>][]): string {
  return markdownTable(
    ["argument", "what to give", "as", "accepted", "if left out"],
    parameters.map(([name, { description, shape, kind, optional, fallback }]) => [
      `\`${name}\``,
      description,
      shapes[shape],
      kind.wanted,
      fallback !== undefined ? `${literal(fallback)} is taken` : optional ? "may be left out" : "must be given",
    ]),
  );
}

function exampleText(definition: AnyFunction, example: Example, index: number): string {
  const { sheet, formula, answer } = exampleInSheet(definition, example);
  const title = example.shows === undefined ? "" : ` ${example.shows}`;
  return [
    `**${index}.${title}**`,
    ...(sheet
      ? [
          markdownTable(
            sheet.headings,
            sheet.rows.map(([row, ...cells]) => [`**${row}**`, ...cells]),
          ),
        ]
      : []),
    `\`${formula}\``,
    answerText(answer),
  ].join("\n\n");
}

function answerText(answer: ExampleShown): string {
  if ("refused" in answer) return `Gives \`${answer.refused}\` with the message: ${answer.message}`;
  if ("one" in answer) return `Gives ${answer.one}`;
  return `Gives\n\n${markdownTable(answer.table.headings, answer.table.rows)}`;
}

function markdownTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(headings), line(headings.map(() => "---")), ...rows.map(line)].join("\n");
}
