import { inPlainNode } from "./plainNode.ts";
import type { BenchReport } from "./report.ts";
import { showTime } from "./show.ts";
import type { Scaled } from "./timeScaling.ts";

const sizes = [1000, 10_000, 100_000] as const;
const steepest = 1.2;

/** How the time of each function over columns grows with their length. */
export async function bench(): Promise<BenchReport> {
  const measured = (await timesWith(sizes)).map((one) => ({ ...one, exponent: exponentOf(sizes, one.times) }));
  const exponentNamed = (wanted: string) => measured.find(({ name }) => name === wanted)?.exponent ?? Number.NaN;
  const functions = measured.filter(({ isFunction }) => isFunction);
  const memory = Math.max(...measured.map((one) => one.memory));
  return {
    title: "From a thousand rows to a hundred thousand",
    rows: measured.map(({ name, times, exponent }) => ({
      function: name,
      ...Object.fromEntries(sizes.map((rows, index) => [rows.toLocaleString("en"), shown(times[index])])),
      exponent: exponent.toFixed(2),
    })),
    notes: [
      "Processor time of one table of so many rows of invented records, from cells to cells: the least of 3 to 15 rounds, the more the quicker the function, in a plain Node.js process with its usual settings. The exponent is the slope of a straight line through the logarithms; 1 is twice the time for twice the rows.",
      `For each number of rows as many tables are made as hold ${sizes[2].toLocaleString("en")} rows together, all different, and they are worked out one after the other with every answer kept, as a spreadsheet keeps them: so the cells are as far from the processor and the answers take as much room, however long a table is, and what grows is the function's own.`,
      `The bare pass looks at two cells of each row and makes a row of one cell, and nothing else: ${exponentNamed("bare pass").toFixed(2)}. The bare lookup does no more than keep the latest date of each row's tag in a Map: ${exponentNamed("bare lookup").toFixed(2)}.`,
      "How steep a function of tags is depends on the machine's caches: the texts of 200 animals lie near the processor, those of 200,000 need not.",
      "All records lie within 700 days. What gathers them by day (LAMEWATCH, DRIFTWATCH, PREVTREND) does its dearest work once a day, so more rows cost it little, and its exponent says less than the others.",
      "SHEEPDAYS takes one head count a day, so a hundred thousand are more days than a sheet's calendar has.",
      `Most memory: ${memory} MB for a process that goes through all functions, the cells of a hundred thousand rows in up to nine columns in it.`,
    ],
    limits: functions
      .filter(({ exponent }) => exponent === Math.max(...functions.map((one) => one.exponent)))
      .map(({ name, exponent }) => ({
        what: `the steepest exponent, of ${name},`,
        measured: exponent,
        most: steepest,
      })),
  };
}

const shown = (time: number | undefined): string => (time === undefined ? "" : showTime(time));

async function timesWith(rows: readonly number[]): Promise<readonly Scaled[]> {
  const lines = await inPlainNode("timeScaling", "timeScaling", ...rows.map(String));
  return lines
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as Scaled);
}

/** The slope of the straight line through the logarithms of rows and times. */
function exponentOf(rows: readonly number[], times: readonly number[]): number {
  const x = rows.slice(0, times.length).map(Math.log);
  const y = times.map(Math.log);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [middleX, middleY] = [mean(x), mean(y)];
  const above = x.reduce((sum, value, index) => sum + (value - middleX) * ((y[index] ?? 0) - middleY), 0);
  return above / x.reduce((sum, value) => sum + (value - middleX) ** 2, 0);
}
