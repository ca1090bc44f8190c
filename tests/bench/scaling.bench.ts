import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { BenchReport } from "./report.ts";
import { showTime } from "./show.ts";
import type { Scaled } from "./timeScaling.ts";

const sizes = [1000, 10_000, 100_000, 1_000_000] as const;
const steepest = 1.15;

// One thread clears away, and what is new is not moved before the call ends: less of the line then shows the machine's
// memory. The bare pass shows how much of it is left.
const evenMemory = ["--single-threaded-gc", "--min-semi-space-size=1024", "--max-semi-space-size=1024"];

/** How the time of each function over columns grows with their length. */
export function bench(): BenchReport {
  const even = timesWith(sizes, evenMemory);
  const usual = new Map(timesWith([sizes[0], sizes[3]], []).map((one) => [one.name, one]));
  const measured = even.map(({ name, times }) => ({
    name,
    times,
    exponent: exponentOf(sizes, times),
    usual: usual.get(name) as Scaled,
  }));
  const functions = measured.filter(({ name }) => name !== "bare pass");
  const over = functions.filter(({ exponent }) => exponent > steepest).map(({ name }) => name);
  const memory = Math.max(...[...usual.values()].map((one) => one.memory));
  return {
    title: "From a thousand rows to a million",
    rows: measured.map(({ name, times, exponent, usual }) => ({
      function: name,
      ...Object.fromEntries(sizes.map((rows, place) => [rows.toLocaleString("en"), shown(times[place])])),
      exponent: exponent.toFixed(2),
      "1,000, usual memory": shown(usual.times[0]),
      "1,000,000, usual memory": shown(usual.times[1]),
      "exponent, usual memory":
        usual.times[1] === undefined ? "" : exponentOf([sizes[0], sizes[3]], usual.times).toFixed(2),
    })),
    notes: [
      "Processor time of one call over so many rows of invented records, from cells to cells: the least of several. The exponent is the slope of a straight line through the logarithms; 1 is twice the time for twice the rows.",
      `Steepest: ${Math.max(...functions.map(({ exponent }) => exponent)).toFixed(2)}. ${over.length === 0 ? `None is above ${steepest}.` : `Above ${steepest}: ${over.join(", ")}.`}`,
      "The bare pass looks at two cells of each row and makes a row of one cell, and nothing else; its exponent is that of the machine's memory, since a thousand rows stay in the processor's cache and a million do not. To lessen that, the times are taken with `node --single-threaded-gc --min-semi-space-size=1024 --max-semi-space-size=1024`, so that nothing new is moved while a call runs; the last three columns are with the usual settings.",
      "All records lie within 700 days. What gathers them by day (LAMEWATCH, DRIFTWATCH, PREVTREND) does its dearest work once a day, so more rows cost it little, and its exponent says less than the others.",
      "SHEEPDAYS takes one head count a day, so a million are more days than a sheet's calendar has.",
      `Most memory with the usual settings: ${memory} MB for a process that goes through all functions, the cells of a million rows in up to nine columns in it.`,
    ],
  };
}

const shown = (time: number | undefined): string => (time === undefined ? "" : showTime(time));

function timesWith(rows: readonly number[], settings: readonly string[]): readonly Scaled[] {
  const program = fileURLToPath(new URL("./timeScaling.ts", import.meta.url));
  const lines = execFileSync(
    process.execPath,
    ["--expose-gc", ...settings, "--import", "tsx", program, ...rows.map(String)],
    { encoding: "utf8", stdio: ["ignore", "pipe", "inherit"] },
  );
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
  const above = x.reduce((sum, value, place) => sum + (value - middleX) * ((y[place] ?? 0) - middleY), 0);
  return above / x.reduce((sum, value) => sum + (value - middleX) ** 2, 0);
}
