import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import { shrunkPrevalence } from "../../src/core/benchmarking/shrunkPrevalence.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import type { ComparisonContent, FlockYear } from "../../src/workbooks/comparison/comparisonContent.ts";
import { emptyComparison } from "../../src/workbooks/comparison/emptyComparison.ts";
import { flockComparison } from "../../src/workbooks/comparison/flockComparison.ts";
import { inventedComparison } from "../../src/workbooks/comparison/inventedComparison.ts";
import { sheetNames } from "../../src/workbooks/comparison/placedComparison.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { rangeByHand } from "../cli/comparisonByHand.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const filled = readFileSync("samples/flock-comparison.xlsx");
const empty = readFileSync("samples/flock-comparison-empty.xlsx");
const { flocks, chosen } = inventedComparison(sampleSeed);
/** Gaps that are meant, in what the charts are drawn from. */
const gaps = (errors: readonly { readonly sheet: string; readonly code: string }[]) =>
  errors.filter(({ sheet, code }) => sheet !== sheetNames.figures || code !== "#N/A");

describe("the filled Flock comparison", () => {
  let again: Recalculated;
  const cells = sheetCells(filled);
  const steadied = shrunkPrevalence(
    flocks.map(({ flock }) => flock),
    flocks.map(({ lame }) => lame ?? 0),
    flocks.map(({ lookedAt }) => lookedAt ?? 0),
    0.95,
  );
  beforeAll(async () => {
    again = await recalculate(openWorkbook(filled), engineInNode());
  });

  test("holds what it is worked out to, to the last digit, and ends in no error but the gaps of the charts", () => {
    expect(sheetCells(again.bytes)).toEqual(cells);
    expect(again.summary).toMatchObject({ left: [], circular: false });
    expect(gaps(again.summary.errors)).toEqual([]);
    expect(openWorkbook(filled).sheets.map(({ name }) => name)).toEqual(
      Object.values(sheetNames).filter((name) => name !== sheetNames.gathers),
    );
  });

  test("a row a flock: share, steadied share, rank, medicine", () => {
    flocks.forEach((flock, index) => {
      const row = 10 + index;
      const at = (column: string) => cells.get(`Comparison!${column}${row}`);
      expect(at("A")).toBe(flock.flock);
      expect(at("D")).toBe(index === 18 ? 1 : 10);
      expect(at("E")).toBeCloseTo((flock.lame ?? 0) / (flock.lookedAt ?? 1), 12);
      expect(at("I")).toBeCloseTo(steadied[index]?.steadied ?? 0, 12);
      expect(at("J")).toBe(steadied[index]?.rank);
      if (flock.antibioticMg === undefined || flock.breedingSheep === undefined) expect(at("O")).toBe("not known");
      else
        expect(at("O")).toBeCloseTo(
          flock.antibioticMg / (75 * (flock.breedingSheep ?? 0) + 20 * (flock.slaughterLambs ?? 0)),
          9,
        );
      if (flock.lookedAtBefore === undefined) expect(at("K")).toBeUndefined();
      else
        expect(at("K")).toBeCloseTo(
          (flock.lame ?? 0) / (flock.lookedAt ?? 1) - (flock.lameBefore ?? 0) / flock.lookedAtBefore,
          12,
        );
    });
  });

  test("the page of one flock names that flock and no other", () => {
    const page = [...cells].filter(([address]) => address.startsWith("One flock!")).map(([, cell]) => String(cell));
    expect(page.filter((text) => text === chosen).length).toBeGreaterThanOrEqual(3);
    const others = flocks.map(({ flock }) => flock).filter((name) => name !== chosen);
    expect(page.filter((text) => others.some((name) => new RegExp(`\\b${name}\\b`).test(text)))).toEqual([]);
    // Letters in the order of the list, with the flock itself at its rank.
    const rank = steadied.find(({ flock }) => flock === chosen)?.rank ?? 0;
    expect(cells.get(`Figures!${columnOfLetters()}${5 + rank}`)).toBe(chosen);
    expect(cells.get(`Figures!${columnOfLetters()}6`)).toBe("A");
  });

  const columnOfLetters = (): string => {
    const found = [...cells].find(([address, cell]) => /^Figures![A-Z]+5$/.test(address) && cell === "letter");
    return /!([A-Z]+)/.exec(found?.[0] ?? "")?.[1] ?? "";
  };
});

test("the empty Flock comparison says in words that it is empty", async () => {
  const { bytes, summary } = await recalculate(openWorkbook(empty), engineInNode());
  expect(gaps(summary.errors)).toEqual([]);
  expect(sheetCells(bytes)).toEqual(sheetCells(empty));
  expect(sheetCells(empty).get("Comparison!A3")).toBe("No flocks yet: type them on the sheet Flocks.");
});

const flockOf = (flock: string, lookedAt: number | undefined, lame: number | undefined): FlockYear => ({
  flock,
  lookedAt,
  lame,
  lookedAtBefore: undefined,
  lameBefore: undefined,
  cases: undefined,
  antibioticMg: undefined,
  breedingSheep: undefined,
  slaughterLambs: undefined,
  target: undefined,
  note: undefined,
});

test("a row that cannot count says why, and takes no other with it", async () => {
  const content: ComparisonContent = {
    ...emptyComparison({ made: "2026-10-31" }),
    flocks: [
      flockOf("One", 100, 5),
      flockOf("Two", 100, 105),
      flockOf("Three", 200, 8),
      flockOf("Four", 50, undefined),
      flockOf("Five", 0, 0),
      flockOf("Six", 80, 4),
      flockOf("six ", 90, 4),
    ],
  };
  const cells = sheetCells((await workedOut(flockComparison(content))).bytes);
  expect([10, 11, 12, 13, 14, 15, 16].map((row) => cells.get(`Comparison!Q${row}`))).toEqual([
    undefined,
    "more lame than looked at",
    undefined,
    "looked at or lame is missing",
    "no sheep looked at",
    "the name stands twice",
    "the name stands twice",
  ]);
  expect(cells.get("Comparison!E10")).toBe(0.05);
  expect(cells.get("Comparison!E11")).toBeUndefined();
  expect(cells.get("Comparison!E12")).toBe(0.04);
  expect(cells.get("Comparison!A8")).toBe("5 rows are left out: see the last column");
});

describe("gathers that are typed", () => {
  const gathersOf = (year: number, counts: readonly (readonly [lookedAt: number, lame: number])[]) =>
    counts.map(([lookedAt, lame], step) => ({ day: dayOf(`${year}-0${step + 1}-05`), lookedAt, lame }));
  const five = [
    [200, 1],
    [190, 2],
    [200, 0],
    [195, 1],
    [200, 2],
  ] as const;
  const gathered = (flock: string, lookedAt: number, lame: number, gathers: FlockYear["gathers"]): FlockYear => ({
    ...flockOf(flock, lookedAt, lame),
    gathers,
  });
  const content: ComparisonContent = {
    ...emptyComparison({ made: "2026-10-31" }),
    year: 2026,
    target: 0.05,
    flocks: [
      gathered("Many", 985, 6, gathersOf(2026, five)),
      flockOf("Totals", 985, 6),
      gathered("Lacking", 985, 6, gathersOf(2026, five.slice(1))),
      gathered("Once", 985, 6, gathersOf(2026, [[985, 6]])),
      gathered("Before", 985, 6, gathersOf(2024, five)),
    ],
  };
  let cells: ReadonlyMap<string, Cell>;
  const column = (letter: string) => content.flocks.map((_, index) => cells.get(`Comparison!${letter}${10 + index}`));
  beforeAll(async () => {
    cells = sheetCells((await workedOut(flockComparison(content))).bytes);
  });

  test("settle the word about the target where they come to the totals, and nowhere else", () => {
    expect(column("D")).toEqual([5, undefined, "not used", 1, "not used"]);
    const ofThese = "below target in these counts only";
    expect(column("P")).toEqual(["below target", ofThese, ofThese, ofThese, ofThese]);
    // PREVRANGE's own worked numbers are held by tests/references/gathers; of totals it is Wilson's (1927).
    const [low = 0, high = 0] = rangeByHand(five.map(([seen, lame]) => ({ lame, seen })));
    expect([cells.get("Comparison!F10"), cells.get("Comparison!G10")].map(Number)).toEqual(
      [low, high].map((end) => expect.closeTo(end, 9)),
    );
    expect(Number(cells.get("Comparison!G11"))).toBeLessThan(high);
    expect(cells.get("Comparison!A8")).toBe("2 flocks have gathers that do not come to the totals: see Gathers");
  });
});

test("one flock alone has its share, and what needs others is blank or not known, never 0", async () => {
  const content: ComparisonContent = {
    ...emptyComparison({ made: "2026-10-31" }),
    flocks: [flockOf("One", 100, 3)],
    chosen: "One",
  };
  const cells = sheetCells((await workedOut(flockComparison(content))).bytes);
  expect([..."EHIJ"].map((column) => cells.get(`Comparison!${column}10`) || undefined)).toEqual([
    0.03,
    undefined,
    undefined,
    undefined,
  ]);
  expect([10, 11, 12].map((row) => cells.get(`One flock!B${row}`))).toEqual(["not known", "not known", "not known"]);
});
