import { Problem } from "../../../cells/problem.ts";
import { namespace } from "../../../definition/formulaText.ts";
import { words } from "../../words.ts";

const formula = `=${namespace}.HOSTCHECK(A1:A2,B1)`;
const dayTried = 46095;
const between = 250;
const patience = 10_000;

/**
 * Works HOSTCHECK out in a sheet that is added for it and taken away again, because only a formula can see how blank
 * cells reach a function.
 *
 * @returns the lines of its answer under the headings
 * @throws Problem when the functions are missing or nothing is worked out
 */
export const tryHost = (): Promise<readonly (readonly string[])[]> =>
  Excel.run(async (context) => {
    const before = context.workbook.worksheets.getActiveWorksheet();
    const sheet = context.workbook.worksheets.add();
    await context.sync();
    try {
      const date = sheet.getRange("B1");
      date.values = [[dayTried]];
      date.numberFormat = [["d mmm yyyy"]];
      const answer = sheet.getRange("D1");
      answer.formulas = [[formula]];
      await context.sync();
      await untilWorkedOut(context, answer);
      const lines = sheet.getRange("D2:G9");
      lines.load("values");
      await context.sync();
      return lines.values.map((line) => line.map(String)).filter(([about]) => about !== "");
    } finally {
      before.activate();
      sheet.delete();
      await context.sync();
    }
  });

async function untilWorkedOut(context: Excel.RequestContext, answer: Excel.Range): Promise<void> {
  for (let waited = 0; waited <= patience; waited += between) {
    answer.load("values");
    await context.sync();
    const shown = String(answer.values[0]?.[0] ?? "");
    if (shown === words.health.headings[0]) return;
    if (shown === "#NAME?") throw new Problem(words.health.missing);
    // Functions of an add-in are busy until they answer.
    if (!["", "0", "#BUSY!", "#GETTING_DATA"].includes(shown)) throw new Problem(words.health.failed(shown));
    await new Promise((resolve) => setTimeout(resolve, between));
  }
  throw new Problem(words.health.silent);
}
