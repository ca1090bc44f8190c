import type { ICellData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { argumentCells } from "../../../../src/hosts/headless/insides/argumentCells.ts";
import { mergeInPlace } from "../../../../src/hosts/headless/insides/mergeInPlace.ts";
import { workOutOnce } from "../../../../src/hosts/headless/insides/workOutOnce.ts";
import { type Mends, openedEngine, parts } from "./pageEngine.ts";

// What is right is what a whole calculation of the same cells gives; which formulas are worked out is counted.

const { formula } = parts;
const number = (v: number): ICellData => ({ v, t: 2 });

/** Functions that give what they are given, or add it up, and note the cell they were called in. */
function counted(mended: boolean) {
  const calls: string[] = [];
  class Same extends formula.BaseFunction {
    override calculate(given: Parameters<InstanceType<typeof formula.BaseFunction>["calculate"]>[0]) {
      calls.push(`${String.fromCharCode(65 + this.column)}${this.row + 1}`);
      return given as InstanceType<typeof formula.NumberValueObject>;
    }
  }
  class Total extends formula.BaseFunction {
    override needsReferenceObject = true;
    override calculate(given: Parameters<typeof argumentCells>[0]) {
      calls.push(`${String.fromCharCode(65 + this.column)}${this.row + 1}`);
      const cells = argumentCells(given);
      const numbers = (Array.isArray(cells) ? cells.flat() : [cells]).filter((cell) => typeof cell === "number");
      return formula.NumberValueObject.create(numbers.reduce((sum, each) => sum + each, 0));
    }
  }
  const mends: Mends = {
    functions: () => [
      [Same, "SAME"],
      [Total, "TOTAL"],
    ],
    services(services) {
      if (!mended) return;
      // As in the page.
      mergeInPlace(services.get(formula.FormulaDataModel));
      workOutOnce(parts, services);
    },
  };
  return { calls, mends };
}

const cells = {
  A1: number(1),
  A2: number(2),
  A3: number(3),
  B1: "=SAME(A1:A3*10)",
  C1: "=SAME(B1:B3+1)",
  D1: "=TOTAL(C1:C3)",
  E1: "=SAME(A1>0)",
  F1: '=IF(SAME(E1),"some","none")',
  G1: "=TOTAL(C2)",
  H1: number(7),
  I1: "=TOTAL(H1)+TOTAL(C1:C3)",
};

describe("after a cell is typed", () => {
  it("each formula is worked out once, after those it rests on", async () => {
    const { calls, mends } = counted(true);
    const engine = await openedEngine(cells, mends);
    expect(["B3", "C3", "D1", "F1", "G1", "I1"].map(engine.at)).toEqual([30, 31, 63, "some", 21, 70]);
    calls.length = 0;
    await engine.type("A2", number(5));
    expect(["B2", "C2", "D1", "G1", "I1"].map(engine.at)).toEqual([50, 51, 93, 51, 100]);
    // Two calls stand in I1.
    expect([...calls].sort()).toEqual(["B1", "C1", "D1", "G1", "I1", "I1"]);
    engine.close();
  });

  it("nothing is worked out that reads what came out the same", async () => {
    const { calls, mends } = counted(true);
    const engine = await openedEngine(cells, mends);
    calls.length = 0;
    await engine.type("A1", number(9));
    // It is still above 0, and what reads that is left.
    expect(calls.includes("E1")).toBe(true);
    expect(calls.includes("F1")).toBe(false);
    const asItComes = counted(false);
    const other = await openedEngine(cells, asItComes.mends);
    asItComes.calls.length = 0;
    await other.type("A1", number(9));
    expect(asItComes.calls.includes("F1")).toBe(true);
    other.close();
    calls.length = 0;
    await engine.type("A1", number(-9));
    expect(calls.includes("F1")).toBe(true);
    expect(engine.at("F1")).toBe("none");
    engine.close();
  });

  it("a function reads what formulas filled earlier and not in this run", async () => {
    const { calls, mends } = counted(true);
    const engine = await openedEngine(cells, mends);
    calls.length = 0;
    await engine.type("H1", number(8));
    expect(calls).toEqual(["I1", "I1"]);
    expect(engine.at("I1")).toBe(71);
    engine.close();
  });

  it("what reads a list that grows or gets shorter is worked out anew", async () => {
    const { mends } = counted(true);
    const list = {
      A1: number(3),
      B1: "=SEQUENCE(A1)",
      C1: "=SUM(B1:B9)",
      D1: "=TOTAL(B1:B9)",
      E4: "=B4*2",
      F1: "=COUNT(B2:B9)",
    };
    const engine = await openedEngine(list, mends);
    const at = ["C1", "D1", "E4", "F1"];
    expect(at.map(engine.at)).toEqual([6, 6, 0, 2]);
    await engine.type("A1", number(5));
    expect(at.map(engine.at)).toEqual([15, 15, 8, 4]);
    await engine.type("A1", number(2));
    expect(at.map(engine.at)).toEqual([3, 3, 0, 1]);
    await engine.type("A1", number(4));
    await engine.type("A1", number(1));
    expect(at.map(engine.at)).toEqual([1, 1, 0, 0]);
    engine.close();
    const asItComes = await openedEngine(list, counted(false).mends);
    await asItComes.type("A1", number(2));
    expect(asItComes.at("C1")).toBe(6);
    asItComes.close();
  });

  it("what was typed in the meantime is worked out too", async () => {
    const { mends } = counted(true);
    const engine = await openedEngine(cells, mends);
    await Promise.all([engine.type("A1", number(4)), engine.type("A3", number(6)), engine.type("H1", number(1))]);
    expect(["D1", "I1"].map(engine.at)).toEqual([123, 124]);
    engine.close();
  });

  it("formulas that go round in a circle come to an end", async () => {
    const { mends } = counted(true);
    const engine = await openedEngine({ A1: "=B1+1", B1: "=A1+1", C1: number(1), D1: "=C1+A1*0" }, mends);
    await engine.type("C1", number(5));
    expect(engine.at("D1")).toBe(5);
    engine.close();
  });
});

it("any order of typing ends with what a whole calculation gives", async () => {
  const more = {
    ...cells,
    J1: "=FILTER(A1:A3,A1:A3>2)",
    K1: "=SUM(J1:J3)",
    L1: "=SORT(J1:J3)",
    M1: "=TOTAL(L1:L3)+D1",
    N1: '=COUNTIF(C1:C3,">20")',
    O1: "=INDEX(C1:C3,H1)",
    P1: "=SUM(OFFSET(A1,0,1,H1,1))",
  };
  const { mends } = counted(true);
  const engine = await openedEngine({ ...more, H1: number(2) }, mends);
  // A row of numbers that looks like chance and is the same each time.
  let seed = 7;
  const next = (below: number): number => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed % below;
  };
  const typed: Record<string, ICellData> = {};
  for (let turn = 0; turn < 40; turn += 1) {
    const address = next(4) === 0 ? "H1" : `A${1 + next(3)}`;
    const cell = number(address === "H1" ? 1 + next(3) : next(6));
    typed[address] = cell;
    await engine.type(address, cell);
    const whole = await openedEngine({ ...more, H1: number(2), ...typed }, counted(false).mends);
    const all = ["B1", "B3", "C2", "D1", "F1", "G1", "I1", "J1", "K1", "M1", "N1", "O1", "P1"];
    expect(all.map(engine.at), `turn ${turn}, ${address} ${cell.v}`).toEqual(all.map(whole.at));
    whole.close();
  }
  engine.close();
});
