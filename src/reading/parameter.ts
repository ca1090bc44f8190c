import type { Cell } from "../cells/cell.ts";
import { Doubt } from "../cells/doubt.ts";
import type { CellKind } from "./kind.ts";

/** How one argument of a worksheet function is read. `T` is what the computation receives. */
export interface Parameter<T> {
  /** `one` cell, a `column` (one column or one row), or a `block` of raw cells. */
  readonly shape: "one" | "column" | "block";
  readonly kind: CellKind<unknown>;
  /** One plain sentence for the person who types the formula. */
  readonly description: string;
  readonly optional: boolean;
  /** What stands when the argument is left out, as the user would type it. */
  readonly fallback: Cell | undefined;
  /** Columns of one group have the same height and lose their blank rows together. */
  readonly group: string;
  /** Whether a blank cell in a row that is otherwise filled is a value ("not yet") or a fault. */
  readonly gaps: "refuse" | "keep";
  /**
   * What becomes of a cell that cannot be read: the whole call is refused; the cell is kept, as a Doubt; it is kept where
   * the range holds several rows, and a lone cell is refused; or its row is left out, and the answer says so.
   */
  readonly faults: "refuse" | "keep" | "keep in rows" | "leave out";
  /** A single cell stands for every row of the other columns. */
  readonly repeats: boolean;
  /** A column arrives as an array of numbers alone. */
  readonly numbers: boolean;
  /** Carries the type only; never set. */
  readonly value?: T;
}

// biome-ignore lint/suspicious/noExplicitAny: a record of parameters of any value type
export type Parameters = Readonly<Record<string, Parameter<any>>>;

/** What the computation of a function with these parameters receives. */
export type ValuesOf<P extends Parameters> = { readonly [K in keyof P]: P[K] extends Parameter<infer T> ? T : never };

const base = {
  optional: false,
  fallback: undefined,
  group: "rows",
  gaps: "refuse",
  faults: "refuse",
  repeats: false,
  numbers: false,
} as const;

/** One cell that must be filled. */
export const one = <T>(kind: CellKind<T>, description: string): Parameter<T> => ({
  ...base,
  shape: "one",
  kind,
  description,
});

/** One cell that may be left out; then `fallback` stands. */
export const oneOr = <T>(kind: CellKind<T>, fallback: Cell, description: string): Parameter<T> => ({
  ...base,
  shape: "one",
  kind,
  description,
  optional: true,
  fallback,
});

/** One cell that may be left out or blank. */
export const oneOrNone = <T>(kind: CellKind<T>, description: string): Parameter<T | undefined> => ({
  ...base,
  shape: "one",
  kind,
  description,
  optional: true,
});

export interface ColumnChoices {
  /** Columns of another group may have another height. */
  readonly group?: string;
  /** A single cell stands for every row of the other columns. */
  readonly repeats?: boolean;
}

/** A column in which every row that holds a record is filled. */
export const column = <T>(
  kind: CellKind<T>,
  description: string,
  choices: ColumnChoices = {},
): Parameter<readonly T[]> => ({ ...base, ...choices, shape: "column", kind, description });

/** Such a column of numbers, for long ones: an array that holds nothing else is made in a quarter of the time. */
export const asNumbers = ({ value, ...column }: Parameter<readonly number[]>): Parameter<Float64Array> => ({
  ...column,
  numbers: true,
});

/** A column in which a blank cell is an answer ("not yet", "not scored"); it arrives as undefined. */
export const gappedColumn = <T>(
  kind: CellKind<T>,
  description: string,
  choices: ColumnChoices = {},
): Parameter<readonly (T | undefined)[]> => ({ ...base, ...choices, shape: "column", kind, description, gaps: "keep" });

/** A gapped column that may be left out altogether. */
export const gappedColumnOrNone = <T>(
  kind: CellKind<T>,
  description: string,
  choices: ColumnChoices = {},
): Parameter<readonly (T | undefined)[] | undefined> => ({
  ...base,
  ...choices,
  shape: "column",
  kind,
  description,
  gaps: "keep",
  optional: true,
});

/** What becomes of the cells of one record that cannot be read. */
type KeptFaults = Extract<Parameter<unknown>["faults"], "keep" | "keep in rows">;

interface DoubtChoices extends ColumnChoices {
  readonly faults?: KeptFaults;
}

/** A column whose faulty and missing cells arrive as a Doubt each, so that a bad record costs only itself. */
export const doubtColumn = <T>(
  kind: CellKind<T>,
  description: string,
  choices: DoubtChoices = {},
): Parameter<readonly (T | Doubt)[]> => ({ ...base, faults: "keep", ...choices, shape: "column", kind, description });

/** The same, for a column in which a blank is an answer. */
export const gappedDoubtColumn = <T>(
  kind: CellKind<T>,
  description: string,
  choices: DoubtChoices = {},
): Parameter<readonly (T | undefined | Doubt)[]> => ({
  ...base,
  faults: "keep",
  ...choices,
  shape: "column",
  kind,
  description,
  gaps: "keep",
});

/** The same, for a column that may be left out altogether. */
export const gappedDoubtColumnOrNone = <T>(
  kind: CellKind<T>,
  description: string,
  choices: DoubtChoices = {},
): Parameter<readonly (T | undefined | Doubt)[] | undefined> => ({
  ...gappedDoubtColumn(kind, description, choices),
  optional: true,
});

/** A value of a range of one cell, where a cell that cannot be read was refused already. */
export const readable = <T>(value: T | Doubt): T => {
  if (value instanceof Doubt) throw new TypeError("a lone cell that cannot be read should have been refused");
  return value;
};

/** The columns of a group whose rows are left out, and told of in the answer, where any cell of them cannot be read. */
export const leavingOut = <T>(parameter: Parameter<T>): Parameter<T> => ({ ...parameter, faults: "leave out" });

/** A rectangle of cells, handed on as it is. */
export const block = (kind: CellKind<Cell>, description: string): Parameter<readonly (readonly Cell[])[]> => ({
  ...base,
  shape: "block",
  kind,
  description,
});
