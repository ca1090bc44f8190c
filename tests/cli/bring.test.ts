import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bringCommand } from "../../src/cli/commands/bringCommand.ts";
import { sheetCells } from "../samples/sheetCells.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-bring-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function bring(...given: readonly string[]): Promise<string> {
  const said: string[] = [];
  const terminal = {
    say: (text: string) => void said.push(text),
    progress: () => undefined,
    progressDone: () => undefined,
  };
  await bringCommand.run(given, terminal);
  return said.join("\n");
}

describe("soundfold bring", () => {
  it("writes a book that is worked out, tells of every row, and leaves the records alone", async () => {
    const [records, book] = [join(folder, "medicine book.csv"), join(folder, "book.xlsx")];
    const text =
      "Ohr;Treated;Withdrawal days;Product\n042;2026-03-14;28;medicine A\n043;3/4/2026;28;medicine A\nend;;;\n";
    writeFileSync(records, text);
    const said = await bring(records, "--into", book, "--match", "Ohr=Tag", "--farm", "Hill farm");
    expect(said).toContain(`3 of 3 rows brought. The new book: ${book}`);
    expect(said).toMatch(/medicine book\.csv +Ohr +taken for Tag/);
    expect(said).toMatch(/medicine book\.csv, row 3 +Treated 3\/4\/2026/);
    expect(readFileSync(records, "utf8")).toBe(text);
    const cells = sheetCells(readFileSync(book));
    expect(cells.get("Settings!B4")).toBe("Hill farm");
    expect([cells.get("Cases!C5"), cells.get("Cases!B5"), cells.get("Cases!L5")]).toEqual(["042", 46095, 28]);
    // Worked out: the clear date, and the row in doubt among the problems.
    expect(
      [...cells]
        .filter(([cell]) => cell.startsWith("Problems!"))
        .map(([, value]) => String(value))
        .join(),
    ).toContain("3/4/2026");
    await expect(bring(records, "--into", book)).rejects.toThrow(/is already there and is never replaced/);
  });

  it.each([
    [["--into", "x.xlsx"], /bring needs records and a book to write/],
    [["a.csv"], /bring needs records and a book to write/],
    [["a.csv", "--into", "x.xlsx", "--match", "Ohr"], /has no =/],
    [["a.csv", "--into", "x.xlsx", "--match", "Ohr=Ear"], /the book has no heading "Ear"; it has Seen lame,/],
    [["a.csv", "--into", "x.xlsx", "--dates", "uk"], /--dates "uk" is none of dmy, mdy, ymd/],
    [["a.csv", "--into", "x.xlsx", "--from", "1/11/2026"], /--from "1\/11\/2026" is no day; write it as 2026-11-01/],
    [["a.doc", "--into", "x.xlsx"], /a\.doc cannot be read: there is no such file/],
    [["a.csv", "--into", "x.csv"], /must end in \.xlsx/],
  ])("refuses %j", async (given, words) => {
    const before = readdirSync(folder);
    const named = given.map((word) => (word.endsWith(".xlsx") ? join(folder, word) : word));
    await expect(bring(...named)).rejects.toThrow(words);
    expect(readdirSync(folder)).toEqual(before);
  });
});
