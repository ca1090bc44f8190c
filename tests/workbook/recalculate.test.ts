import { describe, expect, it } from "vitest";
import { dayOf } from "../../src/cells/day.ts";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const oneSheet = (cells: Parameters<typeof rowsOf>[0]) =>
  buildWorkbook({ sheets: [{ name: "One", rows: rowsOf(cells) }] });

describe("working out a workbook", () => {
  it("works out built-in and FOOT functions, one on the other", async () => {
    const { at, summary } = await recalculated(
      oneSheet({
        A1: 4,
        B1: 20,
        C1: "=_xldudf_FOOT_FLOCKPREV(A1,B1)",
        D1: "=C1*100",
        E1: "=IF(D1>10,&quot;high&quot;,1)".replaceAll("&quot;", '"'),
      }),
    );
    expect([at("C1"), at("D1"), at("E1")]).toEqual([0.2, 20, "high"]);
    expect(summary.formulas).toBe(3);
    expect(summary.calls.find(({ name }) => name === "FOOT.FLOCKPREV")?.formulas).toBe(1);
    expect(summary.errors).toEqual([]);
  });

  it.each(["_xldudf_FOOT_FLOCKPREV", "FOOT.FLOCKPREV", "foot.flockprev", "_xldudf_foot_flockprev", "FOOT_FLOCKPREV"])(
    "reads %s and stores it as Excel does",
    async (name) => {
      const { at, xml } = await recalculated(oneSheet({ A1: 4, B1: 20, C1: `=${name}(A1,B1)` }));
      expect(at("C1")).toBe(0.2);
      expect(xml()).toContain('cm="1"><f t="array" ref="C1">_xldudf_FOOT_FLOCKPREV(A1,B1)</f><v>0.2</v></c>');
    },
  );

  it("passes blank cells as blanks, not as 0", async () => {
    const { at } = await recalculated(
      oneSheet({ A1: 3, A3: 1, C1: "=FOOT.SCOREPREV(A1:A3,2)", D1: "=FOOT.SCOREPREV(A1:A4,0)" }),
    );
    expect([at("C1"), at("D1")]).toEqual([0.5, 1]);
  });

  it("keeps the message of a refusal", async () => {
    const { summary } = await recalculated(
      oneSheet({ A1: 21, B1: 20, C1: "=FOOT.FLOCKPREV(A1,B1)", D1: "=C1+1", E1: "=IFERROR(C1,0)" }),
    );
    expect(summary.errors).toEqual([
      { sheet: "One", address: "C1", code: "#VALUE!", message: expect.stringContaining("21 is more than the 20 seen") },
      { sheet: "One", address: "D1", code: "#VALUE!" },
    ]);
  });

  it("says that a FOOT function does not exist", async () => {
    const { at, summary } = await recalculated(oneSheet({ A1: "=FOOT.NOSUCH(1)", B1: "=A1" }));
    expect(at("B1")).toEqual({ error: "#NAME?" });
    expect(summary.errors[0]?.message).toBe("there is no function FOOT.NOSUCH");
  });

  it("takes text in quotes for text", async () => {
    const { at, xml } = await recalculated(oneSheet({ A1: '="FOOT.FLOCKPREV(1,2) ""A1"" "&LEN("_xlfn.FILTER(")' }));
    expect(at("A1")).toBe('FOOT.FLOCKPREV(1,2) "A1" 13');
    expect(xml()).toContain('<f>"FOOT.FLOCKPREV(1,2) ""A1"" "&amp;LEN("_xlfn.FILTER(")</f>');
  });

  it("takes the newer built-ins by their prefixes and keeps these", async () => {
    const { at, xml } = await recalculated(
      oneSheet({
        A1: 3,
        A2: 1,
        B1: '=_xlfn.MAXIFS(A1:A2,A1:A2,"<3")',
        C1: "=_xlfn._xlws.SORT(A1:A2)",
        D1: "=_xlfn.LET(_xlpm.x,A1,_xlpm.x*2)",
        E1: "=XLOOKUP(1,A1:A2,A1:A2)",
      }),
    );
    expect([at("B1"), at("C1"), at("C2"), at("D1"), at("E1")]).toEqual([1, 1, 3, 6, 1]);
    expect(xml()).toContain('<f t="array" ref="C1:C2">_xlfn._xlws.SORT(A1:A2)</f>');
    expect(xml()).toContain("<f>_xlfn.XLOOKUP(1,A1:A2,A1:A2)</f>");
  });

  it("follows cells that stand out of order, and whole columns", async () => {
    const rows =
      '<row r="3"><c r="B3"><v>5</v></c><c r="A3"><v>2</v></c></row><row r="1"><c r="D1"><f>FOOT.FLOCKPREV(A:A,B:B)</f></c><c r="A1"><v>1</v></c><c r="B1"><v>5</v></c><c r="C1"><f>SUM(A:A)</f></c></row>';
    const { at } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect([at("C1"), at("D1")]).toEqual([3, 0.3]);
  });

  it("reads cells and rows that do not say where they stand", async () => {
    const rows =
      '<row><c><v>4</v></c><c><v>20</v></c></row><row><c><f>FOOT.PREVRANGE(A1,B1)</f></c><c r="D2"><v>7</v></c><c><v>8</v></c></row>';
    const { at } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect([at("A1"), at("B1"), at("D2"), at("E2")]).toEqual([4, 20, 7, 8]);
    expect(at("A2")).toBeCloseTo(0.0807, 4);
    expect(at("B2")).toBeCloseTo(0.416, 4);
  });

  it("reads shared texts, texts in place, and shared formulas", async () => {
    const rows =
      '<row r="1"><c r="A1" t="s"><v>1</v></c><c r="B1" t="inlineStr"><is><r><t>ru</t></r><r><t>n</t></r><rPh sb="0" eb="1"><t>x</t></rPh></is></c><c r="C1"><f t="shared" ref="C1:C3" si="0">A1&amp;"-"&amp;$B$1&amp;ROW(A1)</f></c></row><row r="2"><c r="A2" t="s"><v>0</v></c><c r="C2"><f t="shared" si="0"/></c></row><row r="3"><c r="C3" t="str"><f t="shared" si="0"/><v>old</v></c></row>';
    const { at, xml } = await recalculated(
      buildWorkbook({
        sheets: [{ name: "One", rows }],
        sharedStrings: ["<t>ewe</t>", '<r><t>la</t></r><r><t xml:space="preserve">mb </t></r>'],
      }),
    );
    expect([at("C1"), at("C2"), at("C3")]).toEqual(["lamb -run1", "ewe-run2", "-run3"]);
    expect(xml()).toContain('<c r="C2" t="str"><f t="shared" si="0"/><v>ewe-run2</v></c>');
  });

  it("turns shared FOOT formulas into formulas of their own", async () => {
    const rows =
      '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>4</v></c><c r="C1"><f t="shared" ref="C1:C2" si="0">FOOT.FLOCKPREV(A1,B1)</f></c></row><row r="2"><c r="A2"><v>3</v></c><c r="B2"><v>4</v></c><c r="C2"><f t="shared" si="0"/></c></row>';
    const { at, xml } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect([at("C1"), at("C2")]).toEqual([0.25, 0.75]);
    expect(xml()).toContain('<f t="array" ref="C2">_xldudf_FOOT_FLOCKPREV(A2,B2)</f>');
    expect(xml()).not.toContain("shared");
  });

  it("writes every kind of value", async () => {
    const { at, xml } = await recalculated(
      oneSheet({ A1: "=1=1", B1: "=NA()", C1: '=""', D1: "=Z99", E1: '="a<b & "&CHAR(10)', F1: "=0.1+0.2" }),
    );
    expect([at("A1"), at("B1"), at("C1"), at("D1"), at("E1")]).toEqual([true, { error: "#N/A" }, "", 0, "a<b & \n"]);
    expect(at("F1")).toBeCloseTo(0.3, 12);
    expect(xml()).toContain('<c r="C1" t="str"><f>""</f><v></v></c>');
  });

  it("leaves alone what it cannot work out, and says why", async () => {
    const rows =
      '<row r="1"><c r="A1"><f>[1]Other!A1*2</f><v>8</v></c><c r="B1"><f>A1+1</f><v>0</v></c><c r="C1"><f>GETPIVOTDATA("x",A5)</f><v>3</v></c><c r="D1" t="str"><f>Sheet2:Sheet3!A1</f><v>kept</v></c></row>';
    const { at, xml, summary } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect([at("A1"), at("B1"), at("C1"), at("D1")]).toEqual([8, 9, 3, "kept"]);
    expect(summary.left).toEqual([
      { sheet: "One", address: "A1", reason: "it refers to another workbook" },
      { sheet: "One", address: "C1", reason: "it uses GETPIVOTDATA, which is not worked out here" },
      { sheet: "One", address: "D1", reason: expect.stringContaining("several sheets") },
    ]);
    expect(xml()).toContain('<c r="A1"><f>[1]Other!A1*2</f><v>8</v></c>');
  });

  it("ends on a circle and says so", async () => {
    const { summary } = await recalculated(oneSheet({ A1: "=B1+1", B1: "=A1+1", C1: "=1+1" }));
    expect(summary.circular).toBe(true);
  });

  it("counts days from 1904 where the workbook does", async () => {
    const days = (text: string) => dayOf(text) - 1462;
    const cells = {
      A1: days("2026-03-14"),
      B1: "=FOOT.CLEARDATE(A1,28)",
      C1: "=YEAR(A1)*100+MONTH(A1)",
      D1: "=DATE(2026,3,14)",
      E1: "=2*DATE(2026,3,14)",
      F1: "=EDATE(A1,1)",
      G1: "=WEEKDAY(A1,2)",
      H1: '=TEXT(A1,"yyyy")',
    };
    const { at, summary } = await recalculated(
      buildWorkbook({ sheets: [{ name: "One", rows: rowsOf(cells) }], date1904: true }),
    );
    expect(at("B1")).toBe(days("2026-04-12"));
    expect([at("C1"), at("D1"), at("E1"), at("F1"), at("G1")]).toEqual([
      202603,
      days("2026-03-14"),
      2 * days("2026-03-14"),
      days("2026-04-14"),
      6,
    ]);
    expect(summary.left.map(({ address }) => address)).toEqual(["H1"]);
  });

  it("counts the days of a text from 1904 too, and leaves times of day and other numbers alone", async () => {
    const day = dayOf("2026-03-14") - 1462;
    const cells = {
      A1: "2026-03-14",
      A2: "12:00",
      A3: "1,000",
      B1: "=A1+0",
      C1: "=YEAR(A1)*100+MONTH(A1)",
      D1: "=VALUE(A1)",
      E1: "=DATEVALUE(A1)",
      F1: "=A1+0=DATE(2026,3,14)",
      G1: "=EDATE(A1,1)",
      H1: "=A2+0",
      I1: "=A3+0",
      J1: '=COUNTIF(K1:K2,"2026-03-14")',
      K1: day,
      K2: day + 1462,
    };
    const { at } = await recalculated(
      buildWorkbook({ sheets: [{ name: "One", rows: rowsOf(cells) }], date1904: true }),
    );
    expect([..."BCDEFGHIJ"].map((column) => at(`${column}1`))).toEqual([
      day,
      202603,
      day,
      day,
      true,
      dayOf("2026-04-14") - 1462,
      0.5,
      1000,
      1,
    ]);
  });

  it("gives the same bytes when it is run again on its own result", async () => {
    const first = await recalculated(
      oneSheet({ A1: 4, B1: 20, C1: "=FOOT.PREVRANGE(A1,B1)", A3: "=FOOT.PREVBY(A5:A6,B5:B6,C5:C6)", A12: "x" }),
    );
    const second = await recalculated(first.bytes);
    expect(second.summary.changedCells).toBe(0);
    expect(second.bytes).toEqual(first.bytes);
  });
});
