import { BadInput } from "../badInput.ts";
import type { Command } from "../command.ts";
import { growSlowly } from "../growSlowly.ts";
import { outputFor } from "../outputFor.ts";
import { readOptions } from "../readOptions.ts";
import { summaryText } from "../summaryText.ts";
import { workOutFile } from "../workOutFile.ts";
import { writeWhole } from "../writeWhole.ts";

/** Works out a workbook and saves it under another name. */
export const recalcCommand: Command = {
  name: "recalc",
  takes: "IN.xlsx [OUT.xlsx] [--force] [--all]",
  summary: "work out the FOOT formulas of a workbook and save it under another name",
  details: `OUT.xlsx   where to save it; without it, beside IN.xlsx with "-worked-out" at the end of its name
--force    replace OUT.xlsx if it is there already; without it nothing is replaced
--all      work out every formula; without it only those that call a FOOT function, have no value
           yet or follow the clock, and all that hang on them. What the spreadsheet has worked out
           for the others stays as it is. A file that asks for a full calculation gets one

IN.xlsx is never changed, whatever is asked. All but the worked-out cells is kept byte for byte.
Cells that end in an error are listed with the sentence that says how to mend them; where many
have the same error, the first three are named and the others counted. Of more than 40
different errors the first 40 are listed and the others counted.`,
  async run(given, terminal) {
    const { values, positionals } = readOptions(
      "recalc",
      given,
      { force: { type: "boolean" }, all: { type: "boolean" } },
      2,
    );
    const [input, named] = positionals;
    if (!input) throw new BadInput("recalc needs the workbook to work out: soundfold recalc IN.xlsx");
    const output = await outputFor(input, named, values.force === true);
    growSlowly(50);
    const { bytes, summary } = await workOutFile(input, terminal, { all: values.all === true });
    const removed = await writeWhole(output, bytes);
    terminal.say(`${summaryText(summary)}\nSaved as ${output}`);
    if (removed.length > 0) terminal.say(`Removed what a run that was cut off had left behind: ${removed.join(", ")}`);
  },
};
