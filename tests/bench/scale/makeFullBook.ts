import { writeFileSync } from "node:fs";
import { dayOf, isoText } from "../../../src/cells/day.ts";
import { emptyBook } from "../../../src/workbooks/footBook/emptyBook.ts";
import { cases as casesTable } from "../../../src/workbooks/tables/cases.ts";
import type { RecordOf } from "../../../src/workbooks/tables/defineTable.ts";
import { gathers as gathersTable } from "../../../src/workbooks/tables/gathers.ts";
import { saleList } from "../../../src/workbooks/tables/saleList.ts";
import { authorWorkbook } from "../../../src/workbooks/writing/authorWorkbook.ts";

// `npx tsx tests/bench/scale/makeFullBook.ts FILE CASES` writes an invented Flock foot book, the same one each time, to be
// worked out by `soundfold recalc`. Run by hand.

const asOf = dayOf("2026-12-31");
const lesions = ["footrot", "scald", "white line abscess", "CODD"] as const;
const groups = ["Ewes", "Tups", "Gimmers", "Lambs"] as const;

/**
 * An invented Flock foot book with so many cases of a year, four of each animal, none of its formulas worked out. Where
 * they are more than the book we hand out has room for, its room is that much longer, and so are its formulas: rows below
 * the list would be in none, and the time that of a shorter book.
 */
async function fullBook(count: number): Promise<Uint8Array> {
  Object.assign(casesTable, { room: Math.max(casesTable.room, count) });
  // Loaded only now: where things stand is laid down when it is loaded.
  const { flockFootBook } = await import("../../../src/workbooks/footBook/flockFootBook.ts");
  const animals = Math.ceil(count / 4);
  const records = Array.from({ length: count }, (_, place): RecordOf<typeof casesTable> => {
    const seen = dayOf("2026-01-01") + Math.floor((place * 340) / count);
    const medicine = place % 2 === 0;
    return {
      seen,
      treated: seen,
      tag: tagOf(place % animals),
      group: groups[place % groups.length] as string,
      foot: "LF",
      lesion: lesions[place % 4] as string,
      score: 3,
      treatment: medicine ? "injection" : "spray",
      ...(medicine ? { medicine: "own medicine", ml: 5, withdrawalDays: 35 } : { withdrawalDays: 0 }),
      ...(place % 10 === 0 ? {} : { lookedAgain: seen + 7, soundOn: seen + 6 }),
    };
  });
  const gathers = Array.from({ length: Math.min(gathersTable.room, 48) }, (_, place) => ({
    date: dayOf("2026-01-07") + 7 * place,
    group: groups[place % groups.length] as string,
    lookedAt: 60 + place,
    lame: (place * 5) % 9,
  }));
  return authorWorkbook(
    flockFootBook({
      ...emptyBook({ farm: "Invented farm", groups, made: isoText(asOf) }),
      invented: true,
      asOf,
      lameFrom: 2,
      breedingSheep: animals,
      medicines: [{ medicine: "own medicine", mgPerMl: 200, mgPerKg: 20, withdrawalDays: 35, antibiotic: "yes" }],
      gathers,
      cases: records,
      saleDate: asOf,
      saleTags: Array.from({ length: Math.min(animals, saleList.room, 200) }, (_, index) => tagOf(index)),
    }),
  );
}

const tagOf = (animal: number): string => `ZZ 0123456 ${String(animal + 1).padStart(5, "0")}`;

const [file = "book.xlsx", cases = "300"] = process.argv.slice(2);
writeFileSync(file, await fullBook(Number(cases)));
