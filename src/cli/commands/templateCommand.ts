import type { WorkbookPlan } from "../../templates/authoring/authorWorkbook.ts";
import { room } from "../../templates/flockFootBook/bookTables.ts";
import { BadInput } from "../badInput.ts";
import type { Command } from "../command.ts";
import { groupNames } from "../groupNames.ts";
import { newFile } from "../newFile.ts";
import { readOptions } from "../readOptions.ts";
import { writeWhole } from "../writeWhole.ts";

interface Wanted {
  readonly farm: string | undefined;
  readonly groups: readonly string[];
  /** Today, as 2026-10-31. */
  readonly made: string;
}

interface Template {
  /** What the file is called when no name is given. */
  readonly file: string;
  readonly title: string;
  readonly plan: (wanted: Wanted) => Promise<WorkbookPlan>;
}

// The builders are loaded when they are asked for: other commands start faster without them.
const templates: Readonly<Record<string, Template>> = {
  farm: {
    file: "flock-foot-book.xlsx",
    title: "Flock foot book",
    async plan(wanted) {
      const { flockFootBook } = await import("../../templates/flockFootBook/flockFootBook.ts");
      const { emptyBook } = await import("../../templates/flockFootBook/emptyBook.ts");
      return flockFootBook(emptyBook(wanted));
    },
  },
};

const kinds = Object.keys(templates);

/** Makes a fresh workbook to be filled. */
export const templateCommand: Command = {
  name: "template",
  takes: `${kinds.join("|")} [--farm NAME] [--groups a,b,c] [--out FILE]`,
  summary: "make an empty workbook: farm is the Flock foot book of a farm office",
  async run(given, terminal) {
    const options = { farm: { type: "string" }, groups: { type: "string" }, out: { type: "string" } } as const;
    const { values, positionals } = readOptions("template", given, options, 1);
    const [kind = ""] = positionals;
    const template = Object.hasOwn(templates, kind) ? templates[kind] : undefined;
    if (!template) throw new BadInput(`template needs to know which: soundfold template ${kinds.join("|")}`);
    const farm = values.farm?.trim();
    if (farm === "") throw new BadInput("--farm is blank; give the name of the farm, or leave it out.");
    const groups = groupNames(values.groups, room.groups);
    const output = values.out ?? template.file;
    await newFile(output);
    terminal.progress("Writing the workbook");
    const { workedOut } = await import("../../templates/workedOut.ts");
    const { bytes } = await workedOut(await template.plan({ farm, groups, made: today() }));
    terminal.progressDone();
    await writeWhole(output, bytes);
    terminal.say(`${template.title}${farm === undefined ? "" : ` for ${farm}`}: ${output}`);
  },
};

/** The calendar's day where the command runs. */
function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
