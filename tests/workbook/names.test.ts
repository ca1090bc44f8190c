import { describe, expect, it } from "vitest";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const table = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Gathers" displayName="Gathers" ref="A1:C4" totalsRowCount="1"><tableColumns count="3"><tableColumn id="1" name="Group"/><tableColumn id="2" name="Lame"/><tableColumn id="3" name="Seen [all] #"/></tableColumns></table>`;
const tableRows = {
  A1: "Group",
  B1: "Lame",
  C1: "Seen [all] #",
  A2: "a",
  B2: 2,
  C2: 20,
  A3: "b",
  B3: 6,
  C3: 20,
  A4: "all",
  B4: "=SUBTOTAL(109,Gathers[Lame])",
  C4: 40,
};

describe("tables", () => {
  const inTable = async (cells: Record<string, string>, other: Record<string, string> = {}) =>
    recalculated(
      buildWorkbook({
        sheets: [
          { name: "Records", rows: rowsOf({ ...tableRows, ...cells }), tables: [table] },
          { name: "Other one", rows: rowsOf(other) },
        ],
      }),
    );

  it("reads structured references of every form", async () => {
    const { at, summary } = await inTable(
      {
        E1: "=FOOT.FLOCKPREV(Gathers[Lame],Gathers[Seen '[all'] '#])",
        F1: "=SUM(Gathers[[Lame]:[Seen '[all'] '#]])",
        G1: "=Gathers[[#Headers],[Lame]]",
        H1: "=Gathers[[#Totals],[Lame]]",
        I1: "=COUNTA(Gathers[[#All],[Group]])",
        J1: "=ROWS(Gathers)",
        K1: "=COUNTA(Gathers[#Headers])",
        L1: "=COUNTA(Gathers[[#Headers],[#Data],[Group]])",
        E2: "=Gathers[[#This Row],[Lame]]/Gathers[[#This Row],[Seen '[all'] '#]]",
        E3: "=gathers[@lame]*10",
        F2: "=Gathers[[#This Row],[Nothing]]",
        F9: "=Gathers[[#This Row],[Lame]]",
      },
      { A1: "=SUM(Gathers[Lame])", A2: "=Gathers[[#This Row],[Lame]]" },
    );
    const cells = ["E1", "F1", "G1", "H1", "I1", "J1", "K1", "L1", "E2", "E3"].map((address) => at(address));
    expect(cells).toEqual([0.2, 48, "Lame", 8, 4, 2, 3, 3, 0.1, 60]);
    expect([at("F2"), at("F9"), at("A1", 1), at("A2", 1)]).toEqual([{ error: "#REF!" }, { error: "#REF!" }, 8, 2]);
    expect(summary.left).toEqual([]);
  });

  it("does not spill into a table", async () => {
    const { at, summary } = await inTable({ C6: "=1", A5: "=TRANSPOSE(C2:C3)" }, { A1: "=_xlfn.SEQUENCE(2)" });
    expect(at("A2", 1)).toBe(2);
    expect(summary.left.map(({ address }) => address)).toEqual(["A5"]);
  });

  it("stops a FOOT answer that would run into a table", async () => {
    const rows = rowsOf({ A1: "g", B1: 1, C1: 9, A2: "=FOOT.PREVBY(A1,B1,C1)" });
    const low = table.replace("A1:C4", "A4:C7").replace(/totalsRowCount="1"/, "");
    const { at, summary } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows, tables: [low] }] }));
    expect(at("A2")).toEqual({ error: "#SPILL!" });
    expect(summary.errors[0]?.message).toContain("table");
  });
});

describe("names", () => {
  const named = (names: string, one: Record<string, number | string>, two: Record<string, number | string> = {}) =>
    recalculated(
      buildWorkbook({
        sheets: [
          { name: "One", rows: rowsOf(one) },
          { name: "It's two", rows: rowsOf(two) },
        ],
        names,
      }),
    );

  it("keeps names of the workbook and of a sheet apart", async () => {
    const { at } = await named(
      `<definedName name="seen">One!$A$1</definedName><definedName name="seen" localSheetId="1">'It''s two'!$A$1</definedName><definedName name="twice">seen*2</definedName>`,
      { A1: 5, B1: "=SEEN", C1: "=twice", D1: "='It''s two'!seen" },
      { A1: 7, B1: "=seen", C1: "=twice" },
    );
    expect([at("B1"), at("C1"), at("D1"), at("B1", 1), at("C1", 1)]).toEqual([5, 10, 7, 7, 14]);
  });

  it("follows names that move with the cell, names that are formulas, and INDIRECT", async () => {
    const { at } = await named(
      `<definedName name="left_of_me">One!XFD1</definedName><definedName name="rate">0.5+0.25</definedName><definedName name="share">_xldudf_FOOT_FLOCKPREV(One!$A$1,One!$A$2)</definedName><definedName name="block">One!$A$1:$A$2</definedName>`,
      {
        A1: 2,
        A2: 8,
        B1: "=left_of_me*10",
        B2: "=left_of_me*10",
        C1: "=rate*2",
        D1: "=share",
        E1: '=SUM(INDIRECT("block"))',
        F1: "=SUM(block)",
      },
    );
    expect([at("B1"), at("B2"), at("C1"), at("D1"), at("E1"), at("F1")]).toEqual([20, 80, 1.5, 0.25, 10, 10]);
  });

  it("leaves formulas whose names turn in a circle or grow without end", async () => {
    const bomb = Array.from(
      { length: 30 },
      (_, at) => `<definedName name="n_${at}">n_${at + 1}+n_${at + 1}</definedName>`,
    ).join("");
    const { at, summary } = await named(
      `<definedName name="me">me+1</definedName><definedName name="ping">pong</definedName><definedName name="pong">ping</definedName>${bomb}<definedName name="n_30">1</definedName>`,
      { A1: "=me", B1: "=ping", C1: "=n_0", D1: "=n_29" },
    );
    expect(at("D1")).toBe(2);
    expect(summary.left.map(({ address, reason }) => [address, reason])).toEqual([
      ["A1", "the name me refers to itself"],
      ["B1", "the name ping refers to itself"],
      ["C1", expect.stringContaining("grow")],
    ]);
  });
});
