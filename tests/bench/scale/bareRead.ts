import { DuckDBInstance } from "@duckdb/node-api";

// `npx tsx tests/bench/scale/bareRead.ts FOLDER [numbers]`: what compare is held against. The same columns of the same rows
// are read in the order of the flocks, chunk by chunk, and nothing is done with them. With `numbers` a tag of 15 digits is
// read as a number, as compare does since texts of more than 12 bytes are slow to hand over; else as the text it is. Run by
// hand.

const [folder = ".", as = "texts"] = process.argv.slice(2);
const instance = await DuckDBInstance.create(`${folder}/bare.duckdb`, {
  memory_limit: "512MB",
  temp_directory: `${folder}/aside`,
  preserve_insertion_order: "false",
});
const duck = await instance.connect();
const tag = as === "numbers" ? `TRY_CAST("Tag" AS DOUBLE)` : `"Tag"`;
let rows = 0;
for (const sql of [
  `SELECT "Flock", "Date", "Looked at", "Lame" FROM read_parquet('${folder}/gathers.parquet') ORDER BY "Flock"`,
  `SELECT "Flock", ${tag}, "Seen lame" FROM read_parquet('${folder}/cases.parquet') ORDER BY "Flock"`,
]) {
  const result = await duck.stream(sql);
  for (let chunk = await result.fetchChunk(); chunk && chunk.rowCount > 0; chunk = await result.fetchChunk()) {
    const [first = []] = chunk.getColumns();
    rows += first.length;
  }
}
console.log(rows);
duck.closeSync();
instance.closeSync();
