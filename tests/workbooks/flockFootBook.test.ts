import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import { beforeAll, describe, expect, test } from "vitest";
import { isoText } from "../../src/cells/day.ts";
import { lesionName, lesions } from "../../src/core/words/lesionName.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { placeText, readPlace } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import { firstRecord, sheetNames } from "../../src/workbooks/footBook/bookSheets.ts";
import { emptyBook } from "../../src/workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { inventedBook } from "../../src/workbooks/footBook/inventedBook.ts";
import { year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { onDay } from "../../src/workbooks/onDay.ts";
import { cases as casesTable } from "../../src/workbooks/tables/cases.ts";
import { gathers as gathersTable } from "../../src/workbooks/tables/gathers.ts";
import { lesionWords } from "../../src/workbooks/tables/recordWords.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const filled = readFileSync("samples/flock-foot-book.xlsx");
const empty = readFileSync("samples/flock-foot-book-empty.xlsx");
const parts = (bytes: Uint8Array): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, content]) => [name, new TextDecoder().decode(content)]),
  );
const book = inventedBook(sampleSeed);
/** The records by the names of their columns, counted through as the sheets' lists count them. */
const records = book.cases.map((typed, index) => ({
  row: index + 1,
  tag: typed.tag,
  treated: typed.treated,
  days: typed.withdrawalDays,
  typed,
}));
/** The first day that is clear is the one after so many whole days; no withdrawal does not wait at all. */
const waitsOn = (day: number, { treated, days }: (typeof records)[number]): boolean =>
  typeof treated === "number" && typeof days === "number" && days > 0 && treated + days + 1 > day;
const withoutDays = records.filter(({ treated, days }) => typeof treated === "number" && days === undefined);
/** Columns that the charts are drawn from, right of the printed page. */
const isChartHelper = (sheet: string, address: string): boolean =>
  sheet === sheetNames.picture && (readPlace(address)?.column ?? 0) >= 15;

describe("the filled Flock foot book", () => {
  let again: Recalculated;
  beforeAll(async () => {
    again = await recalculate(openWorkbook(filled), engineInNode());
  });

  test("holds what it is worked out to, to the last digit", () => {
    expect(sheetCells(again.bytes)).toEqual(sheetCells(filled));
    expect(again.summary.left).toEqual([]);
    expect(again.summary.circular).toBe(false);
  });

  test("has the sheets in the order of the work, and no cell ends in an error", () => {
    expect(openWorkbook(filled).sheets.map(({ name }) => name)).toEqual(Object.values(sheetNames));
    expect(again.summary.errors).toEqual([]);
  });

  test("answers from the records: who waits, whom to look at, what to mend", () => {
    const cells = sheetCells(filled);
    expect(cells.get("Today!B8")).toBe("not known");
    const [unknown] = withoutDays;
    expect(withoutDays).toHaveLength(1);
    // Lists name the row of the sheet.
    expect(cells.get("Today!D8")).toContain(
      `withdrawal_days, row ${Number(unknown?.row) + firstRecord}: a treatment without withdrawal days`,
    );
    const untreated = records.filter(
      ({ treated, typed }) => treated === undefined && typed.soundOn === undefined && typed.leftFlock === undefined,
    );
    expect(untreated.length).toBeGreaterThan(2);
    expect(cells.get("Today!F4")).toBe(`${untreated.length} animals, longest waiting first, then the worst`);
    const waiting = new Set(records.filter((record) => waitsOn(year.last, record)).map(({ tag }) => tag));
    waiting.delete(unknown?.tag);
    expect(waiting.size).toBeGreaterThan(5);
    expect(cells.get("Today!A4")).toBe(`${waiting.size} waiting, 1 not known`);
    expect(cells.get("Start!B5")).toMatch(/^Soundfold /);
    // Every animal counted once in the months of new cases was a case in the table of cases.
    const newCases = Array.from({ length: 12 }, (_, month) => Number(cells.get(`Picture!X${month + 5}`)));
    const listed = [...cells].filter(([address]) => /^Picture!AK\d+$/.test(address) && address !== "Picture!AK5");
    expect(newCases.reduce((sum, count) => sum + count, 0)).toBe(
      listed.filter(([, day]) => Number(day) >= year.first && Number(day) <= year.last).length,
    );
  });

  test("says of each tag of the sale list whether it may go, and why not", () => {
    const answers = book.saleTags.map((tag) => {
      const its = records.filter((record) => record.tag === tag);
      const isLame = its.some(
        ({ typed }) => typed.soundOn === undefined && typed.leftFlock === undefined && typed.seen !== undefined,
      );
      if (isLame) return "no: lame, or may be";
      const treated = its.filter((record) => typeof record.treated === "number");
      if (treated.some((record) => record.days === undefined || waitsOn(year.sale, record))) return "no: medicine";
      if (its.some(({ typed }) => typed.leftFlock !== undefined)) return "no: gone";
      return treated.length === 0 ? "in no record: right tag?" : "yes";
    });
    const cells = sheetCells(filled);
    expect(book.saleTags.map((_, index) => cells.get(`May they go!C${index + 8}`))).toEqual(answers);
    const count = (wanted: string) => answers.filter((answer) => answer.startsWith(wanted)).length;
    expect(Math.min(count("yes"), count("no: lame"), count("no: medicine"), count("in"))).toBeGreaterThan(0);
    expect(cells.get("May they go!A4")).toBe(
      `${answers.length} tags: ${count("yes")} may go, ${count("no:")} may not, ${count("in")} in no record`,
    );
  });

  test("counts the slips of the hand", () => {
    const known: readonly unknown[] = Object.values(lesionWords);
    const keptAsText = (["seen", "treated", "ml", "withdrawalDays", "lookedAgain", "soundOn"] as const).map(
      (key) => records.filter(({ typed }) => typeof typed[key] === "string").length,
    );
    const unknownLesions = records.filter(({ typed }) => !known.includes(typed.lesion)).length;
    const slips = keptAsText.reduce((sum, count) => sum + count, unknownLesions + withoutDays.length);
    expect(slips).toBeGreaterThan(1);
    expect(sheetCells(filled).get("Problems!A3")).toBe(slips);
  });

  test("is made again byte for byte", async () => {
    const made = await onDay(year.last, () => workedOut(flockFootBook(book)));
    expect(Buffer.compare(Buffer.from(made.bytes), filled)).toBe(0);
  });
});

describe("the empty Flock foot book", () => {
  test("is made again byte for byte, on any day", async () => {
    const plan = () => flockFootBook(emptyBook({ made: isoText(year.last) }));
    const made = await onDay(year.last, () => workedOut(plan()));
    expect(Buffer.compare(Buffer.from(made.bytes), empty)).toBe(0);
  });

  test("says in words that there is nothing yet, and only the charts' own cells are #N/A", async () => {
    const { summary } = await recalculate(openWorkbook(empty), engineInNode());
    for (const { sheet, address, code } of summary.errors) {
      expect(code).toBe("#N/A");
      expect(isChartHelper(sheet, address), `${sheet}!${address}`).toBe(true);
    }
    const cells = sheetCells(empty);
    const said = [
      ["Today!A8", "no treatments recorded"],
      ["Today!F8", "nothing is due"],
      ["Today!K8", "nothing is due"],
      ["Today!P8", "no animal has so many cases"],
      ["Gathers!G4", "no gathers in the year"],
      ["May they go!D8", "no animals on the sale list"],
      ["Keep apart!A8", "none to keep apart"],
      ["Picture!A4", "no gathers yet"],
      ["Picture!H4", "not known yet"],
      ["Medicine use!A7", "type breeding sheep and lambs in Settings"],
      ["Start!B5", "Nothing to mend was found."],
    ] as const;
    for (const [address, words] of said) expect(cells.get(address)).toBe(words);
    expect([...cells.values()].filter((value) => typeof value === "string" && value.startsWith("not worked"))).toEqual(
      [],
    );
  });

  test("holds no medicine, no group and no record", () => {
    const settings = openWorkbook(empty).sheets.find(({ name }) => name === sheetNames.settings);
    const tables = settings?.tables ?? [];
    for (const name of ["Medicines", "Groups", "People"]) {
      const area = tables.find((table) => table.name === name)?.area;
      const inside = settings?.rows
        .filter(({ row }) => area && row > area.top && row <= area.bottom)
        .flatMap(({ cells }) => cells.filter((cell) => area && cell.column >= area.left && cell.column <= area.right));
      expect(inside?.length).toBeGreaterThan(0);
      expect(inside?.filter(({ value }) => value !== null)).toEqual([]);
    }
  });
});

describe.each([
  ["filled", filled],
  ["empty", empty],
])("the %s book as a file", (_, bytes) => {
  const files = parts(bytes);
  const numberIn = (name: string): number => Number(/\d+/.exec(name)?.[0]);
  const sheets = Object.entries(files)
    .filter(([name]) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name))
    .sort(([one], [other]) => numberIn(one) - numberIn(other));

  test("holds no macros, no links out of it, and its properties", () => {
    expect(Object.keys(files).filter((name) => /vba|externalLink|connections|printerSettings/i.test(name))).toEqual([]);
    for (const [name, text] of Object.entries(files))
      if (name.endsWith(".rels")) expect(text.includes('TargetMode="External"'), name).toBe(false);
    expect(files["docProps/core.xml"]).toContain("Flock foot book");
  });

  test("locks what is worked out, without a password, and leaves cells to type in", () => {
    expect(sheets).toHaveLength(Object.keys(sheetNames).length);
    for (const [name, text] of sheets) {
      const protection = /<sheetProtection[^>]*>/.exec(text)?.[0];
      expect(protection, name).toMatch(/sheet="(?:1|true)"/);
      expect(protection, name).not.toMatch(/password|hashValue/);
      expect(text.includes("<pageSetup"), name).toBe(true);
    }
    expect(files["xl/styles.xml"]).toMatch(/locked="(?:0|false)"/);
  });

  test("keeps headings in sight and on every page", () => {
    for (const [name, text] of sheets.slice(2, 7)) expect(/<pane [^>]*state="frozen"/.test(text), name).toBe(true);
    const titles = files["xl/workbook.xml"]?.match(/_xlnm\.Print_Titles/g) ?? [];
    const printed = files["xl/workbook.xml"]?.match(/_xlnm\.Print_Area/g) ?? [];
    expect(titles.length).toBeGreaterThanOrEqual(5);
    // The others are lists, printed as far as they go.
    expect(printed).toHaveLength(9);
  });

  test("has tables with room, known by their headings", () => {
    const tables = openWorkbook(bytes).sheets.flatMap((sheet) => sheet.tables);
    const columnsOf = (name: string) => tables.find((table) => table.name === name)?.columns;
    expect(columnsOf("Gathers")).toEqual(gathersTable.headings);
    expect(columnsOf("Cases")).toEqual(casesTable.headings);
    const cases = tables.find(({ name }) => name === "Cases")?.area;
    expect(cases && cases.bottom - cases.top).toBe(casesTable.room);
    expect(casesTable.room).toBeGreaterThanOrEqual(5000);
  });

  test("asks for words from lists, and marks each formula of its own as one that may spill", () => {
    const cases = sheets[3]?.[1] ?? "";
    for (const list of ["group_list", "foot_list", "lesion_list", "treatment_list", "medicine_list", "given_by_list"])
      expect(cases.includes(`<formula1>${list}</formula1>`), list).toBe(true);
    for (const [name, text] of sheets) {
      for (const [cell] of text.matchAll(/<c [^>]*><f[^>]*>[^<]*_xldudf_FOOT_[^<]*<\/f>/g))
        expect(cell, name).toMatch(/^<c [^>]*cm="\d+"[^>]*><f t="array"/);
      expect(/[^_]FOOT\.[A-Z]/.test(text), name).toBe(false);
    }
  });

  test("has no formula that is longer than a person reads: 250 letters", () => {
    for (const { name, rows } of openWorkbook(bytes).sheets)
      for (const { formula, ...place } of rows.flatMap(({ cells }) => cells)) {
        const typed = formula?.text.replaceAll("_xldudf_FOOT_", "FOOT.") ?? "";
        expect(typed.length, `${name}!${placeText(place)} ${typed}`).toBeLessThanOrEqual(250);
      }
  });

  test("draws its charts from cells that are there", () => {
    const sheet = openWorkbook(bytes).sheets.find(({ name }) => name === sheetNames.picture);
    const charts = Object.entries(files).filter(([name]) => /^xl\/charts\/chart\d+\.xml$/.test(name));
    expect(charts).toHaveLength(4);
    for (const [name, text] of charts) {
      const ranges = [...text.matchAll(/<(?:c:)?f>(?:'|&#39;)Picture(?:'|&#39;)!([^<]+)<\/(?:c:)?f>/g)].map(
        ([, range]) => range ?? "",
      );
      expect(ranges.length, name).toBeGreaterThanOrEqual(3);
      for (const range of ranges) {
        const place = readPlace(range.split(":")[0] ?? "");
        const row = sheet?.rows.find((candidate) => candidate.row === place?.row);
        expect(
          row?.cells.some(({ column }) => column === place?.column),
          `${name} ${range}`,
        ).toBe(true);
      }
    }
  });
});

test("every word of the lesion list is known to the functions as what it stands for", () => {
  for (const lesion of lesions) expect(lesionName(lesionWords[lesion])).toBe(lesion);
});
