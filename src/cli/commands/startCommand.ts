import { createRequire } from "node:module";
import { relative, sep } from "node:path";
import { cautions } from "../../../functions/cautions.ts";
import { openWorkbook } from "../../workbook/openWorkbook.ts";
import { answersText } from "../answersText.ts";
import type { Command } from "../command.ts";
import { outputFor } from "../outputFor.ts";
import { readOptions } from "../readOptions.ts";
import { summaryText } from "../summaryText.ts";
import { workOutFile } from "../workOutFile.ts";
import { writeWhole } from "../writeWhole.ts";

/** Shows what the functions answer on a year of invented records. */
export const startCommand: Command = {
  name: "start",
  takes: "",
  summary: "work out the sample workbook of an invented flock and print its answers",
  details: `The worked-out sample is saved as soundfold-sample-worked-out.xlsx in this folder, or, in a checkout,
as samples/farm-records-worked-out.xlsx. The sample of an earlier start is replaced.`,
  async run(given, terminal) {
    readOptions("start", given, {}, 0);
    const input = relative(process.cwd(), sampleFile());
    const output = await outputFor(input, outputName(input), true);
    const { bytes, summary } = await workOutFile(input, terminal);
    await writeWhole(output, bytes);
    // Only this command knows the sample, so the others start without it.
    const { farmRecords } = await import("../../workbooks/farmRecords/farmRecords.ts");
    const { sampleSeed } = await import("../../workbooks/inventedFlock/inventedFlock.ts");
    terminal.say("Sheep foot health of a flock over one year. The flock is invented.\n");
    terminal.say(answersText(openWorkbook(bytes), farmRecords(sampleSeed).answers));
    terminal.say(`\n${cautions.withdrawal.words}`);
    terminal.say(`\n${summaryText(summary)}\n\nThe workbook with these answers: ${output}`);
  },
};

/** By the name of the package, because the bundled command lies at another depth than this file. */
const sampleFile = (): string => createRequire(import.meta.url).resolve("soundfold/samples/farm-records.xlsx");

/** An installed package is no place for a person's files. */
const outputName = (input: string): string | undefined =>
  input.split(sep).includes("node_modules") ? "soundfold-sample-worked-out.xlsx" : undefined;
