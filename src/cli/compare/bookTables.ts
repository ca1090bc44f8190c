import { basename } from "node:path";
import type { DuckDBAppender, DuckDBConnection } from "@duckdb/node-api";
import { isoText } from "../../cells/day.ts";
import { nameKey } from "../../core/words/nameKey.ts";
import { several } from "../../workbooks/collate/doneFigure.ts";
import type { FlockRecord } from "../../workbooks/collate/flockRecord.ts";
import type { BookRecords } from "../../workbooks/collate/readBookRecords.ts";
import type { CaseKey, GatherKey, RecordFile } from "./recordSources.ts";

interface AddedBook {
  readonly number: number;
  readonly file: string;
  /** Of its flock. */
  readonly key: string;
  /** The latest day of a gather that counts. */
  readonly latest: number;
  readonly years: ReadonlySet<number>;
  readonly record: FlockRecord;
}

/** A book that is not counted, since another of the same flock is. */
export interface LeftBook {
  readonly file: string;
  readonly kept: string;
}

const isCount = (value: number | undefined): value is number =>
  value !== undefined && Number.isInteger(value) && value >= 0;

/** The records of foot books as two tables of the database, which are read as files are. */
export class BookTables {
  private readonly gathers: DuckDBAppender;
  private readonly cases: DuckDBAppender;
  private readonly duck: DuckDBConnection;
  private readonly books: AddedBook[] = [];
  private readonly gone = new Set<number>();

  private constructor(duck: DuckDBConnection, gathers: DuckDBAppender, cases: DuckDBAppender) {
    this.duck = duck;
    this.gathers = gathers;
    this.cases = cases;
  }

  static async made(duck: DuckDBConnection): Promise<BookTables> {
    await duck.run(
      'CREATE TABLE book_gathers (book INTEGER, flock VARCHAR, "group" VARCHAR, day INTEGER, looked_at DOUBLE, lame DOUBLE, given BOOLEAN)',
    );
    await duck.run("CREATE TABLE book_cases (book INTEGER, flock VARCHAR, tag VARCHAR, day INTEGER, given BOOLEAN)");
    return new BookTables(duck, await duck.createAppender("book_gathers"), await duck.createAppender("book_cases"));
  }

  add({ flock, gathers, cases, record }: BookRecords, file: string): void {
    const name = flock ?? basename(file).replace(/\.[^.]*$/, "");
    const number = this.books.length;
    const counted = gathers.filter(
      ({ day, lookedAt, lame }) => day !== undefined && isCount(lookedAt) && isCount(lame) && lame <= lookedAt,
    );
    const days = counted.flatMap(({ day }) => day ?? []);
    this.books.push({
      number,
      file,
      key: nameKey(name),
      latest: days.reduce((latest, day) => Math.max(latest, day), 0),
      years: new Set(days.map((day) => Number(isoText(day).slice(0, 4)))),
      record,
    });
    for (const { group, day, lookedAt, lame } of gathers) {
      this.gathers.appendInteger(number);
      this.gathers.appendVarchar(name);
      text(this.gathers, group);
      whole(this.gathers, day);
      double(this.gathers, lookedAt);
      double(this.gathers, lame);
      this.gathers.appendBoolean(true);
      this.gathers.endRow();
    }
    for (const { tag, day } of cases) {
      this.cases.appendInteger(number);
      this.cases.appendVarchar(name);
      text(this.cases, tag);
      whole(this.cases, day);
      this.cases.appendBoolean(true);
      this.cases.endRow();
    }
  }

  /**
   * Keeps of two books of one flock the one that collate keeps: of those with gathers in the year, the one written in
   * last. To be called once nothing is added any more.
   *
   * @returns the books that were left, each with the one that stands in its place
   */
  async leaveTwins(year: number): Promise<readonly LeftBook[]> {
    const byFlock = new Map<string, AddedBook[]>();
    for (const book of this.books) byFlock.set(book.key, [...(byFlock.get(book.key) ?? []), book]);
    const left: LeftBook[] = [];
    for (const twins of byFlock.values()) {
      if (twins.length < 2) continue;
      const ofYear = twins.filter(({ years }) => years.has(year));
      const [first, ...others] = ofYear.length > 0 ? ofYear : twins;
      const kept = others.reduce((last, book) => (book.latest > (last?.latest ?? 0) ? book : last), first);
      for (const book of twins) {
        if (kept === undefined || book === kept || this.gone.has(book.number)) continue;
        this.gone.add(book.number);
        for (const table of ["book_gathers", "book_cases"])
          await this.duck.run(`DELETE FROM ${table} WHERE book = ${book.number}`);
        left.push({ file: book.file, kept: kept.file });
      }
    }
    return left;
  }

  /** What is kept of each book that is counted, by the key of its flock. */
  records(): ReadonlyMap<string, FlockRecord> {
    return new Map(this.books.filter(({ number }) => !this.gone.has(number)).map(({ key, record }) => [key, record]));
  }

  /** What was left out of books that are counted, in words. */
  leftOut(): readonly string[] {
    const kept = this.books.filter(({ number }) => !this.gone.has(number));
    return kept.flatMap(({ file, record: { leftOut, inNoCase } }) => {
      const noCase =
        inNoCase === 0 ? [] : [`${several(inNoCase, "row")} of Cases without a tag or a day that can be read`];
      return [...leftOut, ...noCase].map((words) => `${basename(file)}, ${words}`);
    });
  }

  /** Nothing can be added any more. */
  asFiles(): { readonly gathers: readonly RecordFile<GatherKey>[]; readonly cases: readonly RecordFile<CaseKey>[] } {
    this.gathers.closeSync();
    this.cases.closeSync();
    if (this.books.length === 0) return { gathers: [], cases: [] };
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

const double = (appender: DuckDBAppender, value: number | undefined): void =>
  value === undefined ? appender.appendNull() : appender.appendDouble(value);
