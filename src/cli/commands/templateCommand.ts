import { strToU8 } from "fflate";
import { withOwnBook } from "../../workbooks/ownBook/withOwnBook.ts";
import { groups as bookGroups } from "../../workbooks/tables/settingsTables.ts";
import { visitGroups } from "../../workbooks/tables/visitTables.ts";
import type { WorkbookPlan } from "../../workbooks/writing/authorWorkbook.ts";
import type { Edition } from "../../workbooks/writing/edition.ts";
import { BadInput } from "../badInput.ts";
import type { Command } from "../command.ts";
import { groupNames } from "../groupNames.ts";
import { newFile } from "../newFile.ts";
import { nodePacking } from "../nodePacking.ts";
import { plainName } from "../plainName.ts";
import { readOptions } from "../readOptions.ts";
import { sheetPage } from "../sheetPage.ts";
import { today } from "../today.ts";
import { writeWhole } from "../writeWhole.ts";

interface Wanted {
  readonly farm: string | undefined;
  readonly groups: readonly string[];
  /** Today, as 2026-10-31. */
  readonly made: string;
  readonly edition: Edition;
}

interface Template {
  /** What the file is called when no name is given. */
  readonly file: string;
  readonly title: string;
  /** How many groups it has room for; undefined when it is about no one flock. */
  readonly groups: number | undefined;
  readonly plan: (wanted: Wanted) => Promise<WorkbookPlan>;
}

// The builders are loaded when they are asked for: other commands start faster without them.
const templates: Readonly<Record<string, Template>> = {
  farm: {
    file: "flock-foot-book.xlsx",
    title: "Flock foot book",
    groups: bookGroups.room,
    async plan(wanted) {
      const { flockFootBook } = await import("../../workbooks/footBook/flockFootBook.ts");
      const { emptyBook } = await import("../../workbooks/footBook/emptyBook.ts");
      return flockFootBook(emptyBook(wanted), wanted.edition);
    },
  },
  visit: {
    file: "visit-sheet.xlsx",
    title: "Visit sheet",
    groups: visitGroups.room,
    async plan(wanted) {
      const { visitSheet } = await import("../../workbooks/visitSheet/visitSheet.ts");
      const { emptyVisit } = await import("../../workbooks/visitSheet/emptyVisit.ts");
      return visitSheet(emptyVisit(wanted), wanted.edition);
    },
  },
  comparison: {
    file: "flock-comparison.xlsx",
    title: "Flock comparison",
    groups: undefined,
    async plan({ made, edition }) {
      const { flockComparison } = await import("../../workbooks/comparison/flockComparison.ts");
      const { emptyComparison } = await import("../../workbooks/comparison/emptyComparison.ts");
      return flockComparison(emptyComparison({ made }), edition);
    },
  },
};

const kinds = Object.keys(templates);

/** Makes a fresh workbook to be filled. */
export const templateCommand: Command = {
  name: "template",
  takes: `${kinds.join("|")} [--farm NAME] [--groups a,b,c] [--for PROGRAM] [--page] [--out FILE]`,
  summary: "make an empty workbook, such as the Flock foot book of a farm office",
  details: `farm         the Flock foot book of a farm office, saved as flock-foot-book.xlsx
visit        the Visit sheet of an adviser, saved as visit-sheet.xlsx
comparison   the Flock comparison of a consultant, saved as flock-comparison.xlsx

--farm NAME      the name of the farm, written into the workbook; "Hill farm" needs its quotes
--groups a,b,c   the groups of sheep, at most ${bookGroups.room} in the foot book and ${visitGroups.room} in the
                 visit sheet
--for libreoffice
                 the edition for LibreOffice with the extension, versions 7.4 and later: lists there
                 do not grow, so each has its room from the start
--out FILE       another name or folder for the workbook
--page           a page with the workbook inside, such as flock-foot-book.html: it opens by a double-click,
                 with the functions, where nothing is installed

A file that is there already is never replaced.`,
  async run(given, terminal) {
    const options = {
      farm: { type: "string" },
      groups: { type: "string" },
      out: { type: "string" },
      page: { type: "boolean" },
      for: { type: "string" },
    } as const;
    const { values, positionals } = readOptions("template", given, options, 1);
    const [kind] = positionals;
    const choice = `soundfold template ${kinds.join("|")}`;
    if (kind === undefined) throw new BadInput(`template needs to know which: ${choice}`);
    const template = Object.hasOwn(templates, kind) ? templates[kind] : undefined;
    if (!template) throw new BadInput(`There is no template "${kind}"; the choice is ${choice}`);
    const farm = values.farm === undefined ? undefined : plainName("--farm", values.farm.trim());
    if (farm === "") throw new BadInput("--farm is blank; give the name of the farm, or leave it out.");
    if (template.groups === undefined && (farm !== undefined || values.groups !== undefined))
      throw new BadInput(`template ${kind} is about many flocks and takes neither --farm nor --groups.`);
    const edition = values.for ?? "excel";
    if (edition !== "excel" && edition !== "libreoffice")
      throw new BadInput(`--for is "${values.for}"; the choice is --for excel and --for libreoffice.`);
    if (edition === "libreoffice" && values.page)
      throw new BadInput("The page holds the edition that it works with itself; leave out --for or --page.");
    const groups = groupNames(values.groups, template.groups ?? 0);
    const output = values.out ?? (values.page ? template.file.replace(/xlsx$/, "html") : template.file);
    await newFile(output, values.page ? ".html" : ".xlsx");
    const page = values.page ? await sheetPage() : undefined;
    terminal.progress("Writing the workbook");
    const { workedOut } = await import("../../workbooks/workedOut.ts");
    const { bytes } = await workedOut(await template.plan({ farm, groups, made: today(), edition }), nodePacking);
    terminal.progressDone();
    await writeWhole(output, page === undefined ? bytes : strToU8(withOwnBook(page, template.file, asBase64(bytes))));
    terminal.say(`${template.title}${farm === undefined ? "" : ` for ${farm}`}: ${output}`);
  },
};

const asBase64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");
