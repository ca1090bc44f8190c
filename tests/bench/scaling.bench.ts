import { catalogue } from "../../functions/catalogue.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { callOverRows, growing, mostRows } from "./manyRows.ts";
import { leastTime } from "./processorTime.ts";
import type { BenchReport } from "./report.ts";
import { showTime } from "./show.ts";

const sizes = [1000, 10_000, 100_000, 1_000_000] as const;
const steepest = 1.15;

/** How the time of each function over columns grows with their length. */
export function bench(): BenchReport {
  const measured = catalogue
    .filter((definition) => growing(definition).length > 0)
    .map((definition) => {
      const fitting = sizes.filter((rows) => rows <= mostRows(definition));
      const times = fitting.map((rows) => timeOf(definition, rows));
      process.stderr.write(`${definition.name} ${times.map(showTime).join(", ")}\n`);
      return { definition, times, exponent: slope(fitting.map(Math.log), times.map(Math.log)) };
    });
  const over = measured.filter(({ exponent }) => exponent > steepest);
  const greatest = Math.max(...measured.map(({ exponent }) => exponent));
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  return {
    title: "From a thousand rows to a million",
    rows: measured.map(({ definition, times, exponent }) => ({
      function: definition.name,
      ...Object.fromEntries(
        sizes.map((rows, place) => [
          rows.toLocaleString("en"),
          times[place] === undefined ? "" : showTime(times[place]),
        ]),
      ),
      exponent: exponent.toFixed(2),
    })),
    notes: [
      "SHEEPDAYS takes one head count a day, so a million are more days than a sheet's calendar has.",
      "Processor time of one call over so many rows of invented records, from cells to cells: the least of several. The exponent is the slope of a straight line through the logarithms; 1 is twice the time for twice the rows.",
      `Steepest: ${greatest.toFixed(2)}. ${over.length === 0 ? `None is above ${steepest}.` : `Above ${steepest}: ${over.map(({ definition }) => definition.name).join(", ")}.`} Most memory of the process, with the cells of a million rows in it: ${memory} MB.`,
    ],
  };
}

function timeOf(definition: AnyFunction, rows: number): number {
  const given = callOverRows(definition, rows);
  const call = () => {
    const outcome = evaluate(definition, given);
    // A refusal must not be taken for speed.
    if (!outcome.ok) throw new Error(`${definition.name} over ${rows} rows: ${outcome.message}`);
  };
  return leastTime(call, { batches: rows < 1_000_000 ? 5 : 2 });
}

function slope(x: readonly number[], y: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [middleX, middleY] = [mean(x), mean(y)];
  const above = x.reduce((sum, value, place) => sum + (value - middleX) * ((y[place] ?? 0) - middleY), 0);
  return above / x.reduce((sum, value) => sum + (value - middleX) ** 2, 0);
}
