import { createHash } from "node:crypto";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf, days1904, firstDay, isoText, lastDay, momentFromText } from "../../src/cells/day.ts";
import { Problem } from "../../src/cells/problem.ts";
import type { AnyFunction, Example } from "../../src/definition/defineFunction.ts";
import { evaluate, type Outcome } from "../../src/definition/evaluate.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { moveDaysInText } from "../fuzz/moveDaysInText.ts";
import { asArgument } from "./exampleCall.ts";

// Run with a time zone in TZ. Every example of a function that reads dates is moved onto days on which a calendar may go
// wrong, as serials of both date systems and as text; prints what does not move with it, and a mark of all answers.

const days = [
  // Leap days, the days about them, and the year that is none.
  ...["1992-02-29", "2024-02-28", "2024-02-29", "2024-03-01", "2028-02-29", "2100-02-28", "2100-03-01"],
  // Clocks go forward or back: Europe, America, Chile, Egypt, Australia.
  ...["2026-03-28", "2026-03-29", "2026-10-24", "2026-10-25", "2026-03-08", "2026-11-01"],
  ...["2026-09-05", "2026-09-06", "2026-04-24", "2026-04-05", "2026-10-04"],
  // Samoa had no such day; the turn of a year and of the two-digit year.
  ...["2011-12-29", "2011-12-30", "2011-12-31", "2026-12-31", "2027-01-01", "1999-12-31", "2000-01-01", "2038-01-19"],
];

type Cells = readonly (readonly Cell[])[];
type Way = "1900" | "1904" | "text";

const isDateParameter = ({ kind }: Parameter<unknown>): boolean => kind.holds === "date";
/** A block holds records with their dates, each as its cell is: a date kept as text is another finding there. */
const mayHoldDates = (parameter: Parameter<unknown>): boolean =>
  isDateParameter(parameter) || parameter.shape === "block";
const isDay = (cell: Cell): cell is number => typeof cell === "number" && cell > 30_000;

const eachCell = (argument: Argument, change: (cell: Cell) => Cell): Argument =>
  Array.isArray(argument)
    ? (argument as Cells).map((row) => row.map(change))
    : argument === undefined
      ? undefined
      : change(argument as Cell);

/** The arguments with every date handed over in one of the ways. */
const handed = (
  definition: AnyFunction,
  given: readonly Argument[],
  change: (day: number) => Cell,
  reaches = mayHoldDates,
): Argument[] => {
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  return given.map((argument, index) =>
    reaches(parameters[index] as Parameter<unknown>)
      ? eachCell(argument, (cell) => (isDay(cell) ? change(cell) : cell))
      : argument,
  );
};

/** Examples may hold dates as text, which are moved like the others. */
const inSerials = (definition: AnyFunction, given: readonly Argument[]): Argument[] => {
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  return given.map((argument, index) =>
    isDateParameter(parameters[index] as Parameter<unknown>)
      ? eachCell(argument, (cell) => (typeof cell === "string" ? (momentFromText(cell) ?? cell) : cell))
      : argument,
  );
};

function datesIn(definition: AnyFunction, given: readonly Argument[]): number[] {
  const found: number[] = [];
  handed(definition, given, (day) => found.push(day));
  return found;
}

/** The answer as if it were given in the 1900 system and so many days earlier. */
function movedBack(outcome: Outcome, days: number, way: Way): string {
  if (!outcome.ok) return outcome.message;
  const offset = days - (way === "1904" ? days1904 : 0);
  return JSON.stringify(
    outcome.cells.map((row) =>
      row.map((cell, column) => {
        if (typeof cell === "string") return moveDaysInText(cell, -days);
        const format = outcome.formats[column];
        const isDate = typeof cell === "number" && (format === "date" || format === "date and time");
        return typeof cell === "number" ? Number((isDate ? cell - offset : cell).toFixed(7)) : cell;
      }),
    ),
  );
}

const withTime = (day: number): string => {
  const minutes = Math.round((day - Math.floor(day)) * 1440);
  const two = (part: number): string => String(part).padStart(2, "0");
  return minutes === 0 ? isoText(day) : `${isoText(day)} ${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

const answers = createHash("sha256");
const differing: string[] = [];
let compared = 0;

const readsDates = ({ parameters }: AnyFunction): boolean =>
  (Object.values(parameters) as Parameter<unknown>[]).some(isDateParameter);

for (const definition of catalogue.filter(readsDates)) {
  const answered = (definition.examples as readonly Example[]).filter(({ gives }) => !(gives instanceof Problem));
  for (const { call } of answered) {
    const given = inSerials(definition, call.map(asArgument));
    const [first] = datesIn(definition, given);
    if (first === undefined) continue;
    // The same month of other years is another month for days moved; the answer itself must not depend on the zone.
    if (call.includes("month")) {
      answers.update(JSON.stringify(evaluate(definition, given)));
      continue;
    }
    const wanted = movedBack(evaluate(definition, given), 0, "1900");
    for (const text of days) {
      const shift = dayOf(text) - Math.floor(first);
      const moved = handed(definition, given, (day) => day + shift);
      if (datesIn(definition, moved).some((day) => day < firstDay || day > lastDay)) continue;
      const ways: Readonly<Record<Way, Outcome>> = {
        "1900": evaluate(definition, moved),
        "1904": evaluate(
          definition,
          handed(definition, moved, (day) => day - days1904),
          { dateSystem: 1904 },
        ),
        text: evaluate(definition, handed(definition, moved, withTime, isDateParameter)),
      };
      for (const [way, outcome] of Object.entries(ways) as [Way, Outcome][]) {
        compared++;
        answers.update(JSON.stringify(outcome));
        const got = movedBack(outcome, shift, way);
        if (got !== wanted) differing.push(`${definition.name} on ${text} as ${way}: ${got} for ${wanted}`);
      }
    }
  }
}

const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
console.log(JSON.stringify({ timeZone, compared, differing: differing.slice(0, 20), answers: answers.digest("hex") }));
