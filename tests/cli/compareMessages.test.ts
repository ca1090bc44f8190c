import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { BadInput } from "../../src/cli/badInput.ts";
import { compareCommand } from "../../src/cli/commands/compareCommand.ts";

// What a newcomer's files are answered with: each message names the file, the row where there is one, and what to do.

let folder: string;
const at = (name: string): string => join(folder, name);

async function said(...given: readonly string[]): Promise<string> {
  const lines: string[] = [];
  const say = (text: string) => void lines.push(text);
  try {
    await compareCommand.run(given, { say, progress: () => undefined, progressDone: () => undefined });
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    lines.push(error.message);
  }
  return lines.join("\n");
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-messages-"));
  writeFileSync(at("gathers.csv"), "Flock;Date;Looked at;Lame\nHill;2026-03-01;80;1\nMoor;2026-03-02;90;4\n");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("a file that cannot be used", () => {
  test.each<[string, string | Buffer, string]>([
    ["empty.csv", "", "It is empty."],
    ["notes.txt", "Flock", "It is no .xlsx, .csv or .parquet file; save it as one of these."],
    ["copied.parquet", "half a file", "It is no Parquet file, or a part of it is missing; make it or copy it again."],
    [
      "western.csv",
      Buffer.from("Flock,Date,Looked at,Lame\nB\xe4renfels,2026-03-01,80,1\n", "latin1"),
      'Line 2 holds letters that are not kept as UTF-8; save the file again as "CSV UTF-8".',
    ],
    [
      "lacks.csv",
      "Flock,Date,Looked at\nHill,2026-03-01,80\n",
      'Its first row holds the headings "Flock", "Date", "Looked at": for gathers Lame is missing.',
    ],
    ["untagged.csv", "Flock,Tag\nHill,42\n", "for cases Seen lame or Treated is missing."],
    [
      "title.csv",
      "Our year\nFlock,Date,Looked at,Lame\nHill,2026-03-01,80,1\n",
      "gathers need Date, Looked at and Lame; cases need Tag and Seen lame or Treated. Name the columns so in its first row",
    ],
  ])("%s is named with the reason, and stops no other", async (name, content, words) => {
    writeFileSync(at(name), content);
    const lines = await said(at("gathers.csv"), at(name), "--out", at(`${name} out.csv`));
    expect(lines).toContain("2 flocks: 2 days of gathers; no case records.");
    expect(lines.split("Not used:")[1]).toContain(name);
    expect(lines).toContain(words);
  });

  test("a file that is not there, a folder in a folder", async () => {
    mkdirSync(join(at("records"), "older"), { recursive: true });
    const lines = await said(at("gathers.csv"), at("none.csv"), at("records"), "--out", at("there.csv"));
    expect(lines).toContain("It cannot be read: there is no such file.");
    expect(lines).toContain("It is a folder in a folder, and the files in it were not read; name it too to read them.");
  });

  test("a quote that is never closed takes no rows along in silence", async () => {
    const quoted = '"Hill, top","42",2026-03-01\n'.repeat(30_000);
    const swallowed = `"Hill,43,2026-03-01\n${"Hill,44,2026-03-01\n".repeat(3000)}`;
    writeFileSync(at("open quote.csv"), `Flock,Tag,Treated\n${quoted}${swallowed}`);
    const lines = await said(at("gathers.csv"), at("open quote.csv"), "--out", at("quote.csv"));
    expect(lines).toMatch(/open quote\.csv: In line 30002 a cell runs over several lines.*mend it there/);
    expect(existsSync(at("quote.csv"))).toBe(false);
  });
});

describe("a row that cannot be read", () => {
  test.each([
    ["Hill,03/04/2026,80,1", '"03/04/2026" is not a date; enter a real date, or text such as 2026-03-14'],
    ["Hill,,80,1", "no date; enter it"],
    ["Hill,2026-03-01,eighty,1", 'Looked at "eighty" is not a whole number of sheep; enter one, 0 or more'],
    ["Hill,2026-03-01,80,", "Lame is blank; enter the sheep, 0 only if there were none"],
    ["Hill,2026-03-01,8,9", "9 lame of 8 looked at; enter the lame sheep among those looked at"],
    [" ,2026-03-01,80,1", "no flock; enter its name under Flock"],
  ])("of gathers: %s", async (row, words) => {
    writeFileSync(at("rows.csv"), `Flock,Date,Looked at,Lame\nHill,2026-03-01,80,1\n${row}\n`);
    const lines = await said(at("rows.csv"), "--out", at("rows out.csv"));
    rmSync(at("rows out.csv"));
    expect(lines).toContain(`rows.csv, row 3: ${words}`);
  });

  test.each([
    ["Hill,42,46100", '"46100" is not a date'],
    ["Hill,,2026-03-01", "no tag; enter it"],
    ["Hill,23 lambs,2026-03-01", '"23 lambs" is a number of animals, not a tag; enter the tag of each'],
    ["Hill,9.99012E+14,2026-03-01", '"9.99012E+14" has lost digits in the spreadsheet; enter the tag again as text'],
    [",42,2026-03-01", "no flock; enter its name under Flock"],
  ])("of cases: %s", async (row, words) => {
    writeFileSync(at("cases.csv"), `Flock,Tag,Treated\nHill,41,2026-03-01\n${row}\n`);
    const lines = await said(at("gathers.csv"), at("cases.csv"), "--out", at("cases out.csv"));
    rmSync(at("cases out.csv"));
    expect(lines).toContain(`cases.csv, row 3: ${words}`);
  });
});

test("case records alone need a year", async () => {
  writeFileSync(at("alone.csv"), "Flock,Tag,Treated\nHill,41,2026-03-01\n");
  expect(await said(at("alone.csv"), "--out", at("alone out.csv"))).toContain(
    "so no year is known; name one with --year",
  );
  expect(await said(at("alone.csv"), "--out", at("alone out.csv"), "--year", "2026")).toContain(
    "1 flock: 0 days of gathers; 1 case record, which is 1 case.\n1 line for 2026",
  );
});
