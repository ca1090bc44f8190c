import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { type Cell, type Cells, isCellError } from "../../../src/cells/cell.ts";
import { Problem } from "../../../src/cells/problem.ts";
import type { Example, ExampleArgument, ExampleCell } from "../../../src/definition/defineFunction.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { columnLetters } from "../../../src/workbook/address.ts";
import { type EngineAnswer, type EngineCell, placeKey } from "../../../src/workbook/engine.ts";

// The inputs of each example stand in a band of rows of their own; the formulas stand on another sheet, far apart,
// so that answers of many cells do not meet.
const bandHeight = 40;

const asCells = (given: Exclude<ExampleArgument, undefined>): Cells => {
  if (!Array.isArray(given)) return [[given as Cell]];
  return given.map((item) => (Array.isArray(item) ? (item as Cell[]) : [item as Cell]));
};

interface Laid {
  readonly inputs: readonly EngineCell[];
  readonly formula: EngineCell;
  readonly call: string;
}

function lay(name: string, { call }: Example, index: number): Laid {
  const top = index * bandHeight;
  const inputs: EngineCell[] = [];
  let column = 0;
  const references = call.map((given, at) => {
    // Excel hands over an argument left out between commas as null; at the end there would be no argument at all,
    // so there the null is a blank cell.
    if (given === undefined || (given === null && at < call.length - 1)) return "";
    const cells = asCells(given);
    const width = Math.max(1, ...cells.map((row) => row.length));
    cells.forEach((row, down) => {
      row.forEach((value, across) => {
        if (value !== null) inputs.push({ row: top + down, column: column + across, value });
      });
    });
    const from = `${columnLetters(column)}${top + 1}`;
    const to = `${columnLetters(column + width - 1)}${top + Math.max(1, cells.length)}`;
    column += width + 1;
    return `In!${from}:${to}`;
  });
  const written = `FOOT.${name}(${references.join(",")})`;
  return { inputs, formula: { row: top, column: 0, value: null }, call: written };
}

const examples = catalogue.flatMap((definition) =>
  definition.examples.map((example) => ({ name: definition.name, example })),
);

const ways = {
  alone: (call: string) => `=${call}`,
  "inside another function": (call: string) => `=IF(TRUE,${call})`,
} as const;

const answers = async (written: (call: string) => string): Promise<readonly (EngineAnswer | undefined)[]> => {
  const laid = examples.map(({ name, example }, index) => lay(name, example, index));
  const result = await engineInNode().calculate({
    dateSystem: 1900,
    names: [],
    sheets: [
      { name: "In", cells: laid.flatMap(({ inputs }) => inputs) },
      { name: "Out", cells: laid.map(({ formula, call }) => ({ ...formula, formula: written(call) })) },
    ],
  });
  return laid.map(({ formula }) => result.sheets[1]?.get(placeKey(formula.row, formula.column)));
};

const expectCell = (found: Cell | undefined, wanted: ExampleCell): void => {
  if (typeof wanted === "number") expect(found).toBeCloseTo(wanted, 9);
  else if (typeof wanted === "object" && "about" in wanted)
    expect(found).toBeCloseTo(wanted.about, wanted.decimals - 1);
  else expect(found).toEqual(wanted);
};

describe.each(Object.entries(ways))("every example, worked out %s", (_way, written) => {
  const working = answers(written);

  it.each(examples.map(({ name, example }, index) => [index, name, example] as const))(
    "%i %s",
    async (index, _, example) => {
      const answer = (await working)[index];
      const { gives } = example;
      if (gives instanceof Problem) {
        expect(isCellError(answer?.value ?? null) && answer?.value).toEqual({ error: gives.code });
        expect(answer?.message).toBe(gives.message);
        return;
      }
      const table = Array.isArray(gives) ? (gives as readonly (readonly ExampleCell[])[]) : [[gives as ExampleCell]];
      const found = answer?.spill?.cells ?? [[answer?.value ?? null]];
      expect(found.length).toBe(table.length);
      table.forEach((row, down) => {
        expect(found[down]?.length).toBe(row.length);
        row.forEach((wanted, across) => {
          expectCell(found[down]?.[across], wanted);
        });
      });
    },
  );
});
