import { Doubt } from "../cells/doubt.ts";
import { Problem, placeInWords } from "../cells/problem.ts";
import type { Layout } from "./readArguments.ts";

/** What is wrong with a row whose cells can each be read: their dates are in the wrong order, say. */
export type RowFault = (values: Readonly<Record<string, unknown>>, index: number) => Problem | undefined;

/** Rows that were left out of an answer. */
export interface LeftOut {
  readonly rows: number;
  /** The topmost of them, with its place, what is wrong and how to mend it. */
  readonly first: string;
}

interface Kept {
  readonly columns: ReadonlyMap<string, readonly unknown[]>;
  readonly layout: Layout;
  readonly leftOut: LeftOut | undefined;
}

/**
 * Takes the rows out of the columns of a group in which any cell is a Doubt, or whose cells do not fit together.
 *
 * @param values - what was read, by argument; columns of other groups are left alone
 * @param names - the arguments of the group
 * @param doubted - those of them in which any cell is a Doubt
 * @throws Problem when no row stays, since an answer about none would be read as none
 * @returns the columns that lost rows, the rows that stay, and how many were left out; no columns when none was
 */
export function leaveOut(
  values: Readonly<Record<string, unknown>>,
  names: readonly string[],
  doubted: ReadonlySet<string>,
  layout: Layout,
  rowFault?: RowFault,
): Kept {
  const { rows } = layout;
  const columns = names.map((name) => values[name] as readonly unknown[]);
  const looked = columns.filter((_, at) => doubted.has(names[at] as string));
  const leaving: number[] = [];
  let first: string | undefined;
  for (let index = 0; index < rows.length; index++) {
    const fault = faultOf(looked, index) ?? rowFault?.(values, index);
    if (fault === undefined) continue;
    leaving.push(index);
    if (first !== undefined) continue;
    const row = rows[index] as number;
    const { argument } = fault instanceof Doubt ? fault : fault.place;
    first = placeInWords(layout.single ? { argument } : { argument, row }) + fault.sentence;
  }
  if (first === undefined) return { columns: new Map(), layout, leftOut: undefined };
  const left = leaving.length;
  if (left === rows.length)
    throw new Problem(left === 1 ? first : `${first}; like it, none of the ${left} rows can be used`);
  const leaves = new Uint8Array(rows.length);
  for (const index of leaving) leaves[index] = 1;
  const stays = (_: unknown, index: number): boolean => leaves[index] === 0;
  return {
    columns: new Map(names.map((name, at) => [name, (columns[at] as readonly unknown[]).filter(stays)] as const)),
    layout: { ...layout, rows: rows.filter(stays) },
    leftOut: { rows: left, first },
  };
}

function faultOf(columns: readonly (readonly unknown[])[], index: number): Doubt | undefined {
  for (const column of columns) {
    const value = column[index];
    if (value instanceof Doubt) return value;
  }
  return undefined;
}

/**
 * @example
 * leftOutInWords({ rows: 2, first: 'seen, row 3: "?" is not a number; enter …' })
 * // → '2 rows left out; the first to mend: seen, row 3: "?" is not a number; enter …'
 */
export const leftOutInWords = ({ rows, first }: LeftOut): string =>
  `${rows === 1 ? "1 row" : `${rows} rows`} left out; ${rows === 1 ? "to mend" : "the first to mend"}: ${first}`;
