import { DuckDBInstance } from "@duckdb/node-api";

// `npx tsx tests/bench/scale/makeRecords.ts FOLDER FLOCKS CASES GATHERS` writes invented records into two Parquet files,
// the same ones each time: animals of the code 999, cases over two years, gathers of two groups. Run by hand.

const [folder = ".", flocks = "20000", cases = "10000000", gathers = "1000000"] = process.argv.slice(2);

const instance = await DuckDBInstance.create(":memory:", { memory_limit: "1GB" });
const duck = await instance.connect();
// A number that looks drawn by chance, from 0 to 1, the same for the same row.
const chance = (salt: number): string => `(hash(i * 16 + ${salt}) % 1000003) / 1000003.0`;
const day = (salt: number): string => `DATE '2025-01-01' + (${chance(salt)} * 729)::INTEGER`;
const flock = (salt: number): string => `(hash(i * 16 + ${salt}) % ${Number(flocks)})::INTEGER`;

// An animal of its flock: so many that each has some three records.
const animals = Math.max(1, Math.round(Number(cases) / Number(flocks) / 3));
await duck.run(`COPY (
  SELECT 'Flock ' || f AS "Flock", '999' || lpad((f * ${animals} + a + 1)::VARCHAR, 12, '0') AS "Tag",
    d AS "Seen lame", d + (${chance(3)} * 4)::INTEGER AS "Treated"
  FROM (SELECT i, ${flock(0)} AS f, (hash(i * 16 + 1) % ${animals})::INTEGER AS a, ${day(2)} AS d
    FROM range(${Number(cases)}) AS rows(i)))
  TO '${folder}/cases.parquet' (FORMAT parquet)`);
await duck.run(`COPY (
  SELECT 'Flock ' || f AS "Flock", d AS "Date", CASE WHEN i % 2 = 0 THEN 'ewes' ELSE 'lambs' END AS "Group", n AS "Looked at",
    least(n, floor(n * (0.01 + 0.09 * (hash(f) % 1009) / 1009.0) * 2 * ${chance(8)}))::INTEGER AS "Lame"
  FROM (SELECT i, ${flock(5)} AS f, ${day(6)} AS d, 40 + (${chance(7)} * 160)::INTEGER AS n
    FROM range(${Number(gathers)}) AS rows(i)))
  TO '${folder}/gathers.parquet' (FORMAT parquet)`);
duck.closeSync();
instance.closeSync();
