import type { AnyFunction } from "../definition/defineFunction.ts";
import { namespace } from "../definition/formulaText.ts";
import { type Topic, topics } from "../definition/topics.ts";

/** The list of all functions by topic, in Markdown. */
export function functionIndex(catalogue: readonly AnyFunction[]): string {
  const sections = (Object.keys(topics) as Topic[]).flatMap((topic) => {
    const members = catalogue.filter((definition) => definition.topic === topic);
    if (members.length === 0) return [];
    return [
      `## ${topics[topic]}`,
      members.map(({ name, summary }) => `- [${namespace}.${name}](${name}.md): ${summary}`).join("\n"),
    ];
  });
  return [
    "# The worksheet functions",
    `Type \`=${namespace}.NAME(…)\` in Excel, LibreOffice Calc, the practice sheet and workbooks for the command line; \`=${namespace}_NAME(…)\` in Google Sheets.`,
    "Where a message or a table names a row, it counts from the first row of the range in the formula: row 1 of `A2:A50` is row 2 of the sheet.",
    ...sections,
  ]
    .join("\n\n")
    .concat("\n");
}
