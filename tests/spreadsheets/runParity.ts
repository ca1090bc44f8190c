import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { catalogue } from "../../functions/catalogue.ts";
import { provideBrowser } from "../../src/build/provideBrowser.ts";
import type { Cell } from "../../src/cells/cell.ts";
import type { Outcome } from "../../src/definition/evaluate.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { placeKey } from "../../src/workbook/engine.ts";
import { asOutcome, excelCall } from "../browser/excelCall.ts";
import { openExcel } from "../browser/excelPage.ts";
import type { CalcVersion } from "./calcProgram.ts";
import { answerOf, exampleSheet, expectedInCalc, type PlacedExample } from "./exampleSheet.ts";
import { startCalc } from "./startCalc.ts";
import { excelWorkbook, flatDocument, typedFormula } from "./writeSheets.ts";

const { sheet, placed } = exampleSheet(catalogue);

/** How a host answered an example: as the core does, as the host forces it to, or otherwise. */
type Verdict = "same" | "forced" | "different";

const plain = ({ outcome }: PlacedExample): readonly (readonly unknown[])[] =>
  outcome.ok ? outcome.cells.map((row) => row.map((cell) => cell ?? "")) : [[{ error: outcome.code }]];

async function inCalc(version: CalcVersion, file: string, content: string | Uint8Array): Promise<readonly Verdict[]> {
  const calc = await startCalc(version);
  try {
    const path = join(calc.folder, file);
    writeFileSync(path, content);
    const cells = (await calc.read(path)).sheets.Calls ?? [];
    return placed.map((example) => {
      const forced = JSON.stringify(expectedInCalc(example));
      const got = JSON.stringify(answerOf(cells, example, expectedInCalc(example)));
      if (got !== forced) return "different";
      return forced === JSON.stringify(plain(example)) ? "same" : "forced";
    });
  } finally {
    await calc.stop();
  }
}

/** A null among the arguments stands in a blank cell here, and the sentence says so. */
const inACell = (message: string, { example }: PlacedExample): string =>
  example.call.includes(null) ? message.replace(": it is left out;", ": it is blank;") : message;

async function inEngine(): Promise<readonly Verdict[]> {
  const at = (key: string) => {
    const [row = 0, column = 0] = key.split(",").map(Number);
    return { row, column };
  };
  const answers = await engineInNode().calculate({
    dateSystem: 1900,
    names: [],
    sheets: [
      {
        name: "Calls",
        cells: [
          ...[...sheet.constants].map(([key, value]) => ({ ...at(key), value })),
          ...[...sheet.calls].map(([key, call]) => ({ ...at(key), value: null, formula: typedFormula(call) })),
        ],
      },
    ],
  });
  return placed.map((example): Verdict => {
    const answer = answers.sheets[0]?.get(placeKey(example.top, 0));
    const cells: readonly (readonly Cell[])[] = answer?.spill?.cells ?? [[answer?.value ?? null]];
    const same =
      JSON.stringify(cells.map((row) => row.map((cell) => cell ?? ""))) === JSON.stringify(plain(example)) &&
      (example.outcome.ok || answer?.message === inACell(example.outcome.message, example));
    return same ? "same" : "different";
  });
}

/** The built add-in in the vendor's own runtime for custom functions, with a stand-in in the place of Excel. */
async function inExcel(): Promise<readonly Verdict[]> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-parity-"));
  const browser = await chromium.launch({ executablePath: provideBrowser(), args: ["--headless", "--disable-gpu"] });
  try {
    const options = ["--env", "baseUrl=https://add-in.invalid", "--output-path", folder];
    execFileSync("npm", ["run", "--silent", "build", "--", ...options], { stdio: ["ignore", "ignore", "inherit"] });
    const context = await browser.newContext();
    // tsx marks functions with a call of its own, which the page does not know.
    await context.addInitScript("globalThis.__name = (marked) => marked");
    const excel = await openExcel(context, readFileSync(join(folder, "functions.js")));
    const arrived = await excel.call(placed.map(({ definition, example }) => excelCall(definition, example)));
    return placed.map((example, index): Verdict => {
      const outcome = asOutcome(arrived[index] as (typeof arrived)[number]);
      const cells = plain({ ...example, outcome });
      const said = (of: Outcome): string | undefined => (of.ok ? undefined : of.message);
      const same = JSON.stringify(cells) === JSON.stringify(plain(example)) && said(outcome) === said(example.outcome);
      return same ? "same" : "different";
    });
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function inSheets(): readonly Verdict[] {
  const zone = "Europe/Helsinki";
  const printed = execFileSync(process.execPath, ["--import", "tsx", "tests/hosts/sheets/parityInZones.ts", zone], {
    encoding: "utf8",
  });
  const { differing } = JSON.parse(printed) as { differing: readonly string[] };
  return placed.map(({ definition, example }) =>
    differing.some((line) => line.startsWith(`${zone}: ${definition.name} ${JSON.stringify(example.call)}:`))
      ? "different"
      : "same",
  );
}

type Column = readonly [host: string, verdicts: readonly Verdict[]];

/**
 * Works out every example of every function in each host, against what the core answers.
 *
 * @returns the page that shows it, and the differences that no host forces
 */
export async function runParity(): Promise<{ readonly page: string; readonly different: readonly string[] }> {
  for (const built of ["build:libreoffice", "build:sheets"]) execFileSync("npm", ["run", "--silent", built]);
  const hosts: readonly Column[] = [
    ["Excel runtime", await inExcel()],
    ["Embedded engine", await inEngine()],
    ["LibreOffice 7.4 (.fods)", await inCalc("7.4", "examples.fods", flatDocument(sheet))],
    ["LibreOffice 25.2 (.xlsx)", await inCalc("25.2", "examples.xlsx", excelWorkbook(sheet))],
    ["Google Sheets (stand-in)", inSheets()],
  ];
  const different = hosts.flatMap(([host, verdicts]) =>
    placed.flatMap(({ definition, example }, index) =>
      verdicts[index] === "different" ? [`${host}: ${definition.name} ${JSON.stringify(example.call)}`] : [],
    ),
  );
  return { page: pageOf(hosts, different.length), different };
}

const pageOf = (hosts: readonly Column[], different: number): string => `# The same answer in every spreadsheet

Written by \`npm run parity\`, which works out every example of every function in each host and compares every cell with the core, to the last digit, and every refusal by its error and (where the host can show one) its sentence. The reference is the core itself, called without any host.

${placed.length} examples of ${catalogue.length} functions; ${different === 0 ? "no unexplained difference" : `${different} unexplained differences`}.

## What a host forces
- **Excel** forces nothing. Here the add-in runs in the vendor's own runtime for custom functions, in a browser; Excel itself was not at hand.
- **LibreOffice**: a refusal shows its error, without the sentence. Yes and no are 1 and 0. A call without a required argument, or with an error in a range, is answered by LibreOffice itself with Err:504. A lone 0 for withdrawal days may be a blank cell and is refused. A reference to one blank cell arrives as 0; the examples stand in ranges, where blanks stay blank.
- **LibreOffice 7.4** does not read the names under which Excel stores the functions, so it is given a LibreOffice file.
- **Google Sheets**: every refusal shows as #ERROR!, with its sentence; there is no #N/A from a script. Dates are Date objects, compared by the day and hour that the sheet shows.

| function | examples | ${hosts.map(([name]) => name).join(" | ")} |
|---|---|${hosts.map(() => "---|").join("")}
${rowsOf(hosts).join("\n")}
`;

const rowsOf = (hosts: readonly Column[]): readonly string[] =>
  catalogue.map((definition) => {
    const places = placed.flatMap((example, index) => (example.definition === definition ? [index] : []));
    const shown = hosts.map(([, verdicts]) => {
      const count = (wanted: Verdict): number => places.filter((index) => verdicts[index] === wanted).length;
      const parts = [`${count("same")} same`];
      if (count("forced") > 0) parts.push(`${count("forced")} as the host forces it`);
      if (count("different") > 0) parts.push(`**${count("different")} different**`);
      return parts.join(", ");
    });
    return `| ${definition.name} | ${places.length} | ${shown.join(" | ")} |`;
  });
