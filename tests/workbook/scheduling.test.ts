import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { overlap } from "../../src/workbook/address.ts";
import { coneOf } from "../../src/workbook/coneOf.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const one = (cells: Parameters<typeof rowsOf>[0]) =>
  recalculated(buildWorkbook({ sheets: [{ name: "One", rows: rowsOf(cells) }] }));

describe("circles", () => {
  it("keep their values and are named; what stands outside is worked out", async () => {
    const rows =
      '<row r="1"><c r="A1"><f>B1+1</f><v>7</v></c><c r="B1"><f>A1+C1</f><v>8</v></c><c r="C1"><f>A1*0</f><v>9</v></c><c r="D1"><f>A1*2</f><v>0</v></c><c r="E1"><f>E1+1</f><v>5</v></c><c r="F1"><f>1+1</f><v>0</v></c></row>';
    const { at, summary } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect(["A1", "B1", "C1", "D1", "E1", "F1"].map((address) => at(address))).toEqual([7, 8, 9, 14, 5, 2]);
    expect(summary.left.map(({ address }) => address)).toEqual(["A1", "B1", "C1", "E1"]);
    expect(new Set(summary.left.map(({ reason }) => reason))).toEqual(new Set(["it depends on its own answer"]));
  });

  it("keep what a workbook that goes round in them on purpose has settled, with FOOT inside and beside them", async () => {
    const rows =
      '<row r="1"><c r="A1"><v>4</v></c><c r="B1"><f>FOOT.FLOCKPREV(A1,C1)</f><v>0.16</v></c><c r="C1"><f>20+B1</f><v>20.16</v></c><c r="D1"><f>FOOT.FLOCKPREV(A1,20)</f><v>0</v></c><c r="E1"><f>C1+D1</f><v>0</v></c></row>';
    const calculation = '<calcPr iterate="1" iterateCount="100"/>';
    const bytes = buildWorkbook({ sheets: [{ name: "One", rows }], calculation });
    const { summary, bytes: after } = await recalculate(openWorkbook(bytes), engineInNode());
    const values = openWorkbook(after).sheets[0]?.rows[0]?.cells.map(({ value }) => value);
    expect(values).toEqual([4, 0.16, 20.16, 0.2, 20.36]);
    expect(summary.left.map(({ address, reason }) => [address, reason])).toEqual([
      ["B1", "it depends on its own answer"],
      ["C1", "it depends on its own answer"],
    ]);
  });

  it("are none where a cell asks for its own place, or for one beside it", async () => {
    const { at, summary } = await one({
      A1: 5,
      A2: "=ROW(A2)",
      A3: "=OFFSET(A3,-2,0)+ROWS(A$1:A3)",
      B1: "=COLUMN(B1)",
    });
    expect([at("A2"), at("A3"), at("B1"), summary.circular]).toEqual([2, 8, 2, false]);
  });
});

describe("cells that a formula finds while it is worked out", () => {
  it("are read with their answers, by functions that keep what they have read too", async () => {
    const { at } = await one({
      A1: '=SUM(INDIRECT("F1:F2"))',
      B1: '=COUNTIF(INDIRECT("G1:G2"),7)',
      C1: '=LARGE(INDIRECT("H1:H2"),1)',
      D1: '=COUNTIF(OFFSET(I1,0,0,2,1),">5")',
      E1: '=RANK(9,INDIRECT("J1:J2"))',
      F1: "=1+1",
      F2: "=F1+1",
      G1: "=3+4",
      G2: "=G1",
      H1: "=3*3",
      H2: "=H1+1",
      I1: "=3*2",
      I2: "=I1+1",
      J1: "=3*3",
      J2: "=J1+1",
    });
    expect(["A1", "B1", "C1", "D1", "E1"].map((address) => at(address))).toEqual([5, 2, 10, 2, 2]);
  });
});

describe("the cells that SUMIF adds up", () => {
  it("go as far as those it looks at, and are worked out before they are added up", async () => {
    const { at } = await one({
      D1: "=SUMIF(A1:A3,1,B1)",
      E1: "=AVERAGEIF(A1:A3,1,B1:B2)",
      F1: "=SUMIF(INDEX(A1:A9,1):A3,1,B1)",
      A2: "=3-2",
      B2: "=2+3",
      A3: "=A2",
      B3: "=B2+2",
    });
    expect(["D1", "E1", "F1"].map((address) => at(address))).toEqual([12, 6, 12]);
  });
});

describe("rows out of sight", () => {
  it("count in SUBTOTAL by whether a filter or a hand took them out", async () => {
    const rows = `<row r="1"><c r="A1"><v>1</v></c></row><row r="2" hidden="1"><c r="A2"><v>10</v></c></row><row r="3"><c r="A3"><v>100</v></c><c r="B3"><f>SUBTOTAL(9,A1:A3)</f></c><c r="C3"><f>SUBTOTAL(109,A1:A3)</f></c></row>`;
    const filter = '<autoFilter ref="A1:A3"><filterColumn colId="0"/></autoFilter>';
    const byHand = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    const byFilter = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows, after: filter }] }));
    expect([byHand.at("B3"), byHand.at("C3"), byFilter.at("B3"), byFilter.at("C3")]).toEqual([111, 101, 101, 101]);
  });
});

describe("what hangs on a formula", () => {
  it("is found as by looking at every pair", () => {
    const place = fc.nat(5);
    const area = fc.tuple(place, place, place, place).map(([a, b, c, d]) => ({
      top: Math.min(a, b),
      bottom: Math.max(a, b),
      left: Math.min(c, d),
      right: Math.max(c, d),
    }));
    const reader = fc.record({ row: place, column: place, reads: fc.array(area, { maxLength: 3 }) });
    fc.assert(
      fc.property(fc.array(reader, { minLength: 1, maxLength: 12 }), fc.nat(11), (list, start) => {
        const readers = list.map(({ row, column, reads }) => ({
          sheet: 0,
          cell: { row, column },
          filled: [],
          reads: reads.map((one) => ({ sheet: 0, area: one })),
        }));
        const wanted = new Set([start % readers.length]);
        for (const at of wanted) {
          const { row = 0, column = 0 } = readers[at]?.cell ?? {};
          const own = { top: row, bottom: row, left: column, right: column };
          readers.forEach(({ reads }, other) => {
            if (reads.some((read) => overlap(read.area, own))) wanted.add(other);
          });
        }
        expect([...coneOf(readers, [start % readers.length])].sort()).toEqual([...wanted].sort());
      }),
    );
  });
});
