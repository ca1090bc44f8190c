import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { dayOf } from "../../src/cells/day.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { CalcVersion } from "./calcProgram.ts";
import { type Calc, type CalcCell, startCalc } from "./startCalc.ts";
import { type Call, type Constant, excelWorkbook, flatDocument, place, type Range } from "./writeSheets.ts";

const versions: readonly CalcVersion[] = ["7.4", "25.2"];

const single = (name: string, given: Call["given"], rows = 1, columns = 1): Call => ({ name, given, rows, columns });

const range = (left: number, top: number, bottom: number): Range => ({ top, left, bottom, right: left });

/** The first column of a sheet with one call a row. */
async function answers(
  calc: Calc,
  calls: readonly Call[],
  constants: ReadonlyMap<string, Constant> = new Map(),
): Promise<readonly (CalcCell | undefined)[]> {
  const path = join(calc.folder, "calls.fods");
  writeFileSync(path, flatDocument({ constants, calls: new Map(calls.map((call, row) => [place(row, 0), call])) }));
  const { sheets } = await calc.read(path);
  return calls.map((_, row) => sheets.Calls?.[row]?.[0]);
}

const value = { error: "#VALUE!" };

describe.each(versions)("the extension in LibreOffice %s", (version) => {
  let calc: Calc;
  beforeAll(async () => {
    calc = await startCalc(version);
  });
  afterAll(() => calc.stop());

  it("shows every function with its texts and says which arguments may be left out", async () => {
    // Calc asks the extension for the arguments only once a function has been used.
    expect(await answers(calc, [single("FLOCKPREV", [4, 20])])).toEqual([0.2]);
    for (const definition of catalogue) {
      const shown = await calc.describe(`FOOT.${definition.name}`);
      expect(shown.description).toContain(definition.summary);
      if (definition.caution !== undefined) expect(shown.description).toContain(definition.caution.words);
      expect(shown.arguments).toEqual(
        Object.entries(definition.parameters as Record<string, Parameter<unknown>>).map(
          ([name, { description, optional }]) => ({ name, description, optional }),
        ),
      );
    }
  });

  it("keeps blank cells of a range blank, also in a range of one cell", async () => {
    const constants = new Map<string, Constant>([
      [place(0, 5), 20],
      [place(1, 5), 30],
      [place(0, 4), 2],
    ]);
    expect(
      await answers(
        calc,
        [
          single("FLOCKPREV", [range(4, 1, 1), 20]),
          single("FLOCKPREV", [range(4, 0, 1), range(5, 0, 1)]),
          single("FLOCKPREV", [range(4, 0, 2), range(5, 0, 2)]),
        ],
        constants,
      ),
    ).toEqual([value, value, value]);
  });

  it("never takes a missing withdrawal period for one of 0 days", async () => {
    const constants = new Map<string, Constant>([
      [place(0, 4), dayOf("2026-02-10")],
      [place(1, 4), dayOf("2026-02-11")],
      [place(1, 5), 0],
      [place(3, 5), "0"],
    ]);
    const treated = range(4, 0, 0);
    expect(
      await answers(
        calc,
        [
          // Column F is blank in this row, and a reference to one cell is what a person writes.
          single("CLEARDATE", [treated, { cell: place(0, 5) }]),
          single("CLEARDATE", [treated, 0]),
          single("CLEARDATE", [treated, { cell: place(3, 5) }]),
          single("CLEARDATE", [range(4, 0, 1), range(5, 0, 1)]),
        ],
        constants,
      ),
    ).toEqual([value, value, dayOf("2026-02-10"), "no withdrawal days"]);
  });

  // What Calc does with a reference to one blank cell; the pages on installing warn of it.
  it("is handed 0 for a single blank cell", async () => {
    expect(await answers(calc, [single("FLOCKPREV", [{ cell: place(0, 5) }, 20])])).toEqual([0]);
  });

  it("answers a call with an error among its cells with an error", async () => {
    const constants = new Map<string, Constant>([
      [place(0, 4), { error: "#DIV/0!" }],
      [place(1, 4), 3],
      [place(0, 5), 20],
      [place(1, 5), 30],
    ]);
    expect(await answers(calc, [single("FLOCKPREV", [range(4, 0, 1), range(5, 0, 1)])], constants)).toEqual([
      { error: "Err:504" },
    ]);
  });

  it("takes whole columns", async () => {
    const constants = new Map<string, Constant>([
      [place(0, 4), 3],
      [place(0, 5), 20],
      [place(99, 4), 1],
      [place(99, 5), 20],
    ]);
    const whole = (column: number) => range(column, 0, 1_048_575);
    expect(await answers(calc, [single("FLOCKPREV", [whole(4), whole(5)])], constants)).toEqual([0.1]);
  });

  it("fills a larger array formula with #N/A behind the table, as arrays do", async () => {
    const path = join(calc.folder, "table.fods");
    const calls = new Map([[place(0, 0), single("PREVRANGE", [4, 20], 1, 3)]]);
    writeFileSync(path, flatDocument({ constants: new Map(), calls }));
    const [row = []] = (await calc.read(path)).sheets.Calls ?? [];
    expect(row.slice(0, 2).every((cell) => typeof cell === "number")).toBe(true);
    expect(row[2]).toEqual({ error: "#N/A" });
  });

  it("refuses a text that is no number, and goes on", async () => {
    expect(
      await answers(calc, [
        single("FLOCKPREV", ["four", 20]),
        single("FLOCKPREV", [0, 0]),
        single("FLOCKPREV", [4, 20]),
      ]),
    ).toEqual([value, { error: "#N/A" }, 0.2]);
  });

  it("works for ten thousand calls", async () => {
    const calls = Array.from({ length: 10_000 }, (_, row) => single("FLOCKPREV", [row % 7, 20]));
    const got = await answers(calc, calls);
    expect(got).toEqual(calls.map((_, row) => (row % 7) / 20));
  });

  // 7.4 does not read Excel's names of the functions.
  if (version === "7.4") return;

  it("reads and gives dates in the count of a workbook from 1904", async () => {
    const path = join(calc.folder, "from1904.xlsx");
    const calls = new Map([[place(0, 0), single("CLEARDATE", [dayOf("2026-02-10") - 1462, 28])]]);
    writeFileSync(path, excelWorkbook({ constants: new Map(), calls }, { date1904: true }));
    expect((await calc.read(path)).sheets.Calls?.[0]?.[0]).toBe(dayOf("2026-03-11") - 1462);
  });

  it("saves the functions under the names that Excel reads", async () => {
    const [from, to] = [join(calc.folder, "in.xlsx"), join(calc.folder, "out.xlsx")];
    const calls = new Map([[place(0, 0), single("FLOCKPREV", [4, 20])]]);
    writeFileSync(from, excelWorkbook({ constants: new Map(), calls }));
    await calc.read(from, { saveAs: to, filter: "Calc MS Excel 2007 XML" });
    const sheet = unzipSync(readFileSync(to))["xl/worksheets/sheet1.xml"];
    expect(Buffer.from(sheet ?? []).toString()).toMatch(/>_xldudf_FOOT_FLOCKPREV\(4,20\)</i);
  });
});

describe("when Node.js is not what it should be", () => {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-node-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  const script = (name: string, lines: string): string => {
    const path = join(folder, name);
    writeFileSync(path, `#!/bin/sh\n${lines}\n`);
    chmodSync(path, 0o755);
    return path;
  };
  const withNode = async (node: string, calls: readonly Call[]): Promise<readonly (CalcCell | undefined)[]> => {
    const calc = await startCalc("25.2", { SOUNDFOLD_NODE: node });
    try {
      return await answers(calc, calls);
    } finally {
      await calc.stop();
    }
  };
  const calls = [single("FLOCKPREV", [4, 20]), single("FLOCKPREV", [5, 20]), single("ABOUT", [])];

  it("says in ABOUT that there is none", async () => {
    const [first, second, about] = await withNode("/nowhere/node", calls);
    expect([first, second]).toEqual([value, value]);
    expect(about).toMatch(/^Soundfold needs Node\.js and did not find it\. Install Node\.js 20\.19 or newer/);
  });

  it("says in ABOUT that it is too old", async () => {
    const old = script("old", "echo v18.20.1");
    const [first, , about] = await withNode(old, calls);
    expect(first).toEqual(value);
    expect(about).toContain(`${old} is version 18.20.1`);
  });

  // The first start answers one call and ends at the second.
  const once = `if [ "$1" != --version ] && mkdir ${folder}/started 2>/dev/null; then
  exec ${process.execPath} -e 'let n = 0; require("readline").createInterface({ input: process.stdin }).on("line", () => { if (n++) process.exit(7); console.log(JSON.stringify({ cells: [[0.5]] })); })'
fi
exec ${process.execPath} "$@"`;

  it("starts it again once when it ends", async () => {
    expect((await withNode(script("once", once), calls)).slice(0, 2)).toEqual([0.2, 0.25]);
    expect(existsSync(join(folder, "started"))).toBe(true);
  });

  it("gives up with a message when it ends again", async () => {
    const never = script("never", `[ "$1" = --version ] && exec ${process.execPath} --version; exit 7`);
    const [first, second, about] = await withNode(never, calls);
    expect([first, second]).toEqual([value, value]);
    expect(about).toMatch(/^Soundfold's program ended .*code 7/);
  });
});
