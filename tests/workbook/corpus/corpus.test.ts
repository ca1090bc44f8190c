import { beforeAll, describe, expect, it } from "vitest";
import { type Cell, isCellError } from "../../../src/cells/cell.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { placeText } from "../../../src/workbook/address.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import type { Summary } from "../../../src/workbook/summary.ts";
import { buildWorkbook, rowsOf } from "../buildWorkbook.ts";
import { casesOf, cellOf, corpus, corpusWorkbook } from "./corpusWorkbook.ts";

const formulas = 1;

const shown = (value: Cell | undefined): string => (isCellError(value) ? value.error : JSON.stringify(value ?? null));

/** LibreOffice saves 15 digits. */
const alike = (one: Cell | undefined, other: Cell): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(other), 1)
    : shown(one) === shown(other);

async function worked(bytes: Uint8Array, all: boolean) {
  const { bytes: after, summary } = await recalculate(openWorkbook(bytes), engineInNode(), undefined, { all });
  const cells = new Map(
    openWorkbook(after).sheets[formulas]?.rows.flatMap(({ cells: row }) =>
      row.map((cell) => [placeText(cell), cell.value] as const),
    ),
  );
  return { cells, summary, after };
}

describe("formulas with the values a spreadsheet saved for them", () => {
  it("are enough, over the functions people use most", () => {
    expect(corpus.cases.length).toBeGreaterThan(1500);
    expect(new Set(corpus.cases.map(({ function: name }) => name)).size).toBeGreaterThan(120);
  });

  describe.each<[string, boolean, 1900 | 1904]>([
    ["with their values in the file", true, 1900],
    ["without", false, 1900],
    ["in a workbook that counts its days from 1904", true, 1904],
  ])("all worked out, %s", (_, saved, dates) => {
    const cases = casesOf(dates);
    let cells: ReadonlyMap<string, Cell>;
    let summary: Summary;
    beforeAll(async () => {
      ({ cells, summary } = await worked(corpusWorkbook(saved, [], dates), true));
    }, 120_000);

    it("come to what was saved, or are left and said", () => {
      const left = new Set(summary.left.map(({ address }) => address));
      expect(cases.length).toBeGreaterThan(50);
      const wrong = cases.flatMap(({ formula, value }, index) => {
        const address = `A${index + 1}`;
        if (left.has(address) || alike(cells.get(address), cellOf(value))) return [];
        return [`${formula}: ${shown(cells.get(address))} instead of ${JSON.stringify(value)}`];
      });
      expect(wrong).toEqual([]);
    });

    it("are left only where spreadsheets differ", () => {
      if (dates === 1904) {
        for (const { reason } of summary.left) expect(reason).toMatch(/in a workbook that counts days from 1904$/);
        return;
      }
      expect(new Set(summary.left.map(({ reason }) => reason))).toEqual(
        new Set([
          ...["md", "yd"].map((unit) => `DATEDIF with "${unit}" is answered in different ways by spreadsheets`),
          "a range in it names a sheet at its end, A1:Data!A3",
          "a range in it names a sheet at its end, A3:Data!B2",
          "what TRANSPOSE gives in a formula for one cell is not certain",
        ]),
      );
    });
  });

  it("keep their values when nobody asks for them", async () => {
    const before = corpusWorkbook(true);
    const { summary, cells } = await worked(before, false);
    const volatile = corpus.cases.filter(({ formula }) => /\b(?:OFFSET|INDIRECT)\(/.test(formula)).length;
    expect([summary.formulas, summary.kept]).toEqual([volatile, corpus.cases.length - volatile]);
    const changed = corpus.cases.filter(({ value }, index) => !alike(cells.get(`A${index + 1}`), cellOf(value)));
    expect(changed).toEqual([]);
  });

  it("keep values that are plainly another program's, outside of what hangs on FOOT", async () => {
    const rows = `${rowsOf({ A1: 4, B1: 20 })}<row r="2"><c r="A2"><f>1+1</f><v>99</v></c><c r="B2"><f>FOOT.FLOCKPREV(A1,B1)</f><v>0</v></c><c r="C2"><f>B2*10</f><v>0</v></c><c r="D2"><f>C2+A2</f><v>0</v></c><c r="E2"><f>SUM(A1:A2)</f><v>7</v></c></row>`;
    const { bytes, summary } = await recalculate(
      openWorkbook(buildWorkbook({ sheets: [{ name: "One", rows }] })),
      engineInNode(),
    );
    const line = openWorkbook(bytes)
      .sheets[0]?.rows.at(-1)
      ?.cells.map(({ value }) => value);
    expect(line).toEqual([99, 0.2, 2, 101, 7]);
    expect([summary.formulas, summary.kept]).toEqual([3, 2]);
  });

  it("are all worked out where the file asks for it", async () => {
    const rows = '<row r="1"><c r="A1"><f>1+1</f><v>99</v></c></row>';
    const bytes = buildWorkbook({ sheets: [{ name: "One", rows }] });
    const asking = openWorkbook(bytes);
    const { summary } = await recalculate({ ...asking, asksForAll: true }, engineInNode());
    expect([summary.formulas, summary.kept, summary.changedCells]).toEqual([1, 0, 1]);
  });
});
