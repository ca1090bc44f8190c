import { describe, expect, it } from "vitest";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const one = (cells: Parameters<typeof rowsOf>[0]) =>
  recalculated(buildWorkbook({ sheets: [{ name: "One", rows: rowsOf(cells) }] }));

describe("FOOT formulas that rest on records alone", () => {
  it("take every kind of argument", async () => {
    const { at } = await one({
      A1: 4,
      B1: 20,
      A2: "lame",
      C1: "=FOOT.FLOCKPREV(4,20)",
      D1: "=FOOT.FLOCKPREV( A1 , 'One'!B1 )",
      E1: "=FOOT.TARGETCHECK(A1,B1,0.02,,100)",
      F1: '=FOOT.TAGKEY("a ""b""")',
      G1: "=FOOT.FLOCKPREV(-1,20)",
      H1: "=FOOT.FLOCKPREV(A1+1,B1)",
      I1: "=FOOT.ABOUT()",
    });
    expect([at("C1"), at("D1"), at("H1"), at("G1")]).toEqual([0.2, 0.2, 0.25, { error: "#VALUE!" }]);
    expect(at("E1")).toContain("target");
    expect(at("I1")).toContain("Soundfold");
  });

  it("follow one another, and the engine follows them", async () => {
    const { at, summary } = await one({
      A1: 46095,
      B1: "=FOOT.CLEARDATE(A1,28)",
      C1: "=FOOT.RECHECKDUE(B1,7)",
      D1: "=FOOT.RECHECKDUE(C1,7)",
      E1: "=FOOT.RECHECKDUE(D1,7)",
      F1: "=FOOT.RECHECKDUE(E1,7)",
      G1: "=F1-A1",
    });
    expect([at("B1"), at("F1"), at("G1")]).toEqual([46095 + 29, 46095 + 57, 57]);
    expect(summary.errors).toEqual([]);
  });

  it("wait for what the engine works out", async () => {
    const { at } = await one({ A1: "=2+2", B1: 20, C1: "=FOOT.FLOCKPREV(A1,B1)", D1: "=FOOT.FLOCKPREV(A:A,B:B)" });
    expect([at("C1"), at("D1")]).toEqual([0.2, 0.2]);
  });

  it("see cells that a spill fills", async () => {
    const { at } = await one({
      A1: "=_xlfn.SEQUENCE(3)",
      B1: 10,
      B2: 10,
      B3: 10,
      D2: "=FOOT.FLOCKPREV(A2:A3,B2:B3)",
      E1: "=_xlfn._xlws.SORT(B1:B3)",
      F1: "=FOOT.FLOCKPREV(A2,E2)",
    });
    expect([at("D2"), at("F1")]).toEqual([0.25, 0.2]);
  });

  it("read more ranges than are kept", async () => {
    const rows = 1500;
    const cells = Array.from({ length: rows }, (_, index) => [
      [`A${index + 1}`, 1 + (index % 3)],
      [`B${index + 1}`, 20],
      [`C${index + 1}`, `=FOOT.FLOCKPREV(A$1:A${index + 1},B$1:B${index + 1})`],
      [`D${index + 1}`, `=FOOT.FLOCKPREV(A$1:A$${rows},B$1:B$${rows})`],
    ]);
    const { at } = await one(Object.fromEntries(cells.flat()));
    expect([at("C1"), at("C2"), at("C3"), at(`C${rows}`)]).toEqual([0.05, 0.075, 0.1, 0.1]);
    expect([at("D1"), at(`D${rows}`)]).toEqual([0.1, 0.1]);
  });

  it("end when they turn in a circle", async () => {
    const { summary } = await one({ A1: "=FOOT.RECHECKDUE(B1)", B1: "=FOOT.RECHECKDUE(A1)" });
    expect(summary.circular).toBe(true);
  });
});
