import { catalogue } from "../../functions/catalogue.ts";
import { type Cell, type Cells, isCellError } from "../../src/cells/cell.ts";
import { Problem } from "../../src/cells/problem.ts";
import type { AnyFunction, Example } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { answerCall, type SentCall } from "../../src/hosts/libreoffice/answerCall.ts";
import { answer } from "../../src/hosts/sheets/answer.ts";
import { type WallClock, wallClock } from "../../src/hosts/sheets/wallClock.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { columnLetters } from "../../src/workbook/address.ts";
import type { EngineCell } from "../../src/workbook/engine.ts";
import { asArgument } from "../functions/exampleCall.ts";
import { leastTime } from "./processorTime.ts";
import type { BenchReport } from "./report.ts";
import { shippedCall, shippedFunctions } from "./shippedFunctions.ts";
import { showTime } from "./show.ts";

const engineCalls = 400;
const zone = "Europe/London";

/** What one call of each function takes in each spreadsheet, as far as that can be run here. */
export async function bench(): Promise<BenchReport> {
  const excel = await shippedFunctions();
  const clock = wallClock(zone);
  const empty = await engineTime(undefined);
  const measured: { name: string; times: Record<string, number> }[] = [];
  for (const definition of catalogue) {
    const example = definition.examples.find(({ gives }) => !(gives instanceof Problem));
    if (example === undefined) throw new Error(`${definition.name} has no example that is answered`);
    const given = example.call.map(asArgument);
    const inExcel = given.map((argument) => (argument === undefined ? null : argument));
    const inSheets = given.map((argument, index) => sheetsArgument(argument, parameterAt(definition, index), clock));
    const line = JSON.stringify([definition.name, given.map(calcArgument)]);
    const calls: Record<string, () => unknown> = {
      alone: () => {
        if (!evaluate(definition, given).ok) throw new Error(`${definition.name} refused its example`);
      },
      "in Excel": shippedCall(excel, definition.name, inExcel),
      "in Google Sheets": () => answer(definition.name, inSheets as never, () => zone),
      "in LibreOffice": () => JSON.stringify(answerCall(JSON.parse(line) as SentCall)),
    };
    const engine = Math.max(0, (await engineTime({ definition, example })) - empty) / engineCalls;
    measured.push({ name: definition.name, times: { ...leastTimes(calls), "in the embedded engine": engine } });
  }
  const hosts = Object.keys(measured[0]?.times ?? {});
  return {
    title: "One call",
    rows: [
      ...measured.map(({ name, times }) => ({ function: name, ...shown(hosts, (host) => times[host]) })),
      {
        function: "median of all",
        ...shown(hosts, (host) => median(measured.map(({ times }) => times[host] ?? Number.NaN))),
      },
    ],
    notes: [
      "Processor time of a call with the arguments of the function's first example, warm. Alone: reading, computing and laying out, without any spreadsheet. Excel: our part of a call of functions.js as it ships, with the vendor's runtime left out; the others are bundled by the bundler that makes what ships, and nothing runs under a loader. Google Sheets: with dates as Date objects, on this machine's Node.js. LibreOffice: the program's part, from a line of JSON to a line of JSON; the way there and back comes on top (docs/install/libreoffice.md).",
      `Embedded engine: ${engineCalls} calls in cells of their own, less what an empty calculation takes.`,
    ],
  };
}

/** Twice through all of them, because the first to run would pay for compiling what they share. */
function leastTimes(calls: Readonly<Record<string, () => unknown>>): Record<string, number> {
  const round = () => Object.entries(calls).map(([host, call]) => [host, leastTime(call, { batches: 3, enough: 8 })]);
  const [first, second] = [round(), round()].map((times) => Object.fromEntries(times) as Record<string, number>);
  return Object.fromEntries(
    Object.entries(first ?? {}).map(([host, time]) => [host, Math.min(time, second?.[host] ?? time)]),
  );
}

const shown = (hosts: readonly string[], of: (host: string) => number | undefined): Record<string, string> =>
  Object.fromEntries(hosts.map((host) => [host, showTime(of(host) ?? Number.NaN)]));

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? Number.NaN;

const parameterAt = ({ parameters }: AnyFunction, index: number): Parameter<unknown> | undefined =>
  Object.values(parameters as Record<string, Parameter<unknown>>)[index];

const isRange = (argument: Argument): argument is Cells => Array.isArray(argument);

function sheetsArgument(argument: Argument, parameter: Parameter<unknown> | undefined, clock: WallClock): unknown {
  if (argument === undefined) return undefined;
  const sent = (cell: Cell): unknown => {
    if (cell === null) return "";
    if (isCellError(cell)) return cell.error;
    return parameter?.kind.holds === "date" && typeof cell === "number" && cell > 30_000 ? clock.dateOf(cell) : cell;
  };
  return isRange(argument) ? argument.map((row) => row.map(sent)) : sent(argument);
}

function calcArgument(argument: Argument): unknown {
  const sent = (cell: Cell): unknown => {
    if (cell === null) return "";
    if (isCellError(cell)) return cell.error;
    return typeof cell === "boolean" ? Number(cell) : cell;
  };
  if (argument === undefined) return null;
  return isRange(argument) ? { rows: argument.length, cells: argument.map((row) => row.map(sent)) } : sent(argument);
}

interface InEngine {
  readonly definition: AnyFunction;
  readonly example: Example;
}

/** The least processor time of a few calculations of a sheet that calls the function many times, or not at all. */
async function engineTime(called: InEngine | undefined): Promise<number> {
  const { inputs, call } = called ? laidOut(called) : { inputs: [], call: "1" };
  // ROWS keeps an answer of many cells in one, and has the engine itself make the call.
  const formulas = Array.from({ length: called ? engineCalls : 1 }, (_, row) => ({
    row,
    column: 0,
    value: null,
    formula: `=ROWS(${call})`,
  }));
  const workbook = {
    dateSystem: 1900 as const,
    names: [],
    sheets: [
      { name: "In", cells: inputs },
      { name: "Out", cells: formulas },
    ],
  };
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 2; round++) {
    const before = process.cpuUsage();
    const { sheets } = await engineInNode().calculate(workbook);
    const { user, system } = process.cpuUsage(before);
    const first = [...(sheets[1]?.values() ?? [])][0];
    if (typeof first?.value !== "number")
      throw new Error(`${called?.definition.name} in the engine gave ${JSON.stringify(first)}`);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

function laidOut({ definition, example }: InEngine): { inputs: readonly EngineCell[]; call: string } {
  const inputs: EngineCell[] = [];
  let column = 0;
  const references = example.call.map((shown) => {
    const argument = asArgument(shown);
    if (argument === undefined) return "";
    const cells: Cells = isRange(argument) ? argument : [[argument]];
    const width = Math.max(1, ...cells.map((row) => row.length));
    cells.forEach((line, row) => {
      line.forEach((value, across) => {
        if (value !== null) inputs.push({ row, column: column + across, value });
      });
    });
    const reference = `In!${columnLetters(column)}1:${columnLetters(column + width - 1)}${Math.max(1, cells.length)}`;
    column += width + 1;
    return reference;
  });
  return { inputs, call: `FOOT.${definition.name}(${references.join(",")})` };
}
