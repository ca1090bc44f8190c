import { describe, expect, it } from "vitest";
import { dayOf, isoText } from "../../../src/cells/day.ts";
import { type BringOptions, type Brought, bringRecords } from "../../../src/workbooks/bring/bringRecords.ts";
import { dateIn } from "../../../src/workbooks/bring/dateIn.ts";
import { matchHeadings } from "../../../src/workbooks/bring/matchHeadings.ts";
import { stillOpen } from "../../../src/workbooks/bring/stillOpen.ts";
import { expectNothingDropped } from "./nothingDropped.ts";

const plain: BringOptions = {
  matches: new Map(),
  order: undefined,
  from: undefined,
  farm: undefined,
  made: "2026-11-26",
};
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const bring = (text: string, options: Partial<BringOptions> = {}): Brought =>
  bringRecords([{ file: "records.csv", bytes: utf8(text) }], { ...plain, ...options });

describe("bringing a .csv file", () => {
  // Typed by hand: a title above, a repeated heading row, blank lines, spaces, a line that is no record, dates of every kind.
  const messy = `Lameness book 2026;;;;;

 Ear tag ;Date treated;Foot problem;Drug;Withdrawal (days);Weight;Notes;Shed
042;2026-03-14;scald;medicine A;28;71;by the gate;north
ZZ 0 123456 00043;3/4/2026;"footrot; bad";medicine A;;;;
;;;;;;;
Ear tag;Date treated;Foot problem;Drug;Withdrawal (days);Weight;Notes;Shed
044;14 Mar 2026;CODD;medicine B;21 days;;;
;;;;;;bought new crook;
`;

  it("takes each row in, or names it with the reason", () => {
    const brought = bring(messy);
    expectNothingDropped(brought);
    expect(brought.places).toMatchObject([{ place: "records.csv", into: "Cases", rowsIn: 5, rowsOut: 3 }]);
    expect(brought.content.cases).toEqual([
      {
        tag: "042",
        treated: dayOf("2026-03-14"),
        lesion: "scald",
        medicine: "medicine A",
        withdrawalDays: 28,
        note: "by the gate; Weight: 71; Shed: north",
      },
      { tag: "ZZ 0 123456 00043", treated: "3/4/2026", lesion: "footrot; bad", medicine: "medicine A" },
      { tag: "044", treated: dayOf("2026-03-14"), lesion: "CODD", medicine: "medicine B", withdrawalDays: "21 days" },
    ]);
    expect(brought.leftBehind).toEqual([
      { place: "records.csv", rows: [9], why: 'it says only "bought new crook"' },
      { place: "records.csv", rows: [7], why: "the headings once more" },
    ]);
    expect(brought.toMend.map(({ row, what }) => [row, what])).toEqual([
      [5, "Date treated 3/4/2026"],
      [8, "Withdrawal (days) 21 days"],
    ]);
  });

  it("reads days in numbers only in the order that the person gives", () => {
    expect(bring(messy, { order: "dmy" }).content.cases[1]?.treated).toBe(dayOf("2026-04-03"));
    expect(bring(messy, { order: "mdy" }).content.cases[1]?.treated).toBe(dayOf("2026-03-04"));
    expect(dateIn("31/12/26", 0, "dmy")).toBe(dayOf("2026-12-31"));
    expect(dateIn("31/02/2026", 0, "dmy")).toBeUndefined();
    expect(dateIn("03/04/2026", 0)).toBeUndefined();
  });

  it("takes headings of another language in another order as the person explains them", () => {
    const windows = Uint8Array.from(
      "Bemerkung;Wartezeit;Behandelt;Ohrmarke;Stall;Schafe gepr\u00fcft\nm\u00fcde;28;2026-03-14;042;Nord;1\n",
      (letter) => letter.charCodeAt(0),
    );
    const matches = new Map([
      ["ohrmarke", "Tag"],
      ["behandelt", "Treated"],
      ["wartezeit", "Withdrawal days"],
      ["bemerkung", "Note"],
      ["schafe gepr\u00fcft", "-"],
    ]);
    const { content, places } = bringRecords([{ file: "r.csv", bytes: windows }], { ...plain, matches });
    expect(content.cases).toEqual([
      { note: "m\u00fcde; Stall: Nord", withdrawalDays: 28, treated: dayOf("2026-03-14"), tag: "042" },
    ]);
    expect(places[0]?.headings).toContainEqual(["Schafe gepr\u00fcft", "left out"]);
    expect(() => bringRecords([{ file: "r.csv", bytes: windows }], plain)).toThrow(
      /No records were found in r\.csv: .*Ohrmarke/,
    );
    expect(() => bring(messy, { matches: new Map([["ohr", "Tag"]]) })).toThrow(/No records have the heading "ohr"/);
  });

  it("brings gathers, and the groups that are named in them", () => {
    const { content } = bring("Date,Mob,Seen,Lame\n2026-03-14,ewes,40,3\n2026-04-14,rams,10,0\n");
    expect(content.gathers).toEqual([
      { date: dayOf("2026-03-14"), group: "ewes", lookedAt: 40, lame: 3 },
      { date: dayOf("2026-04-14"), group: "rams", lookedAt: 10, lame: 0 },
    ]);
    expect(content.groups).toEqual([{ group: "ewes" }, { group: "rams" }]);
  });

  it("brings a row once that two files hold, and keeps what stands twice in one", () => {
    const text = utf8("Tag,Treated\n042,2026-03-14\n042,2026-03-14\n");
    const brought = bringRecords(
      [
        { file: "a.csv", bytes: text },
        { file: "b.csv", bytes: text },
      ],
      plain,
    );
    expectNothingDropped(brought);
    expect(brought.content.cases).toHaveLength(2);
    expect(brought.leftBehind).toEqual([{ place: "b.csv", rows: [2, 3], why: "another file has the very same row" }]);
  });

  it("names the rows for which there is no room", () => {
    const rows = Array.from({ length: 1003 }, (_, index) => `2026-03-14,ewes,40,${index % 40}`);
    const brought = bring(["Date,Group,Looked at,Lame", ...rows].join("\n"));
    expectNothingDropped(brought);
    expect(brought.leftBehind).toEqual([
      { place: "records.csv", rows: [1002, 1003, 1004], why: expect.stringContaining("room for 1000 rows") },
    ]);
  });
});

describe("beginning a new year", () => {
  const from = dayOf("2026-11-01");
  const day = dayOf;
  const sound = { soundOn: day("2026-10-20") };
  it.each([
    ["sound, no medicine", { tag: "1", seen: day("2026-10-01"), ...sound }, false],
    ["lame still", { tag: "1", seen: day("2026-10-01") }, true],
    ["gone", { tag: "1", seen: day("2026-10-01"), leftFlock: day("2026-10-10") }, false],
    ["clear on the day", { tag: "1", treated: day("2026-10-03"), withdrawalDays: 28, ...sound }, false],
    ["clear a day later", { tag: "1", treated: day("2026-10-04"), withdrawalDays: 28, ...sound }, true],
    ["withdrawal not known", { tag: "1", treated: day("2026-02-01"), medicine: "A", ...sound }, true],
    ["withdrawal in words", { tag: "1", treated: day("2026-02-01"), withdrawalDays: "28 d", ...sound }, true],
    ["day in doubt", { tag: "1", treated: "3/4/2026", withdrawalDays: 0, ...sound }, true],
    ["sound on a day in doubt", { tag: "1", seen: day("2026-10-01"), soundOn: "3/4/26" }, true],
    ["sound only later", { tag: "1", seen: day("2026-10-01"), soundOn: day("2026-11-05") }, true],
    ["of the new year", { tag: "1", seen: day("2026-11-01"), soundOn: day("2026-11-05") }, true],
    ["group, clear", { group: "ewes", animals: 40, treated: day("2026-02-01"), withdrawalDays: 0 }, false],
    ["group, waiting", { group: "ewes", animals: 40, treated: day("2026-10-20"), withdrawalDays: 28 }, true],
  ])("%s", (_, record, open) => {
    expect(stillOpen([record], from)).toEqual([open]);
  });

  it("keeps every record of an animal that is open, however its tag is spelt", () => {
    const [settled, lame] = [
      { tag: "ZZ 0 123456 00042", seen: day("2026-05-01"), ...sound },
      { tag: 999012345600042, seen: day("2026-10-25") },
    ];
    expect(stillOpen([settled, lame, { ...settled, tag: "43" }], from)).toEqual([true, true, false]);
  });

  it("brings what is open and says what stays in the old book", () => {
    const brought = bring(
      `Tag,Seen lame,Treated,Withdrawal days,Sound on
1,2026-05-01,2026-05-01,0,2026-05-09
2,2026-10-20,2026-10-20,28,2026-10-28
3,2026-11-02,,,
`,
      { from },
    );
    expectNothingDropped(brought);
    expect(brought.content.cases.map(({ tag }) => tag)).toEqual(["2", "3"]);
    expect(brought.leftBehind).toEqual([
      { place: "records.csv", rows: [2], why: `before ${isoText(from)}, of animals with nothing open on that day` },
    ]);
  });
});

describe("matchHeadings", () => {
  it("knows cases and gathers, and nothing else", () => {
    expect(matchHeadings(["Date", "Group", "Looked at", "Lame"], new Map())?.kind).toBe("gathers");
    expect(matchHeadings(["Identity of animal", "Date of administration"], new Map())?.kind).toBe("cases");
    expect(matchHeadings(["Item", "Price", "Date"], new Map())).toBeUndefined();
  });
  it("sends the second of two columns for one thing, and the day a treatment began, to the note", () => {
    expect(matchHeadings(["Tag", "EID", "Date started", "Date finished", "Price"], new Map())?.columns).toEqual([
      "tag",
      "to the note",
      "to the note",
      "treated",
      "to the note",
    ]);
  });
});
