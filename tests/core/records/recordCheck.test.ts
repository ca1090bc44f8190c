import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { dayOf } from "../../../src/cells/day.ts";
import { recordCheck } from "../../../src/core/records/recordCheck.ts";
import { recordField, recordFields } from "../../../src/core/records/recordFields.ts";

// Common practice, no source: the headings and ranges are ours.
describe("recordField", () => {
  it.each([
    ["Ear tag No.", "tag"],
    ["DATE TREATED", "treated"],
    ["Date", "treated"],
    ["Date seen lame", "seen lame"],
    ["Withdrawal (days)", "withdrawal days"],
    ["Withdrawal ends", "clear date"],
    ["Clear", "clear date"],
    ["Re-check due", "recheck"],
    ["Lameness score", "score"],
    ["Dose ml", "dose"],
    ["Weight (kg)", "weight"],
    ["Which foot", "foot"],
    ["Foot problem", "lesion"],
    ["Batch of product", "batch"],
    ["Animals", "number treated"],
    ["Looked again", "looked again"],
    ["Look again on", "recheck"],
  ])("takes %s for %s", (heading, field) => expect(recordField(heading)).toBe(field));

  it.each(["Date of birth", "Recheck done", "Treated by", "Stage", "", "Dose per kg"])("leaves %s alone", (heading) =>
    expect(recordField(heading)).toBeUndefined(),
  );

  // Regulation (EU) 2019/6, Article 108(2), read; the headings of medicine books printed for Great Britain, read in the
  // contents of two of them: identity, number treated, treatment started and finished, withdrawal period ended, reason.
  it.each([
    ["Identity of animals", "tag"],
    ["Identity of animal/group treated", "tag"],
    ["Number treated", "number treated"],
    ["No. of animals treated", "number treated"],
    ["Date treatment started", "treatment started"],
    ["Date treatment finished", "treated"],
    ["Date of administration", "treated"],
    ["Withdrawal period", "withdrawal days"],
    ["Meat withdrawal period (days)", "withdrawal days"],
    ["WD", "withdrawal days"],
    ["Date withdrawal period ended", "clear date"],
    ["Reason for treatment", "reason"],
    ["Batch number", "batch"],
    ["Name of product", "product"],
  ])("takes %s of a medicine book for %s", (heading, field) => expect(recordField(heading)).toBe(field));

  it.each([
    "Name of person who administered medicine",
    "Total quantity of medicine used",
    "Administered by",
    "Expiry date",
  ])("leaves %s of a medicine book alone", (heading) => expect(recordField(heading)).toBeUndefined());

  it("knows every field by its own name", () => {
    for (const field of recordFields) expect(recordField(field)).toBe(field);
  });
});

const asOf = dayOf("2026-03-14");
const options = { asOf, dayOffset: 0 };
const headings = [
  "Tag",
  "Seen lame",
  "Treated",
  "Sound on",
  "Left flock",
  "Lesion",
  "Foot",
  "Score",
  "Weight",
  "Dose",
  "Withdrawal",
  "Clear",
  "Recheck",
];
const sound: Readonly<Record<string, Cell>> = {
  Tag: "042",
  "Seen lame": dayOf("2026-02-09"),
  Treated: dayOf("2026-02-10"),
  "Sound on": dayOf("2026-02-15"),
  "Left flock": dayOf("2026-03-12"),
  Lesion: "scald",
  Foot: "LF",
  Score: 2,
  Weight: 70,
  Dose: 7,
  Withdrawal: 28,
  Clear: dayOf("2026-03-11"),
  Recheck: dayOf("2026-02-17"),
};
const rowOf = (change: Readonly<Record<string, Cell>> = {}): Cell[] =>
  headings.map((heading) => ({ ...sound, ...change })[heading] ?? null);
const check = (...rows: Cell[][]) => recordCheck(headings, rows, options).findings;
const first = (change: Readonly<Record<string, Cell>>) =>
  check(rowOf(change)).map(({ heading, what }) => `${heading}: ${what}`);

describe("recordCheck", () => {
  it("says of a lesion in doubt, misspelt or of two meanings what is wrong with it, and takes our own form of a date", () => {
    expect(first({ Lesion: "scald?" })).toEqual(['Lesion: "scald?" is not sure']);
    expect(first({ Lesion: "abcess" })).toEqual(['Lesion: "abcess" is read as "abscess", white line abscess']);
    expect(check(rowOf({ Lesion: "foot abscess" }))[0]).toMatchObject({
      what: '"foot abscess" may be a toe abscess (under the white line) or a heel abscess (in the joint)',
      mend: "enter toe abscess or heel abscess",
    });
    expect(first({ Lesion: "scald + footrot" })).toEqual([]);
    expect(first({ Treated: "10 Feb 2026" })).toEqual(["Treated: a date kept as text, read as 10 Feb 2026"]);
  });

  it("reads a medicine book: a finish before the start is named, and the days run from the finish", () => {
    const book = ["Identity of animals", "Number treated", "Date treatment started", "Date treatment finished", "WD"];
    const ends = [...book, "Date withdrawal period ended"];
    const [start, finish] = [dayOf("2026-02-10"), dayOf("2026-02-12")];
    const read = (...row: Cell[]) => recordCheck(ends, [row], options).findings.map(({ what }) => what);
    expect(read("042", 1, start, finish, 28, finish + 29)).toEqual([]);
    expect(read("042", 1, finish, start, 28, start + 29)).toEqual([
      "10 Feb 2026 is before 12 Feb 2026, when the animal was first treated",
    ]);
    expect(read("042", 1, start, finish, 28, start + 29)).toEqual([
      "11 Mar 2026 is too early: 28 withdrawal days after 12 Feb 2026 give 13 Mar 2026",
    ]);
    expect(read("042", 0.5, start, finish, 28, finish + 29)).toEqual(["0.5 is not from 1 to 100000"]);
  });

  it("finds nothing in a sound record", () => expect(check(rowOf())).toEqual([]));

  it.each<[string, Record<string, Cell>, string]>([
    ["a missing tag", { Tag: null }, "Tag: no tag in a row that holds a record"],
    ["a spoiled tag", { Tag: 1e16 }, "Tag: 10000000000000000 has more than 15 digits"],
    ["an error cell", { Dose: { error: "#DIV/0!" } }, "Dose: the cell holds #DIV/0!"],
    [
      "a date in the future",
      { "Sound on": dayOf("2026-03-15"), "Left flock": null, Recheck: null },
      "Sound on: 15 Mar 2026 is in the future",
    ],
    ["a text date", { Treated: "2026-02-10" }, "Treated: a date kept as text, read as 10 Feb 2026"],
    ["a text that is no date", { Treated: "10/2" }, 'Treated: "10/2" is not a date'],
    [
      "a date of 1926",
      { "Seen lame": dayOf("1926-02-09") },
      "Seen lame: 9537, the day 9 Feb 1926, is not a date from 1990-01-01",
    ],
    [
      "treated before seen",
      { "Seen lame": dayOf("2026-02-11") },
      "Treated: 10 Feb 2026 is before 11 Feb 2026, when the animal was seen lame",
    ],
    [
      "sound before treated",
      { "Sound on": dayOf("2026-02-09") },
      "Sound on: 9 Feb 2026 is before 10 Feb 2026, when the animal was treated",
    ],
    [
      "sold before sound",
      { "Left flock": dayOf("2026-02-14") },
      "Left flock: 14 Feb 2026 is before 15 Feb 2026, when the animal was found sound",
    ],
    [
      "sold before treated",
      { "Left flock": dayOf("2026-02-09"), "Sound on": null },
      "Left flock: 9 Feb 2026 is before 10 Feb 2026, when the animal was treated",
    ],
    ["a recheck before treatment", { Recheck: dayOf("2026-01-17") }, "Recheck: 17 Jan 2026 is before 10 Feb 2026"],
    ["an unknown lesion", { Lesion: "limp" }, 'Lesion: "limp" is not a lesion known here'],
    ["an unknown foot", { Foot: "tail" }, 'Foot: "tail" is not a foot known here'],
    ["a score off the scale", { Score: 7 }, "Score: 7 is not from 0 to 6"],
    ["a weight out of range", { Weight: 700 }, "Weight: 700 is not from 1 to 200"],
    ["a dose out of range", { Dose: 70 }, "Dose: 70 is not from 0.05 to 60"],
    ["a number as text", { Weight: "70" }, "Weight: the number 70 kept as text"],
    ["a unit in the cell", { Withdrawal: "28d" }, 'Withdrawal: "28d" is not a number'],
    ["no withdrawal days", { Withdrawal: null }, "Withdrawal: a treatment without withdrawal days"],
    [
      "a clear date too early",
      { Clear: dayOf("2026-03-10") },
      "Clear: 10 Mar 2026 is too early: 28 withdrawal days after 10 Feb 2026 give 11 Mar 2026",
    ],
  ])("finds %s and nothing else", (_, change, words) => {
    const found = first(change);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(words);
  });

  it("takes 0 for blank except as score or withdrawal days", () => {
    expect(first({ Score: 0, Weight: 0, Foot: 0, "Seen lame": 0 })).toEqual([]);
    expect(first({ Withdrawal: 0 })).toEqual([]);
    expect(
      check(
        headings.map(() => 0),
        rowOf(),
      ),
    ).toEqual([]);
  });

  it("counts rows within the range, and finds a record entered twice in other words", () => {
    const again = check(
      rowOf(),
      headings.map(() => null),
      rowOf({ Tag: " 042", Lesion: "ID" }),
      rowOf({ Foot: "RH" }),
    );
    expect(again.map(({ row, what }) => [row, what])).toEqual([[3, "the same record as row 1"]]);
  });

  it("finds zeros lost at the front among tags that have them", () => {
    const found = check(rowOf({ Tag: "007" }), rowOf({ Tag: 42 }), rowOf({ Tag: 142 }));
    expect(found.map(({ row, what }) => [row, what])).toEqual([
      [2, "zeros at the front may be lost: 42 among tags such as 042"],
    ]);
  });

  it("reads dates of a workbook that counts from 1904", () => {
    const shifted = rowOf().map((cell) => (typeof cell === "number" && cell > 40_000 ? cell - 1462 : cell));
    expect(recordCheck(headings, [shifted], { asOf, dayOffset: 1462 }).findings).toEqual([]);
  });

  it("asks for no withdrawal days where no medicine was given", () => {
    const seen = recordCheck(
      ["Tag", "Date", "Dose", "Withdrawal"],
      [["042", dayOf("2026-02-10"), null, null]],
      options,
    );
    expect(seen.findings).toEqual([]);
  });

  it("says which columns it found, and which it leaves out", () => {
    const { columns } = recordCheck(["Tag", "EID", "Weather", 3], [["042", "x", "wet", 1]], options);
    expect(columns).toEqual([
      { heading: "Tag", place: 0, field: "tag" },
      { heading: "EID", place: 1, field: undefined, repeats: "Tag" },
      { heading: "Weather", place: 2, field: undefined },
      { heading: "3", place: 3, field: undefined },
    ]);
  });

  it("finds the same in any order of the columns", () => {
    const orders = fc.shuffledSubarray([...headings.keys()], { minLength: headings.length });
    const changed = fc.subarray([
      ["Tag", null],
      ["Treated", "10/2"],
      ["Lesion", "limp"],
      ["Dose", 99],
      ["Withdrawal", null],
      ["Recheck", dayOf("2025-01-01")],
    ] as [string, Cell][]);
    fc.assert(
      fc.property(orders, changed, (order, changes) => {
        const row = rowOf(Object.fromEntries(changes));
        const moved = recordCheck(
          order.map((index) => headings[index] as string),
          [order.map((index) => row[index] ?? null)],
          options,
        );
        const lines = (found: typeof moved.findings) => found.map(({ heading, what }) => `${heading}: ${what}`).sort();
        expect(lines(moved.findings)).toEqual(lines(check(row)));
        expect(new Set(moved.findings.map(({ heading }) => heading)).size).toBeGreaterThanOrEqual(
          changes.filter(([heading]) => heading !== "Recheck").length,
        );
      }),
    );
  });

  it("never fails on any cells, and names only rows and columns that are there", () => {
    const cell = fc.oneof(
      fc.constant(null),
      fc.string({ maxLength: 12 }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: -10, max: 80_000 }),
      fc.boolean(),
      fc.constant({ error: "#N/A" } as const),
    );
    const rows = fc.array(fc.array(cell, { minLength: headings.length, maxLength: headings.length }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(rows, (cells) => {
        for (const { row, heading, what, mend } of check(...cells)) {
          expect(row).toBeGreaterThanOrEqual(1);
          expect(row).toBeLessThanOrEqual(cells.length);
          expect(headings).toContain(heading);
          expect(what).not.toBe("");
          expect(mend).not.toBe("");
        }
      }),
    );
  });
});

// Lambs are treated by the pen: common practice, no source.
describe("recordCheck of groups and of tags that are alike", () => {
  const heads = ["Tag", "Group", "Number treated", "Treated", "Withdrawal days"];
  const findings = (...rows: Cell[][]) =>
    recordCheck(heads, rows, options).findings.map(({ row, field, what }) => [row, field, what]);
  const treated = dayOf("2026-02-10");

  it("asks a group for its number, a number for its group, and neither for a tag", () => {
    expect(
      findings(
        [null, "Lambs", 23, treated, 28],
        [null, "Lambs", null, treated, 28],
        [null, null, 23, treated, 28],
        [null, null, null, treated, 28],
      ),
    ).toEqual([
      [2, "number treated", "a group was treated, but not how many"],
      [3, "tag", "a number of animals without their group"],
      [4, "tag", "no tag in a row that holds a record"],
    ]);
  });

  it("says what to do with a number of animals in the column for tags", () => {
    const report = recordCheck(heads, [["23 lambs", null, null, treated, 28]], options);
    expect(report.findings[0]).toMatchObject({
      what: '"23 lambs" is a number of animals, not a tag',
      mend: "enter the tag of each, or leave the tag blank and name their group in a column for groups",
    });
  });

  it("names each pair of tags that may be one animal once, in the first row of the later one", () => {
    const row = (tag: string): Cell[] => [tag, null, null, treated + findings.length, 28];
    expect(
      findings(row("1042"), row("I042"), row("1042"), row("51"), row("I042 ewe"), row("ZZ 0 123456 00051")),
    ).toEqual([
      [2, "tag", "it may be 1042, row 1"],
      [3, "tag", "the same record as row 1"],
      [5, "tag", expect.stringMatching(/^it may be (1042, row 1|I042, row 2)$/)],
      [6, "tag", "it may be 51, row 4"],
    ]);
  });
});

describe("rows of a whole group in a foot book's own columns", () => {
  const headings = ["Treated", "Tag", "Group", "Animals", "Looked again", "Withdrawal days"];
  const check = (row: readonly Cell[]) =>
    recordCheck(headings, [row], { asOf: 46_100, dayOffset: 0 }).findings.map(
      ({ heading, what }) => `${heading}: ${what}`,
    );

  it("need their number: a row whose tag was lost is not taken for one", () => {
    expect(check([46_063, null, "Ewes", null, null, 28])).toEqual(["Animals: a group was treated, but not how many"]);
    expect(check([46_063, null, "Lambs", 23, null, 28])).toEqual([]);
    expect(check([46_063, "041", "Ewes", null, 46_070, 28])).toEqual([]);
  });

  it("have the day of the second look read, which comes after the treatment", () => {
    expect(check([46_063, "041", "Ewes", null, "10/3", 28])).toEqual(['Looked again: "10/3" is not a date']);
    expect(check([46_063, "041", "Ewes", null, 46_060, 28])).toHaveLength(1);
    expect(check([46_063, "041", "Ewes", null, 46_101, 28])).toHaveLength(1);
  });
});
