import { basename } from "node:path";
import type { DuckDBAppender, DuckDBConnection } from "@duckdb/node-api";
import type { BookRecords } from "../../workbooks/collate/readBookRecords.ts";
import type { CaseKey, GatherKey, RecordFile } from "./recordSources.ts";

/** The records of foot books as two tables of the database, which are read as files are. */
export class BookTables {
  private readonly gathers: DuckDBAppender;
  private readonly cases: DuckDBAppender;
  private books = 0;

  private constructor(gathers: DuckDBAppender, cases: DuckDBAppender) {
    this.gathers = gathers;
    this.cases = cases;
  }

  static async made(duck: DuckDBConnection): Promise<BookTables> {
    await duck.run(
      'CREATE TABLE book_gathers (flock VARCHAR, "group" VARCHAR, day INTEGER, looked_at DOUBLE, lame DOUBLE, given BOOLEAN)',
    );
    await duck.run("CREATE TABLE book_cases (flock VARCHAR, tag VARCHAR, day INTEGER, given BOOLEAN)");
    return new BookTables(await duck.createAppender("book_gathers"), await duck.createAppender("book_cases"));
  }

  add({ flock, gathers, cases }: BookRecords, file: string): void {
    const name = flock ?? basename(file).replace(/\.[^.]*$/, "");
    this.books++;
    for (const { group, day, lookedAt, lame } of gathers) {
      this.gathers.appendVarchar(name);
      text(this.gathers, group);
      whole(this.gathers, day);
      number(this.gathers, lookedAt);
      number(this.gathers, lame);
      this.gathers.appendBoolean(true);
      this.gathers.endRow();
    }
    for (const { tag, day } of cases) {
      this.cases.appendVarchar(name);
      text(this.cases, tag);
      whole(this.cases, day);
      this.cases.appendBoolean(true);
      this.cases.endRow();
    }
  }

  /** Nothing can be added any more. */
  asFiles(): { readonly gathers: readonly RecordFile<GatherKey>[]; readonly cases: readonly RecordFile<CaseKey>[] } {
    this.gathers.closeSync();
    this.cases.closeSync();
    if (this.books === 0) return { gathers: [], cases: [] };
    const flock = { name: "flock", type: "VARCHAR" };
    const day = { name: "day", type: "INTEGER" };
    // That a row is there at all is known before: one in which nothing can be read is no blank row.
    const given = { name: "given", type: "BOOLEAN" };
    const file = "the foot books";
    return {
      gathers: [
        {
          file,
          from: "book_gathers",
          flock,
          given,
          columns: {
            date: day,
            group: { name: "group", type: "VARCHAR" },
            lookedAt: { name: "looked_at", type: "DOUBLE" },
            lame: { name: "lame", type: "DOUBLE" },
          },
        },
      ],
      cases: [
        {
          file,
          from: "book_cases",
          flock,
          given,
          columns: { treated: day, tag: { name: "tag", type: "VARCHAR" } },
        },
      ],
    };
  }
}

const text = (appender: DuckDBAppender, value: string | undefined): void =>
  value === undefined ? appender.appendNull() : appender.appendVarchar(value);

const whole = (appender: DuckDBAppender, value: number | undefined): void =>
  value === undefined ? appender.appendNull() : appender.appendInteger(value);

const number = (appender: DuckDBAppender, value: number | undefined): void =>
  value === undefined ? appender.appendNull() : appender.appendDouble(value);
