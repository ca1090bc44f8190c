import { DuckDBInstance } from "@duckdb/node-api";

// `npx tsx tests/bench/scale/casesInSql.ts FOLDER`: the number of cases by the same rule in windows of SQL, for records
// of which every tag is spelled in one way. Run by hand.

const [folder = "."] = process.argv.slice(2);
const instance = await DuckDBInstance.create(`${folder}/windows.duckdb`, {
  memory_limit: "512MB",
  temp_directory: `${folder}/aside`,
});
const duck = await instance.connect();
const result = await duck.run(`SELECT count(*) FILTER (WHERE gap IS NULL OR gap > 14) FROM (
  SELECT "Seen lame" - lag("Seen lame") OVER (PARTITION BY "Flock", "Tag" ORDER BY "Seen lame") AS gap
  FROM read_parquet('${folder}/cases.parquet'))`);
console.log(String((await result.getRows())[0]?.[0]));
duck.closeSync();
instance.closeSync();
