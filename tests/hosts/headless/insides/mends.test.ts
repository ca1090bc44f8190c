import type { ICellData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import type { Cell } from "../../../../src/cells/cell.ts";
import { dayOf } from "../../../../src/cells/day.ts";
import { argumentCells } from "../../../../src/hosts/headless/insides/argumentCells.ts";
import { compareEachCell } from "../../../../src/hosts/headless/insides/compareEachCell.ts";
import { eachValueOnce } from "../../../../src/hosts/headless/insides/eachValueOnce.ts";
import { keepEmptyTexts, withEmptyText } from "../../../../src/hosts/headless/insides/emptyTexts.ts";
import { fitToCells } from "../../../../src/hosts/headless/insides/fitToCells.ts";
import { lengthOfNumbers } from "../../../../src/hosts/headless/insides/lengthOfNumbers.ts";
import { matchOfMany } from "../../../../src/hosts/headless/insides/matchOfMany.ts";
import { mendReader } from "../../../../src/hosts/headless/insides/mendReader.ts";
import { mergeInPlace } from "../../../../src/hosts/headless/insides/mergeInPlace.ts";
import { partsOfDates } from "../../../../src/hosts/headless/insides/partsOfDates.ts";
import { refuseUnclearDates } from "../../../../src/hosts/headless/insides/refuseUnclearDates.ts";
import { roomForArrays } from "../../../../src/hosts/headless/insides/roomForArrays.ts";
import { servicesOf } from "../../../../src/hosts/headless/insides/servicesOf.ts";
import { sortOfACopy } from "../../../../src/hosts/headless/insides/sortOfACopy.ts";
import { spilledRange } from "../../../../src/hosts/headless/insides/spilledRange.ts";
import { todayAndNow } from "../../../../src/hosts/headless/insides/todayAndNow.ts";
import { type Mends, openedEngine, parts, workedOut } from "./pageEngine.ts";

// Each mend is tried against the engine as it comes. Where a check of "as it comes" fails after a change of version, the
// engine has been mended itself, and what stands here in the list of DEVELOPERS.md may go. The right answers are Excel's;
// common practice, no source.

const { formula } = parts;
const number = (v: number): ICellData => ({ v, t: 2 });
const text = (v: string): ICellData => ({ v, t: 1 });
const error = (code: string) => ({ error: code });

/** What the engine makes of some cells as it comes, and what it makes of them mended. */
async function tried(cells: Readonly<Record<string, ICellData | string>>, at: readonly string[], mends: Mends) {
  const [before, after] = [await workedOut(cells), await workedOut(cells, mends)];
  return { asItComes: at.map(before), mended: at.map(after) };
}

describe("the cells that a formula fills, by the cell it stands in", () => {
  const mends: Mends = {
    functions: (services) => [
      spilledRange(
        parts,
        () => services.get(formula.IFormulaRuntimeService),
        () => services.get(formula.FormulaDataModel),
      ),
    ],
  };

  it("are those of the run before where that formula is not worked out again", async () => {
    const cells = { A1: "=SEQUENCE(3)", B1: number(1), C1: "=SUM(ANCHORARRAY(A1))+B1" };
    const engine = await openedEngine(cells, mends);
    await engine.type("B1", number(2));
    expect(engine.at("C1")).toBe(8);
    engine.close();
  });

  it("are those of this run", async () => {
    const cells = { A1: "=SEQUENCE(3)", C1: "=SUM(ANCHORARRAY(A1))", D1: "=ANCHORARRAY(A1)" };
    const { asItComes, mended } = await tried(cells, ["C1", "D1", "D3"], mends);
    expect(mended).toEqual([6, 1, 3]);
    expect(asItComes).toEqual([error("#NAME?"), error("#NAME?"), null]);
  });

  it("are an error where there are none, and where the room is taken", async () => {
    const cells = { A1: "=SEQUENCE(3)", A2: number(5), C1: "=SUM(ANCHORARRAY(A1))", D1: "=ANCHORARRAY(B9)" };
    expect((await tried(cells, ["C1", "D1"], mends)).mended).toEqual([error("#SPILL!"), error("#REF!")]);
  });

  it("are not to be had of the engine's own sign for them", async () => {
    const { asItComes } = await tried({ A1: "=SEQUENCE(3)", C1: "=SUM(A1#)" }, ["C1"], {});
    expect(asItComes).toEqual([error("#VALUE!")]);
  });
});

it("an array formula of the old kind is laid out over the cells it was entered in", async () => {
  const cells = { A1: "=SOUNDFOLD.FIT(SEQUENCE(2),3,2)", D1: "=SOUNDFOLD.FIT(SEQUENCE(3),1,1)" };
  const at = ["A1", "B1", "B2", "A3", "B3", "D1", "D2"];
  const { asItComes, mended } = await tried(cells, at, { functions: () => [fitToCells(parts)] });
  expect(mended).toEqual([1, 1, 2, error("#N/A"), error("#N/A"), 1, null]);
  expect(asItComes[0]).toEqual(error("#NAME?"));
});

it("SORT leaves the cells that it reads in their order", async () => {
  const cells = {
    A1: number(3),
    A2: number(1),
    A3: number(2),
    B1: "=SORT(A1:A3)",
    C1: "=SUM(A1:A3*{100;10;1})",
  };
  const { asItComes, mended } = await tried(cells, ["B1", "B2", "B3", "C1"], { functions: () => [sortOfACopy(parts)] });
  expect(mended).toEqual([1, 2, 3, 312]);
  expect(asItComes).toEqual([1, 2, 3, 123]);
});

it("MATCH of many values finds what the evaluator of whole workbooks finds", async () => {
  const cells = {
    A1: text("ewe"),
    A2: number(5),
    A3: text("Ram lamb"),
    A4: text("5"),
    B1: text("EWE"),
    B2: text("ram*"),
    B3: number(5),
    B4: number(7),
    B5: { v: 1, t: 3 },
    C1: "=MATCH(B1:B5,A1:A4,0)",
    D1: "=MATCH(B1:B2,A1:A4,0)",
    E1: '=MATCH("5",A1:A4,0)',
  };
  const at = ["C1", "C2", "C3", "C4", "C5", "D2", "E1"];
  const { asItComes, mended } = await tried(cells, at, { functions: () => [matchOfMany(parts)] });
  const none = error("#N/A");
  expect(mended).toEqual([1, 3, 2, none, none, 3, 4]);
  // Right, only slow.
  expect(asItComes).toEqual(mended);
});

it("MATCH of many values goes through its list once, where the engine does for each of them", async () => {
  const walks = async (mends: Mends): Promise<number> => {
    let count = 0;
    const { prototype } = formula.ArrayValueObject;
    const { orderSearch } = prototype;
    prototype.orderSearch = function (...given) {
      count += 1;
      return orderSearch.apply(this, given);
    };
    await workedOut({ A1: "=SEQUENCE(9)", B1: "=SUM(MATCH(SEQUENCE(9),SEQUENCE(9),0))" }, mends);
    prototype.orderSearch = orderSearch;
    return count;
  };
  expect(await walks({})).toBeGreaterThanOrEqual(9);
  expect(await walks({ functions: () => [matchOfMany(parts)] })).toBe(0);
});

it("COUNTIF and VLOOKUP of many values work each different one out once, to the same answers", async () => {
  const cells = {
    ...Object.fromEntries(["Ewes", "", "Ewes", ">1", "ewes", "E*"].map((v, row) => [`A${row + 1}`, text(v)])),
    A7: number(2),
    A8: number(2),
    A9: text("2"),
    D1: text("Ewes"),
    E1: number(11),
    D2: number(2),
    E2: number(12),
    D3: text("Lambs"),
    B1: '=COUNTIF(D1:D3,A1:A9&"")',
    C1: "=VLOOKUP(A1:A9,D1:E3,2,FALSE)",
    F1: "=COUNTIF(D1:D3,A1)",
    G1: "=VLOOKUP(A12:A13,D1:E3,2,FALSE)",
  };
  const at = [..."123456789"].flatMap((row) => [`B${row}`, `C${row}`]).concat("F1", "G1", "G2");
  const { asItComes, mended } = await tried(cells, at, { functions: () => eachValueOnce(parts) });
  expect(mended).toEqual(asItComes);
  expect(mended.slice(0, 2)).toEqual([1, 11]);
  const walks = async (mends: Mends): Promise<number> => {
    let count = 0;
    const { prototype } = formula.ArrayValueObject;
    const { pick } = prototype;
    prototype.pick = function (...given) {
      count += 1;
      return pick.apply(this, given);
    };
    await workedOut({ A1: text("a"), A2: text("b"), B1: "=COUNTIF(A1:A2,IF(SEQUENCE(8)>4,A1,A2))" }, mends);
    prototype.pick = pick;
    return count;
  };
  // Everything is worked out twice, since nothing keeps the engine from it here.
  expect([await walks({}), await walks({ functions: () => eachValueOnce(parts) })]).toEqual([16, 4]);
});

describe("a formula that fills cells looks whether they are free, and in no more than a few steps for each", () => {
  const mends: Mends = {
    services: (services) => roomForArrays(parts, services.get(formula.IFormulaRuntimeService)),
  };
  const blocked: Cell = { error: "#SPILL!" };

  it.each<readonly [string, Readonly<Record<string, ICellData | string>>, Cell]>([
    ["nothing is there", { A1: "=SEQUENCE(3)" }, 1],
    ["a number", { A1: "=SEQUENCE(3)", A3: number(0) }, blocked],
    ["a formula", { A1: "=SEQUENCE(3)", A2: "=1" }, blocked],
    ["a format alone", { A1: "=SEQUENCE(3)", A2: { s: "x" } }, 1],
    ["the cells of another", { A1: "=SEQUENCE(3)", A4: "=SEQUENCE(2)" }, 1],
  ])("%s", async (_, cells, first) => {
    for (const known of [mends, {}]) {
      const engine = await openedEngine(cells, known);
      expect(engine.at("A1")).toEqual(first);
      await engine.type("F1", number(1));
      expect(engine.at("A1")).toEqual(first);
      engine.close();
    }
  });

  it("cells that another formula fills are not free", async () => {
    for (const known of [mends, {}]) {
      const engine = await openedEngine({ A3: "=SEQUENCE(1,2)", B1: "=F1", F1: number(1) }, known);
      await engine.type("B1", "=SEQUENCE(4)");
      expect(engine.at("B1")).toEqual(blocked);
      engine.close();
    }
  });

  it("asks of each filled area once, where the engine asks for each cell", async () => {
    const columns = Object.fromEntries(
      Array.from({ length: 8 }, (_, column) => [`${String.fromCharCode(66 + column)}1`, "=SEQUENCE(60)*A1"] as const),
    );
    const asked = async (known: Mends): Promise<number> => {
      let looks = 0;
      const engine = await openedEngine(
        { A1: number(1), ...columns },
        {
          services(services) {
            known.services?.(services);
            const runtime = services.get(formula.IFormulaRuntimeService);
            const service = runtime as unknown as { _isInOtherArrayFormulaRange: (...given: never[]) => boolean };
            const own = service._isInOtherArrayFormulaRange.bind(runtime);
            service._isInOtherArrayFormulaRange = (...given) => {
              looks += 1;
              return own(...given);
            };
          },
        },
      );
      await engine.type("A1", number(2));
      engine.close();
      return looks;
    };
    expect(await asked({})).toBeGreaterThan(400);
    expect(await asked(mends)).toBe(0);
  });
});

describe("in another time zone", () => {
  const { TZ } = process.env;
  afterEach(() => {
    if (TZ === undefined) delete process.env.TZ;
    else process.env.TZ = TZ;
  });

  it("DAY, MONTH and YEAR of a text are those of its date", async () => {
    process.env.TZ = "Pacific/Auckland";
    const cells = { A1: text("2026/03/14"), A2: text("1 Mar 2026"), B1: "=DAY(A1)", B2: "=MONTH(A2)", B3: "=YEAR(A2)" };
    const { asItComes, mended } = await tried(cells, ["B1", "B2", "B3"], { functions: () => partsOfDates(parts) });
    expect(mended).toEqual([14, 3, 2026]);
    expect(asItComes).toEqual([13, error("#VALUE!"), error("#VALUE!")]);
  });
});

it("LEN of a date is that of its number, as in every spreadsheet program", async () => {
  const date = { v: dayOf("2026-03-14"), s: { n: { pattern: "d mmm yyyy" } } };
  const cells = {
    A1: date,
    A2: text("ewe"),
    B1: "=LEN(A1)",
    B2: "=LEN(A2)",
    B3: "=SUM(LEN(A1:A3))",
    B4: "=LEN(0.1+0.2)",
  };
  const asked = ["B1", "B2", "B3", "B4"];
  const { asItComes, mended } = await tried(cells, asked, { functions: () => [lengthOfNumbers(parts)] });
  expect(mended).toEqual([5, 3, 8, 3]);
  expect(asItComes).toEqual([11, 3, 14, 3]);
});

it("what formulas fill goes among what others fill without a copy of all of it", () => {
  const merged = (mend: typeof mergeInPlace | undefined) => {
    const univer = new parts.core.Univer({ logLevel: parts.core.LogLevel.SILENT });
    univer.registerPlugin(formula.UniverFormulaEnginePlugin);
    univer.createUnit(parts.core.UniverInstanceType.UNIVER_SHEET, { id: "book" });
    const model = servicesOf(univer).get(formula.FormulaDataModel);
    mend?.(model);
    const area = { startRow: 0, endRow: 2, startColumn: 0, endColumn: 0 };
    const others = { v: 9 };
    model.setArrayFormulaRange({ book: { sheet: { 0: { 0: area } } } });
    model.setArrayFormulaCellData({ book: { sheet: { 0: { 0: number(1) }, 2: { 0: number(3) }, 5: { 5: others } } } });
    model.mergeArrayFormulaCellData({ book: { sheet: new parts.core.ObjectMatrix({ 0: { 0: number(7) } }) } });
    const filled = model.getArrayFormulaCellData().book?.sheet;
    univer.dispose();
    return { filled, isCopied: filled?.[5]?.[5] !== others };
  };
  const [asItComes, mended] = [merged(undefined), merged(mergeInPlace)];
  expect(mended).toEqual({ filled: { 0: { 0: number(7) }, 5: { 5: { v: 9 } } }, isCopied: false });
  expect(asItComes.isCopied).toBe(true);
  expect(JSON.stringify(asItComes.filled).replace('"2":{},', "")).toBe(JSON.stringify(mended.filled));
});

it("TODAY and NOW are those of the clock that is handed in", async () => {
  const now = dayOf("2020-02-29") + 0.875;
  const cells = { A1: "=TODAY()", A2: "=NOW()" };
  const { asItComes, mended } = await tried(cells, ["A1", "A2"], { functions: () => todayAndNow(parts, () => now) });
  expect(mended).toEqual([dayOf("2020-02-29"), now]);
  expect(asItComes.every((day) => Number(day) > dayOf("2026-01-01"))).toBe(true);
});

it("an empty text is a text: no blank, no 0, and counted", async () => {
  const cells = { A1: '=""', B1: "=A1=0", B2: "=COUNTA(A1)", B3: "=ISBLANK(A1)", B4: "=A2=0", B5: "=COUNTA(A2)" };
  const mends: Mends = { services: (services) => keepEmptyTexts(services.get(formula.IFormulaRuntimeService)) };
  const at = ["B1", "B2", "B3", "B4", "B5"];
  const asItComes = await workedOut({ ...cells, A2: text("") });
  const mended = await workedOut({ ...cells, A2: withEmptyText(text("")) }, mends);
  expect(at.map(mended)).toEqual([false, 1, false, false, 1]);
  expect(at.map(asItComes)).toEqual([true, 0, true, true, 0]);
});

describe("the reader of formulas", () => {
  const tree = (reader: InstanceType<typeof formula.LexerTreeBuilder>, written: string): string => {
    const read = reader.treeBuilder(written);
    return typeof read === "object" && "serialize" in read ? JSON.stringify(read.serialize()) : String(read);
  };

  it("reads each formula anew after one that was half typed", () => {
    const read = (mend: (reader: InstanceType<typeof formula.LexerTreeBuilder>) => void, written: string) => {
      const reader = new formula.LexerTreeBuilder();
      mend(reader);
      expect(tree(reader, "=SUM(Gathers[")).toBe("#VALUE!");
      return tree(reader, written);
    };
    const right = tree(new formula.LexerTreeBuilder(), "=SUM(A1:A2,{1,2})");
    // It keeps what it has read by the formula's text.
    expect(read(mendReader, "=SUM(A1:A2,{1,3})")).toBe(right.replace("{1,2}", "{1,3}"));
    expect(read(() => undefined, "=SUM(A1:A2,{1,4})")).not.toBe(right.replace("{1,2}", "{1,4}"));
    // A bracket before a name opens no table.
    const other = tree(new formula.LexerTreeBuilder(), "=[Hill]Flock!A1+1");
    expect(read(mendReader, "=[Dale]Flock!A1+1")).toBe(other.replace("Hill", "Dale"));
  });

  it("reads names of values anew in a second workbook", async () => {
    const cells = {
      A1: number(5),
      B1: "=LET(x,1,x+1)",
      B2: "=LET(x,A1,y,x+1,x*y)",
      B3: "=LAMBDA(a,b,a*b)(2,A1)",
    };
    const answers = async (known: Mends): Promise<readonly Cell[]> => {
      // Another workbook of the page is still there when the second is worked out.
      await workedOut({ ...cells, C1: "=1" }, known);
      const second = await workedOut(cells, known);
      return ["B1", "B2", "B3"].map(second);
    };
    const kept: Mends = { stays: true };
    const mended = await answers({
      ...kept,
      services: (services) => mendReader(services.get(formula.LexerTreeBuilder)),
    });
    expect(mended).toEqual([2, 30, 10]);
    expect(await answers(kept)).toEqual([1, error("#VALUE!"), error("#VALUE!")]);
  });
});

it("an argument's cells hold what was typed, whatever else it could be read as", async () => {
  const heard: unknown[] = [];
  class Heard extends formula.BaseFunction {
    override needsReferenceObject = true;

    override calculate(given: Parameters<typeof argumentCells>[0]) {
      const engines = given.isReferenceObject()
        ? (given as { toArrayValueObject: () => object }).toArrayValueObject()
        : given;
      heard.push(argumentCells(given), argumentCells(engines as Parameters<typeof argumentCells>[0]));
      return formula.NumberValueObject.create(1);
    }
  }
  const cells = {
    A1: { v: "12" },
    A2: { v: "5%" },
    A3: { v: 1, t: 3 },
    A4: { v: "#N/A" },
    A6: text(""),
    C1: "=HEARD(A1:A6)",
  };
  await workedOut(cells, { functions: () => [[Heard, "HEARD"]] });
  expect(heard).toEqual([
    [["12"], ["5%"], [true], [error("#N/A")], [null], [""]],
    [[12], [0.05], [true], [error("#N/A")], [null], [null]],
  ]);
});

// What follows changes the engine's classes for good: nothing is to be tried as it comes after it.

describe("in classes that all workbooks share", () => {
  it("comparisons look at each cell, whatever was compared before", async () => {
    const cells = {
      A1: number(0),
      A3: text("5"),
      B1: '=SUM(IF(A1:A3="",1,0))',
      B2: "=SUM(IF(A1:A3=5,1,0))",
      C1: '=IF(A1="","blank","filled")',
      C2: '=IF(A2="","blank","filled")',
      C3: "=IF(A3=5,1,2)",
    };
    const at = ["B1", "B2", "C1", "C2", "C3"];
    const asItComes = await workedOut(cells);
    expect(at.map(asItComes)).toEqual([1, 1, "blank", "blank", 1]);
    compareEachCell(parts);
    const mended = await workedOut(cells);
    expect(at.map(mended)).toEqual([1, 0, "filled", "blank", 2]);
  });

  it("a text that is two days is reckoned with in no formula", async () => {
    const cells = {
      A1: text("03/04/2026"),
      A2: number(dayOf("2026-03-01")),
      A3: number(dayOf("2026-03-11")),
      B1: "=A1+28",
      B2: '="03/04/2026"+28',
      B3: "=DATEVALUE(A1)",
      B4: '=TEXT(A1,"yyyy-mm-dd")',
      B5: '=COUNTIF(A2:A3,">=01/03/2026")',
      B6: '=SUMIFS(A2:A3,A2:A3,"<=3/1/2026")',
      // A cell that says not what it holds, as one that was pasted, and a text in an array.
      A4: { v: "03/04/2026" },
      B7: "=A4+28",
      B8: "=ISTEXT(A4)",
      B9: '=ISTEXT(INDEX({"03/04/2026",1},1,1))',
    };
    const at = ["B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8", "B9"];
    const asItComes = await workedOut(cells);
    const march = dayOf("2026-03-04");
    expect(at.map(asItComes)).toEqual([
      march + 28,
      march + 28,
      march,
      "2026-03-04",
      2,
      dayOf("2026-03-01"),
      march + 28,
      false,
      false,
    ]);
    refuseUnclearDates(parts);
    const mended = await workedOut(cells);
    expect(at.map(mended)).toEqual([...at.slice(0, 7).map(() => error("#VALUE!")), true, true]);
  });
});
