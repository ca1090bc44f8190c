import { describe, expect, it } from "vitest";
import { columnLetters } from "../../src/workbook/address.ts";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const dynamic = (address: string, area: string, formula: string, value = "0"): string =>
  `<c r="${address}" cm="1"><f t="array" ref="${area}">${formula}</f><v>${value}</v></c>`;
const sheet = (rows: string, after = "") => buildWorkbook({ sheets: [{ name: "One", rows, after }] });

describe("answers of more than one cell", () => {
  it("fills the cells beside and below, in rows that were not there", async () => {
    const { at, xml } = await recalculated(
      sheet(rowsOf({ A1: "x", B1: 1, C1: 10, E1: "=FOOT.PREVBY(A1:A1,B1:B1,C1:C1)" })),
    );
    expect(xml()).toContain('<f t="array" ref="E1:J3">_xldudf_FOOT_PREVBY(A1:A1,B1:B1,C1:C1)</f>');
    expect([at("E1"), at("E2"), at("G2")]).toEqual(["group", "x", 10]);
    expect(at("H3")).toBeCloseTo(0.1, 12);
  });

  it("clears the cells it no longer fills, and keeps their style", async () => {
    const rows = `<row r="1">${dynamic("A1", "A1:A5", "_xlfn.SEQUENCE(2)", "1")}</row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row><row r="4"><c r="A4" s="2"><v>4</v></c><c r="B4"><v>9</v></c></row><row r="5"/>`;
    const { at, xml } = await recalculated(sheet(rows));
    expect([at("A1"), at("A2"), at("A3"), at("A4"), at("B4")]).toEqual([1, 2, null, null, 9]);
    expect(xml()).toContain(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A2">_xlfn.SEQUENCE(2)</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"></row><row r="4"><c r="A4" s="2"/><c r="B4"><v>9</v></c></row><row r="5"/>',
    );
  });

  it("does not count the cells it filled before as something in its way", async () => {
    const rows = `<row r="1">${dynamic("A1", "A1:A2", "_xlfn.SEQUENCE(3)", "1")}<c r="B1"><f>SUM(A1:A9)</f></c></row><row r="2"><c r="A2"><v>77</v></c></row>`;
    const { at } = await recalculated(sheet(rows));
    expect([at("A1"), at("A2"), at("A3"), at("B1")]).toEqual([1, 2, 3, 6]);
  });

  it("says #SPILL! when something is in its way, and clears the rest", async () => {
    const rows = `<row r="1">${dynamic("A1", "A1:A2", "_xlfn.SEQUENCE(3)", "1")}<c r="B1"><f>A1</f></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3" t="inlineStr"><is><t>mine</t></is></c></row>`;
    const { at, xml, summary } = await recalculated(sheet(rows));
    expect([at("A1"), at("A2"), at("A3"), at("B1")]).toEqual([
      { error: "#SPILL!" },
      null,
      "mine",
      { error: "#SPILL!" },
    ]);
    expect(xml()).toContain('<c r="A1" t="e" cm="1"><f t="array" ref="A1">_xlfn.SEQUENCE(3)</f><v>#SPILL!</v></c>');
    expect(summary.errors.map(({ address }) => address)).toEqual(["A1", "B1"]);
  });

  it("does not fill merged cells or a table, and what rests on it hears of that", async () => {
    const merged = '<mergeCells count="1"><mergeCell ref="A2:B2"/></mergeCells>';
    const { at, summary } = await recalculated(
      sheet(rowsOf({ A1: "=_xlfn.SEQUENCE(3)", C1: "=IFERROR(SUM(A1:A3),-1)" }), merged),
    );
    expect([at("A1"), at("A3"), at("C1")]).toEqual([{ error: "#SPILL!" }, null, -1]);
    expect(summary.errors[0]?.message).toContain("merged cells");
  });

  it("keeps an array formula of the old kind in its own cells", async () => {
    const rows =
      '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f t="array" ref="B1:B4">A1:A3*2</f><v>0</v></c><c r="C1"><f t="array" ref="C1">SUM(A1:A3*A1:A3)</f></c><c r="D1"><f t="array" ref="D1">A1:A3</f></c></row><row r="2"><c r="A2"><v>2</v></c><c r="B2"><v>0</v></c></row><row r="3"><c r="A3"><v>3</v></c></row><row r="4"><c r="D4"><f>SUM(B1:B3)</f></c></row>';
    const { at, xml } = await recalculated(sheet(rows));
    expect([at("B1"), at("B2"), at("B3"), at("B4"), at("C1"), at("D1"), at("D2"), at("D4")]).toEqual([
      2,
      4,
      6,
      { error: "#N/A" },
      14,
      1,
      null,
      12,
    ]);
    expect(xml()).toContain('<c r="B1"><f t="array" ref="B1:B4">A1:A3*2</f><v>2</v></c>');
  });

  it("takes of a range the cell in its own row, in a formula for one cell", async () => {
    const { at, summary } = await recalculated(
      sheet(
        '<row r="1"><c r="A1"><v>5</v></c><c r="B1"><f>A1:A3</f><v>5</v></c><c r="C1"><f>B1+1</f></c></row><row r="2"><c r="A2"><v>6</v></c></row>',
      ),
    );
    expect([at("B1"), at("B2"), at("C1")]).toEqual([5, null, 6]);
    expect(summary.left).toEqual([]);
  });

  it("reads A1# as the cells the formula in A1 fills", async () => {
    const cells = {
      A1: "=_xlfn.SEQUENCE(3)",
      B1: "=SUM(_xlfn.ANCHORARRAY(A1))",
      C1: "=SUM(A1#)",
      D1: "=_xlfn._xlws.SORT(_xlfn.ANCHORARRAY(A1),1,-1)",
      E1: '=COUNTIF(_xlfn.ANCHORARRAY(A1),">1")',
      F1: "=ROWS(_xlfn.ANCHORARRAY(D1))",
      G1: "=_xlfn.ANCHORARRAY(B1)",
      H1: "=SUM('One'!D1#)",
    };
    const { at } = await recalculated(sheet(rowsOf(cells)));
    expect([at("B1"), at("C1"), at("D1"), at("D3"), at("E1"), at("F1"), at("G1"), at("H1")]).toEqual([
      6,
      6,
      3,
      1,
      2,
      3,
      { error: "#REF!" },
      6,
    ]);
  });

  it("works out spills that rest on spills, whatever the order of the cells", async () => {
    const formulas: Record<string, string> = {
      s: "_xlfn.SEQUENCE(4)",
      f: "_xlfn._xlws.FILTER($s1:$s4,$s1:$s4>1)",
      d: "$f2*2",
      e: "_xlfn._xlws.SORT($f1:$f3,1,-1)",
      p: "$e2+100",
      u: "$e1:$e3+$p1",
      t: "SUM($u2:$u3)",
      x: '$u3&"-"&$t1',
    };
    // Fixed shufflings: with the engine's own order about half of all orders give a wrong value.
    for (const order of ["tsxpufde", "fpteduxs", "pdsfutex", "xtupedfs", "sfdeputx"]) {
      const letters = Object.fromEntries([...order].map((key, index) => [key, columnLetters(index)]));
      const cells = [...order].map((key) => {
        const text = (formulas[key] ?? "")
          .replace(/\$([a-z])/g, (_, name: string) => letters[name] ?? "")
          .replaceAll("&", "&amp;")
          .replaceAll(">", "&gt;");
        return dynamic(`${letters[key]}1`, `${letters[key]}1`, text);
      });
      const { at } = await recalculated(sheet(`<row r="1">${cells.join("")}</row>`));
      const value = (key: string) => at(`${letters[key]}1`);
      expect([order, value("d"), value("p"), value("u"), value("t"), value("x")]).toEqual([
        order,
        6,
        103,
        107,
        211,
        "105-211",
      ]);
    }
  });

  it("does not let SORT disturb the cells it sorts", async () => {
    const { at } = await recalculated(
      sheet(
        rowsOf({
          A1: 3,
          A2: 1,
          C1: "=_xlfn._xlws.SORT(A1:A2)",
          E1: "=_xlfn.XLOOKUP(1,A1:A2,A1:A2)",
          F1: "=INDEX(A1:A2,1)",
          G1: "=MATCH(1,A1:A2,0)",
        }),
      ),
    );
    expect([at("C1"), at("C2"), at("E1"), at("F1"), at("G1")]).toEqual([1, 3, 1, 3, 2]);
  });
});
