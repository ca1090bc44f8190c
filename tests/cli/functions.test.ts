import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { version } from "../../functions/version.ts";
import { runSoundfold } from "./runSoundfold.ts";

describe("functions", () => {
  test("lists every function under its topic, with its arguments and its sentence", async () => {
    const { code, output } = await runSoundfold(["functions"]);
    expect(code).toBe(0);
    for (const { name, summary } of catalogue) {
      expect(output).toContain(`=FOOT.${name}(`);
      expect(output).toContain(summary);
    }
    expect(output.indexOf("Withdrawal, rechecks, quarantine")).toBeLessThan(output.indexOf("=FOOT.CLEARDATE("));
  });

  test.each(["CLEARDATE", "cleardate", "FOOT.CLEARDATE", "=FOOT_CLEARDATE(A1,B1)"])("prints %s whole", async (name) => {
    const { code, output } = await runSoundfold(["functions", name]);
    expect(code).toBe(0);
    expect(output).toContain("FOOT.CLEARDATE(treated, withdrawal_days, [counting])");
    expect(output).toContain("Take care");
    expect(output).toContain("Sources");
  });

  test("says that there is no such function", async () => {
    expect(await runSoundfold(["functions", "SOUNDNESS"])).toEqual({
      code: 2,
      output: "",
      errors: "There is no function SOUNDNESS; soundfold functions lists them all.\n",
    });
  });
});

describe("soundfold", () => {
  test.each([[["--help"]], [["-h"]], [["help"]], [[]]])("%j prints help", async (given) => {
    const { code, output } = await runSoundfold(given);
    expect(code).toBe(0);
    for (const word of ["soundfold recalc IN.xlsx", "soundfold functions", "soundfold start", "Exit code"])
      expect(output).toContain(word);
  });

  test.each([
    [["recalc", "--help"], "soundfold recalc IN.xlsx", "--force"],
    [["help", "template"], "soundfold template farm|visit|comparison", "--groups a,b,c"],
    [["collate", "books", "-h"], "soundfold collate FOLDER", "--letters"],
    [["functions", "-h"], "soundfold functions [NAME]", "=FOOT_CLEARDATE("],
    [["start", "--help"], "soundfold start", "soundfold-sample-worked-out.xlsx"],
  ])("%j explains that command alone", async (given, call, option) => {
    const { code, output, errors } = await runSoundfold(given);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    expect(output.startsWith(call)).toBe(true);
    expect(output).toContain(option);
    expect(output.match(/^soundfold /gm)).toHaveLength(1);
    expect(Math.max(...output.split("\n").map((line) => line.length))).toBeLessThanOrEqual(110);
  });

  test.each(["--version", "-v"])("%s prints the version", async (word) => {
    expect(await runSoundfold([word])).toEqual({ code: 0, output: `${version}\n`, errors: "" });
  });

  test("an unknown command is refused", async () => {
    const { code, errors } = await runSoundfold(["recalculate"]);
    expect([code, errors]).toEqual([2, 'There is no command "recalculate"; soundfold --help lists them.\n']);
  });
});
