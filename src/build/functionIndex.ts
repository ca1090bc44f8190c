import type { ListedFunction } from "../definition/defineFunction.ts";
import { namespace } from "../definition/formulaText.ts";
import { type Topic, topics } from "../definition/topics.ts";

/** The list of all functions by topic, in Markdown. */
export function functionIndex(catalogue: readonly ListedFunction[]): string {
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
    "## How to read these pages",
    [
      "Each page has the formula, a table of what to put into it, and examples that you can copy. Put your own cells in the place of those in the example: click into the formula and mark them with the mouse.",
      "`[name]` in square brackets may be left out; the table says what is taken then. Leave the brackets themselves out. To leave out one in the middle, keep its comma: `(A2:A5, 20, 200, , , 20)`.",
      "Where your computer writes 0,5 and not 0.5, type a semicolon where a comma stands between two arguments: `(A2:A5; B2:B5)`.",
      "A share is a part of 1: 0.05 is 5%. Format the cell as percent to see it so.",
      "A date is a number to a spreadsheet: where a cell shows one such as 46095, format it as a date. Into a formula type a day as `DATE(2026,3,14)`; today is `TODAY()`.",
      "(blank) stands for a cell that shows nothing. A number with *about* before it is rounded here, not in the sheet.",
      "Give columns without their headings, and all columns of one formula the same rows: `A2:A50` and `B2:B50`. Leave room below for new records; blank rows do no harm.",
      "Where a message or a table names a row, it counts from the first row of the range in the formula: row 1 of `A2:A50` is row 2 of the sheet.",
      "`#VALUE!` means that something was refused, `#N/A` that there is nothing to report. Where the sentence behind it is shown is on the page of your program in [installing](../install/README.md).",
    ]
      .map((line) => `- ${line}`)
      .join("\n"),
    ...sections,
  ]
    .join("\n\n")
    .concat("\n");
}
