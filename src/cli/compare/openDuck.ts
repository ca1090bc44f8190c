import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { DuckDBConnection } from "@duckdb/node-api";
import { BadInput } from "../badInput.ts";

/** What the database may hold in memory before it sets things aside on the disk. */
const memory = "512MB";

/**
 * Works with a database of its own, which is gone afterwards. It lies in a file, so that what does not fit into memory
 * is set aside.
 *
 * @throws BadInput when the database is not installed
 */
export async function withDuck<T>(work: (duck: DuckDBConnection) => Promise<T>): Promise<T> {
  const { DuckDBInstance } = await loaded();
  const folder = await mkdtemp(join(tmpdir(), "soundfold-compare-"));
  try {
    const instance = await DuckDBInstance.create(join(folder, "records.duckdb"), {
      memory_limit: memory,
      temp_directory: join(folder, "aside"),
      preserve_insertion_order: "false",
      // Nothing is fetched over a network, whatever a file's name looks like.
      autoinstall_known_extensions: "false",
      autoload_known_extensions: "false",
    });
    const duck = await instance.connect();
    try {
      return await work(duck);
    } finally {
      duck.closeSync();
      instance.closeSync();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function loaded(): Promise<typeof import("@duckdb/node-api")> {
  try {
    return await import("@duckdb/node-api");
  } catch {
    throw new BadInput(
      "compare counts with the database DuckDB, which is not installed here. Install it beside soundfold, with\n  npm install @duckdb/node-api\nand run compare again. For some machines it is not made; collate compares a folder of foot books without it.",
    );
  }
}

/**
 * The columns of an answer, some two thousand rows at a time: never more are held.
 *
 * @param onColumns - is given the cells of each column, row by row
 */
export async function eachChunk(
  duck: DuckDBConnection,
  sql: string,
  onColumns: (columns: readonly unknown[][]) => void,
): Promise<void> {
  const result = await duck.stream(sql);
  for (let chunk = await result.fetchChunk(); chunk && chunk.rowCount > 0; chunk = await result.fetchChunk())
    onColumns(chunk.getColumns());
}

/** A text as SQL writes it. */
export const sqlText = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** A column's name as SQL writes it. */
export const sqlName = (name: string): string => `"${name.replaceAll('"', '""')}"`;
