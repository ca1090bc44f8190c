import { type Cell, type Cells, isCellError } from "../../../cells/cell.ts";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { literal } from "../../../definition/exampleInSheet.ts";
import { namespace } from "../../../definition/formulaText.ts";
import { resultInWords } from "../../../definition/resultInWords.ts";
import type { Parameter } from "../../../reading/parameter.ts";
import { footName } from "../../../workbook/formula/functionName.ts";
import { words } from "../../words.ts";
import { type Call, callsIn } from "./callsIn.ts";
import type { Found } from "./cellsGiven.ts";
import { cellToMend } from "./cellToMend.ts";
import { formulaHint } from "./formulaHint.ts";
import { shownCell, shownCells } from "./shownCells.ts";

/** What stands in the cell of a formula, and in those that its answer fills. */
export interface CellAnswer {
  readonly cells: Cells;
  /** The sentence of an error, where the spreadsheet tells it. */
  readonly message?: string | undefined;
}

interface ExplainedArgument {
  readonly name: string;
  readonly meaning: string;
  /** As it stands in the formula; undefined where it was left out. */
  readonly given: string | undefined;
  /** How many cells it holds and the first of them, or what stands where it was left out; "" where neither is known. */
  readonly holds: string;
}

interface ExplainedCall {
  /** `FOOT.FLOCKPREV` */
  readonly name: string;
  /** What it answers. */
  readonly answers: string;
  /** What it fills the sheet with. */
  readonly gives: string;
  /** The functions around it, in a sentence; undefined where it stands alone. */
  readonly inside: string | undefined;
  readonly arguments: readonly ExplainedArgument[];
  /** What was given beyond its last argument, in a sentence. */
  readonly surplus: string | undefined;
  readonly caution: string | undefined;
}

/** A step to a cell that is to be mended. */
interface Mend {
  /** With its sheet, where the range has one. */
  readonly cell: string;
  /** `treated, row 3` */
  readonly place: string;
}

export interface Explanation {
  readonly formula: string;
  /** What the formula may have been meant as, where it cannot be worked out as it stands. */
  readonly hint: string | undefined;
  /** The FOOT functions in it, the outermost first. */
  readonly calls: readonly ExplainedCall[];
  /** What the cell shows, with the sentence of an error. */
  readonly answer: string;
  /** Each once, in the order of the sentences. */
  readonly mends: readonly Mend[];
}

/**
 * A formula in words: what its functions answer, what each argument means and holds, what came of it, and where to go to
 * mend it. It reads no sheet: the cells are handed in.
 *
 * @param found - the cells of {@link askedOf}
 * @param dayOffset - added to a cell's number to get its day: 1462 in a workbook that counts from 1904
 * @example
 * explainFormula("=FOOT.FLOCKPREV(2,20)", catalogue, new Map(), { cells: [[0.1]] }).answer // → "It gives 10.0%."
 */
export function explainFormula(
  formula: string,
  definitions: readonly AnyFunction[],
  found: Found,
  answer: CellAnswer,
  dayOffset = 0,
): Explanation {
  const all = callsIn(formula) ?? [];
  const calls = all.flatMap((call) => {
    const definition = definitionOf(call, definitions);
    return definition ? [{ call, definition }] : [];
  });
  return {
    formula,
    hint: hintFor(formula, all, definitions),
    calls: calls.map(({ call, definition }) => explained(call, definition, found, dayOffset)),
    answer: answerInWords(
      answer,
      calls.find(({ call }) => call.inside.length === 0),
      dayOffset,
    ),
    mends: mendsIn(sentencesOf(answer), calls, found),
  };
}

/**
 * The arguments of a formula's FOOT functions that may name cells, for a host to look up before it is explained.
 *
 * @example
 * askedOf("=FOOT.FLOCKPREV(C2:C13, 20)", catalogue) // → ["C2:C13"]
 */
export const askedOf = (formula: string, definitions: readonly AnyFunction[]): readonly string[] => [
  ...new Set(
    (callsIn(formula) ?? [])
      .filter((call) => definitionOf(call, definitions))
      .flatMap(({ given }) => given.filter((typed) => namesCells.test(typed))),
  ),
];

// One reference, name or column of a table: no call, no sum, no text.
const namesCells =
  /^(?!(?:TRUE|FALSE)$)(?:'(?:[^']|'')+'!|[\p{L}_][\p{L}\p{N}_.]*!)?[\p{L}_$][\p{L}\p{N}_.$:#]*(?:\[.+\])?$/iu;

interface Known {
  readonly call: Call;
  readonly definition: AnyFunction;
}

const definitionOf = ({ name }: Call, definitions: readonly AnyFunction[]): AnyFunction | undefined => {
  const foot = footName(name);
  return definitions.find((definition) => definition.name === foot);
};

function hintFor(formula: string, calls: readonly Call[], definitions: readonly AnyFunction[]): string | undefined {
  const hint = formulaHint(
    formula,
    definitions.map(({ name }) => name),
  );
  if (hint !== undefined) return hint;
  const unknown = calls.find((call) => footName(call.name) !== undefined && !definitionOf(call, definitions));
  if (unknown) return words.explain.noSuchFunction(unknown.name);
  return calls.length === 0 && callsIn(formula) === undefined ? words.explain.unreadable : undefined;
}

function explained({ given, inside }: Call, definition: AnyFunction, found: Found, dayOffset: number): ExplainedCall {
  const parameters = Object.entries(definition.parameters as Record<string, Parameter<unknown>>);
  const surplus = given.slice(parameters.length);
  return {
    name: `${namespace}.${definition.name}`,
    answers: definition.summary,
    gives: resultInWords(definition.result),
    inside: inside.length === 0 ? undefined : words.explain.inside(inside),
    arguments: parameters.map(([name, parameter], index) => {
      const typed = given[index] ?? "";
      return {
        name,
        meaning: parameter.description,
        given: typed === "" ? undefined : typed,
        holds: typed === "" ? leftOut(parameter) : holdsOf(typed, parameter, found, dayOffset),
      };
    }),
    surplus: surplus.length === 0 ? undefined : words.explain.surplus(parameters.length, surplus),
    caution: definition.caution?.words,
  };
}

function holdsOf(typed: string, { kind }: Parameter<unknown>, found: Found, dayOffset: number): string {
  const cells = found.get(typed)?.cells;
  return cells === undefined ? "" : shownCells(cells, kind.holds, dayOffset);
}

function leftOut({ optional, fallback, kind }: Parameter<unknown>): string {
  if (fallback !== undefined) return words.detail.leftOut(literal(fallback));
  return optional ? words.explain.leftOut : words.formula.missing(kind.wanted);
}

/** @param alone - the function whose answer it is, where no other stands around it */
function answerInWords({ cells, message }: CellAnswer, alone: Known | undefined, dayOffset: number): string {
  const first = cells[0]?.[0];
  if (isCellError(first)) {
    return words.explain.failed(first.error, message ?? words.explain.errors[first.error] ?? "");
  }
  const { shape, formats = [] } = alone?.definition.result ?? {};
  const shown = (row: readonly Cell[] = []): string =>
    row.map((cell, column) => shownCell(cell, formats[column] ?? formats[0] ?? "text", dayOffset)).join(", ");
  const [, below] = cells;
  if (shape === "table" && below) return words.explain.givesTable(cells.length - 1, shown(below));
  return cells.length > 1
    ? words.explain.givesMany(cells.length, shown(cells[0]))
    : words.explain.gives(shown(cells[0]));
}

const sentencesOf = ({ cells, message }: CellAnswer): readonly string[] => [
  ...(message === undefined ? [] : [message]),
  ...cells.flat().filter((cell) => typeof cell === "string"),
];

function mendsIn(sentences: readonly string[], calls: readonly Known[], found: Found): readonly Mend[] {
  const mends = new Map<string, Mend>();
  for (const sentence of sentences)
    for (const [place, argument = "", row = ""] of sentence.matchAll(/\b([a-z][a-z_]*)(?:, row (\d+))?(?=: )/g)) {
      for (const { call, definition } of calls) {
        const typed = call.given[Object.keys(definition.parameters).indexOf(argument)];
        const address = typed === undefined ? undefined : found.get(typed)?.address;
        if (address === undefined) continue;
        const cell = row === "" ? address : cellToMend(address, Number(row));
        if (cell !== undefined && !mends.has(cell)) mends.set(cell, { cell, place });
        break;
      }
    }
  return [...mends.values()];
}
