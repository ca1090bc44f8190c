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
import { handsOn } from "./handsOn.ts";
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
  /** The FOOT functions that stand in it. */
  readonly calls: readonly ExplainedCall[];
}

export interface ExplainedCall {
  /** `FOOT.FLOCKPREV` */
  readonly name: string;
  /** What it answers. */
  readonly answers: string;
  /** What it fills the sheet with. */
  readonly gives: string;
  /** The functions around it, up to the FOOT function it stands in, in a sentence; undefined where there are none. */
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
  /** The FOOT functions in it that stand in no other; each with those that stand in it. */
  readonly calls: readonly ExplainedCall[];
  /** What the cell shows, with the sentence of an error. */
  readonly answer: string;
  /** What a function said inside another that keeps its error from the cell. */
  readonly caught: string | undefined;
  /** It is an error. */
  readonly failed: boolean;
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
  const calls = all.flatMap((call, place) => {
    const definition = definitionOf(call, definitions);
    return definition ? [{ call, definition, place }] : [];
  });
  const failed = isCellError(answer.cells[0]?.[0]);
  return {
    formula,
    hint: hintFor(formula, all, definitions),
    calls: standingIn(undefined, 0, { all, calls, found, dayOffset }),
    answer: answerInWords(
      answer,
      calls.find(({ place }) => handsOn(all, place)),
      dayOffset,
    ),
    caught: failed || answer.message === undefined ? undefined : words.explain.caught(answer.message),
    failed,
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
  /** Among all calls of the formula. */
  readonly place: number;
}

interface Formula {
  /** The calls of other functions too. */
  readonly all: readonly Call[];
  readonly calls: readonly Known[];
  readonly found: Found;
  readonly dayOffset: number;
}

/** The FOOT functions that stand in one argument of a call, but in no other FOOT function there; or in the formula. */
const standingIn = (outer: number | undefined, argument: number, formula: Formula): readonly ExplainedCall[] =>
  formula.calls
    .filter((known) => {
      const around = aroundIt(known, formula);
      return around?.call === outer && (around === undefined || around.argument === argument);
    })
    .map((known) => explained(known, formula));

/** The FOOT function next around a call, and in which of its arguments the call stands. */
function aroundIt({ call }: Known, { all, calls }: Formula): Call["within"] {
  let { within } = call;
  while (within) {
    const { call: place } = within;
    if (calls.some((known) => known.place === place)) return within;
    within = all[place]?.within;
  }
  return undefined;
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

function explained(known: Known, formula: Formula): ExplainedCall {
  const { call, definition, place } = known;
  const { given } = call;
  const { found, dayOffset } = formula;
  const outer = aroundIt(known, formula);
  const inside =
    outer === undefined ? call.inside : call.inside.slice((formula.all[outer.call]?.inside.length ?? 0) + 1);
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
        calls: standingIn(place, index, formula),
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

/** @param alone - the function whose answer it is, where no other makes something else of it */
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

/** Where the cells of an argument are; of a function that answers row by row, where its first cells are. */
function addressOf(typed: string, calls: readonly Known[], found: Found): string | undefined {
  const address = found.get(typed)?.address;
  if (address !== undefined) return address;
  const rowByRow = calls.find(
    ({ call, definition }) =>
      definition.result.shape === "alongside" &&
      typed.startsWith(`${call.name}(`) &&
      typed.includes(call.given[0] ?? ""),
  );
  return rowByRow?.call.given.map((given) => found.get(given)?.address).find((known) => known !== undefined);
}

function mendsIn(sentences: readonly string[], calls: readonly Known[], found: Found): readonly Mend[] {
  const mends = new Map<string, Mend>();
  for (const sentence of sentences)
    for (const [place, argument = "", row = ""] of sentence.matchAll(/\b([a-z][a-z_]*)(?:, row (\d+))?(?=: )/g)) {
      for (const { call, definition } of calls) {
        const typed = call.given[Object.keys(definition.parameters).indexOf(argument)];
        const address = typed === undefined ? undefined : addressOf(typed, calls, found);
        if (address === undefined) continue;
        const cell = row === "" ? address : cellToMend(address, Number(row));
        if (cell !== undefined && !mends.has(cell)) mends.set(cell, { cell, place });
        break;
      }
    }
  return [...mends.values()];
}
