import type { Cell, Cells } from "../cells/cell.ts";
import type { Problem } from "../cells/problem.ts";
import type { Parameters, ValuesOf } from "../reading/parameter.ts";
import type { Result } from "../writing/result.ts";
import type { Source } from "./source.ts";
import type { Topic } from "./topics.ts";

/** An argument of an example: a cell, a column written as a list, or a rectangle; undefined leaves it out. */
export type ExampleArgument = Cell | readonly Cell[] | Cells | undefined;

/** A number that is right to so many decimals, for values that a source prints rounded. */
export interface About {
  readonly about: number;
  readonly decimals: number;
}

export type ExampleCell = Exclude<Cell, null> | About;

/** What an example gives: one cell, a row or column of cells, a table, or the problem it is refused with. */
export type ExampleAnswer = ExampleCell | readonly (readonly ExampleCell[])[] | Problem;

export interface Example {
  /** What the example shows, in plain words. */
  readonly shows?: string;
  readonly call: readonly ExampleArgument[];
  readonly gives: ExampleAnswer;
}

/** Helps a computation to name rows of the sheet in words. */
export interface Origin {
  /** The row of the sheet's range that the record at this place came from. */
  readonly row: (index: number, group?: string) => number;
  /** Whether the columns of a group are single cells, so that a fault can be told as an error instead of in a row. */
  readonly single: (group?: string) => boolean;
  /** Added to a date's number to get its 1900-system serial, for functions that look at the cells themselves. */
  readonly dayOffset: number;
}

export interface FunctionDefinition<P extends Parameters = Parameters, R = unknown> {
  /** Without the namespace: `FLOCKPREV` is typed as `=FOOT.FLOCKPREV(…)`. */
  readonly name: string;
  /** One sentence for the formula list: what it answers. */
  readonly summary: string;
  /** What a person would ask, in their words; the search in the task pane reads these. */
  readonly questions: readonly string[];
  /** Rules that the user must know, a sentence or two each. */
  readonly notes: readonly string[];
  readonly parameters: P;
  readonly result: Result<R>;
  /** Said wherever the function is offered, when its answer touches medicine, chemicals or food. */
  readonly caution: { readonly words: string; readonly brief: string } | undefined;
  readonly sources: readonly Source[];
  readonly compute: (values: ValuesOf<P>, origin: Origin) => R;
  /**
   * Where rows that cannot be read are left out: what is wrong with a row whose cells can each be read, such as dates in
   * the wrong order. Then that row is left out too.
   */
  rowFault?(values: ValuesOf<P>, index: number): Problem | undefined;
  readonly examples: readonly Example[];
}

/** One worksheet function. The types of `compute` follow from `parameters` and `result`. */
export const defineFunction = <P extends Parameters, R>(
  definition: FunctionDefinition<P, R>,
): FunctionDefinition<P, R> => definition;

/** A definition whose parameter and result types no longer matter: what hosts work with. */
// biome-ignore lint/suspicious/noExplicitAny: the types were checked where the function was defined
export type AnyFunction = FunctionDefinition<any, any>;

/** A definition as the catalogue lists it, which knows the topic. */
export interface ListedFunction extends AnyFunction {
  readonly topic: Topic;
}

/** An example's value that is right to `decimals` decimals. */
export const about = (value: number, decimals = 10): About => ({ about: value, decimals });
