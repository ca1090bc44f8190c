import type { Cell, Cells } from "../../src/cells/cell.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { hostileCell } from "./hostileCell.ts";
import { argumentsOf } from "./laws.ts";
import { isColumn, parametersOf, soundCall } from "./soundCall.ts";

const wholeColumn = 1_048_576;

/** Arguments that begin as sound ones, of which some are spoiled; or nothing but spoiled ones. */
export function hostileArguments(definition: AnyFunction, random: SeededRandom): readonly Argument[] {
  const call = soundCall(definition, random);
  const spoilShare = random.pick([0.02, 0.3, 1]);
  const given = argumentsOf(call).map((argument) =>
    random.happens(spoilShare) ? spoiled(argument, random) : argument,
  );
  if (random.happens(0.03)) return [...given, hostileCell(random)];
  return random.happens(0.1) ? given.slice(0, random.whole(0, given.length)) : given;
}

type Spoil = (rows: Cells, cell: () => Cell, random: SeededRandom) => Argument;

const cellsOf = (count: number, cell: () => Cell): Cell[] => Array.from({ length: count }, cell);

const spoils: readonly Spoil[] = [
  () => undefined,
  (_, cell) => cell(),
  () => [],
  () => [[]],
  oneCell,
  oneCell,
  (_, cell, random) => cellsOf(random.whole(1, 15), cell).map((one) => [one]),
  (_, cell, random) => [cellsOf(random.whole(1, 15), cell)],
  // Ragged, as no spreadsheet gives it.
  (_, cell, random) => Array.from({ length: random.whole(1, 5) }, () => cellsOf(random.whole(0, 4), cell)),
  (rows, _, random) => [
    ...rows,
    ...cellsOf(random.whole(1, 4), () => random.pick([null, "", " ", 0])).map((one) => [one]),
  ],
];

/** A range as high as before, one cell of it spoiled. */
function oneCell(rows: Cells, cell: () => Cell, random: SeededRandom): Cells {
  const at = random.whole(0, Math.max(rows.length - 1, 0));
  return rows.map((row, index) => (index === at ? [cell()] : row));
}

function spoiled(argument: Argument, random: SeededRandom): Argument {
  const rows = Array.isArray(argument) ? (argument as Cells) : [[argument as Cell]];
  return random.pick(spoils)(rows, () => hostileCell(random), random);
}

/** The call over whole columns of a sheet: the records at the top, and blank down to the last row. */
export function wholeColumns(definition: AnyFunction, random: SeededRandom): readonly Argument[] {
  const call = soundCall(definition, random);
  const last = random.happens(0.5) ? hostileCell(random) : null;
  return parametersOf(definition).map(([name]): Argument => {
    const argument = call.given[name];
    if (!isColumn(argument)) return argument as Argument;
    return Array.from({ length: wholeColumn }, (_, row) => [row === wholeColumn - 1 ? last : (argument[row] ?? null)]);
  });
}
