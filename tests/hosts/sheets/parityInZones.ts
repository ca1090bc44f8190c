import { readFileSync } from "node:fs";
import { catalogue } from "../../../functions/catalogue.ts";
import type { Cell, Cells } from "../../../src/cells/cell.ts";
import type { AnyFunction, Example } from "../../../src/definition/defineFunction.ts";
import { evaluate } from "../../../src/definition/evaluate.ts";
import type { Parameter } from "../../../src/reading/parameter.ts";
import type { Argument } from "../../../src/reading/readArguments.ts";
import { asArgument } from "../../functions/exampleCall.ts";
import { type Given, type SheetCell, type Shown, sheetsStandIn } from "./sheetsStandIn.ts";

// Run with the time zone of the script in TZ and those of the spreadsheets as arguments; prints what differs.

const script = readFileSync("dist/sheets/Code.gs", "utf8");
const differing: string[] = [];
let compared = 0;
for (const zone of process.argv.slice(2)) {
  const call = sheetsStandIn(script, zone);
  for (const definition of catalogue) {
    for (const example of definition.examples) {
      const wanted = JSON.stringify(expected(definition, example));
      const got = JSON.stringify(call(definition.name, handedOver(definition, example)));
      compared++;
      if (got !== wanted)
        differing.push(`${zone}: ${definition.name} ${JSON.stringify(example.call)}: ${got} for ${wanted}`);
    }
  }
}
console.log(JSON.stringify({ compared, differing }));

/** In a sheet the dates of an example are date cells. */
function handedOver(definition: AnyFunction, { call }: Example): Given[] {
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  return call.map((argument, index) => {
    const given = asArgument(argument);
    const holdsDates = parameters[index]?.kind.holds === "date";
    const dated = (cell: Cell): SheetCell =>
      holdsDates && typeof cell === "number" && cell > 30_000 ? { date: cell } : cell;
    if (!Array.isArray(given)) return given === undefined ? undefined : dated(given as Cell);
    return (given as readonly (readonly Cell[])[]).map((row) => row.map(dated));
  });
}

function expected(definition: AnyFunction, { call }: Example): Shown {
  const given = call.map(asArgument);
  const outcome = evaluate(definition, definition.name === "HOSTCHECK" ? given.map(blanksAlike) : given);
  if (!outcome.ok) return { message: outcome.message };
  return {
    cells: outcome.cells.map((row) =>
      row.map((cell, column): SheetCell => {
        const format = outcome.formats[column];
        if (typeof cell === "number" && (format === "date" || format === "date and time")) return { date: cell };
        return cell ?? "";
      }),
    ),
  };
}

/** HOSTCHECK tells how a cell arrives, and in Sheets an empty text and a blank cell arrive alike. */
function blanksAlike(argument: Argument): Argument {
  if (Array.isArray(argument)) return (argument as Cells).map((row) => row.map((cell) => (cell === "" ? null : cell)));
  return argument === "" ? null : argument;
}
