import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { bringRecords } from "../../../src/workbooks/bring/bringRecords.ts";
import { fillBook } from "../../../src/workbooks/bring/fillBook.ts";
import { flockFootBook } from "../../../src/workbooks/footBook/flockFootBook.ts";
import { authorWorkbook } from "../../../src/workbooks/writing/authorWorkbook.ts";
import { sheetCells } from "../../samples/sheetCells.ts";

const worked = async (bytes: Uint8Array): Promise<ReadonlyMap<string, unknown>> =>
  sheetCells((await recalculate(openWorkbook(bytes), engineInNode(), undefined, { all: true })).bytes);

it("types into the empty book what a book written anew would hold, to the last cell", async () => {
  const { content } = bringRecords(
    [{ file: "flock-foot-book.xlsx", bytes: readFileSync("samples/flock-foot-book.xlsx") }],
    { matches: new Map(), order: undefined, from: undefined, farm: "Invented flock", made: "2026-11-26" },
  );
  expect(content.cases.length).toBeGreaterThan(100);
  const filled = {
    ...content,
    treatments: ["inject", "spray the feet"],
    saleTags: ["999000000000001"],
    saleDate: 46_300,
  };
  const typed = await worked(fillBook(readFileSync("samples/flock-foot-book-empty.xlsx"), filled));
  const written = await worked(await authorWorkbook(flockFootBook(filled)));
  const differing = [...new Set([...typed.keys(), ...written.keys()])].filter(
    (cell) => JSON.stringify(typed.get(cell) ?? null) !== JSON.stringify(written.get(cell) ?? null),
  );
  expect(differing.map((cell) => [cell, typed.get(cell), written.get(cell)])).toEqual([]);
});
