import type { DuckDBConnection } from "@duckdb/node-api";
import { eachChunk } from "./openDuck.ts";

/**
 * The rows of an answer that is in the order of its first column, a flock at a time: never more than one is held.
 *
 * @param onFlock - is given the number of the flock and the columns after the first
 */
export async function byFlock(
  duck: DuckDBConnection,
  sql: string,
  onFlock: (flock: number, columns: readonly unknown[][]) => void,
): Promise<void> {
  let open: { readonly flock: number; readonly columns: unknown[][] } | undefined;
  await eachChunk(duck, sql, ([flocks = [], ...cells]) => {
    for (let begin = 0; begin < flocks.length; ) {
      const flock = Number(flocks[begin]);
      let end = begin + 1;
      while (end < flocks.length && flocks[end] === flocks[begin]) end++;
      const columns = cells.map((column) => column.slice(begin, end));
      begin = end;
      if (open?.flock === flock) {
        for (const [index, column] of open.columns.entries())
          for (const cell of columns[index] ?? []) column.push(cell);
        continue;
      }
      if (open) onFlock(open.flock, open.columns);
      open = { flock, columns };
    }
  });
  if (open) onFlock(open.flock, open.columns);
}
