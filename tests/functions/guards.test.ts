import { describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { type Cell, showCell } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import { Problem } from "../../src/cells/problem.ts";
import type { AnyFunction, Example } from "../../src/definition/defineFunction.ts";
import { evaluate, type Outcome } from "../../src/definition/evaluate.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { anyCell, asHandedOver } from "../../src/reading/words.ts";
import { asArgument } from "./exampleCall.ts";

// What must hold for every function whatever it computes: docs/safety.md names these tests beside the functions they guard.

const named = (name: string): AnyFunction => {
  const found = catalogue.find((definition) => definition.name === name);
  if (!found) throw new Error(`there is no function ${name}`);
  return found;
};
const call = (name: string, ...given: Argument[]): Outcome => evaluate(named(name), given);
const down = (...cells: Cell[]): Cell[][] => cells.map((cell) => [cell]);

/** A function with the arguments of one of its examples that is answered. */
interface SoundCall {
  readonly definition: AnyFunction;
  readonly given: readonly Argument[];
}

/** A place in a sound call where one cell stands. */
interface Place extends SoundCall {
  readonly argument: string;
  readonly parameter: Parameter<unknown>;
  /** The same call with another cell at the place. */
  readonly holding: (cell: Cell) => Outcome;
}

/** Whether an example shows what becomes of a bad record: then another cell of it is bad already. */
const tellsOfFaults = ({ shows, gives }: Example): boolean =>
  /, row \d+|left out|; enter |is a number of|cannot be read/.test(JSON.stringify([shows, gives]));

const soundCalls: readonly SoundCall[] = catalogue.flatMap((definition) =>
  definition.examples
    .filter((example: Example) => !(example.gives instanceof Problem) && !tellsOfFaults(example))
    .map(({ call }: Example) => ({ definition, given: call.map(asArgument) })),
);

/** Every filled cell of every example that is answered, by the parameter that reads it. */
const places: readonly Place[] = soundCalls.flatMap(({ definition, given }) => {
  const parameters: [string, Parameter<unknown>][] = Object.entries(definition.parameters);
  return given.flatMap((argument, at): Place[] => {
    const [name, parameter] = parameters[at] as [string, Parameter<unknown>];
    const holding = (changed: Argument) =>
      evaluate(definition, [...given.slice(0, at), changed, ...given.slice(at + 1)]);
    const place = { definition, given, argument: name, parameter };
    if (!Array.isArray(argument))
      return argument === undefined || argument === null ? [] : [{ ...place, holding: (cell) => holding(cell) }];
    const rows = argument as Cell[][];
    return rows.flatMap((row, r) =>
      row.flatMap((filled, c) =>
        filled === null || filled === "" || (filled === 0 && parameter.kind.isBlank(0))
          ? []
          : [
              {
                ...place,
                holding: (cell: Cell) =>
                  holding(rows.map((line, y) => line.map((was, x) => (y === r && x === c ? cell : was)))),
              },
            ],
      ),
    );
  });
});

/** Functions that report on the cells themselves take any cell. */
const readsAnything = ({ parameter }: Place): boolean =>
  parameter.kind === asHandedOver || parameter.kind === anyCell || parameter.shape === "block";
const read = places.filter((place) => !readsAnything(place));
const byFunction = (chosen: readonly Place[]) =>
  [...new Set(chosen.map(({ definition }) => definition.name))].map(
    (name) => [name, chosen.filter(({ definition }) => definition.name === name)] as const,
  );

/**
 * The cell is not taken for a value: the call is refused with argument and row; or, where a bad record costs only itself,
 * the answer is that with an error in its place, which nothing can take for a value, in all but the words about the cell.
 */
function refuses(place: Place, cell: Cell): void {
  const outcome = place.holding(cell);
  if (!outcome.ok) expect([cell, outcome.message]).toEqual([cell, namedBy(place)]);
  else {
    expect(place.parameter.faults).not.toBe("refuse");
    const error: Cell = { error: "#NAME?" };
    expect([cell, withoutWords(outcome, cell)]).toEqual([cell, withoutWords(place.holding(error), error)]);
  }
}

const namedBy = ({ argument }: Place) => expect.stringMatching(new RegExp(`(^|: )${argument}(, row \\d+)?: `));

const withoutWords = (outcome: Outcome, about: Cell): unknown =>
  outcome.ok && outcome.cells.map((row) => row.map((cell) => (String(cell).includes(showCell(about)) ? "…" : cell)));

/** As `refuses`, but the answer must tell of the cell: it is one that is counted. */
function tellsOf(place: Place, cell: Cell): void {
  const outcome = place.holding(cell);
  const said = outcome.ok ? outcome.cells.flat() : [outcome.message];
  expect([cell, said]).toEqual([cell, expect.arrayContaining([namedBy(place)])]);
}

describe("a date that is not certain", () => {
  const dates = read.filter(({ parameter }) => parameter.kind.holds === "date");

  it.each(byFunction(dates))("%s takes no text for another day", (_, chosen) => {
    for (const place of chosen)
      for (const text of ["03/04/2026", "3.4.26", "2026-02-30", "46095", "10 Feb", "2026-3-14"]) refuses(place, text);
  });

  it.each(byFunction(dates))("%s takes no number for a day outside 1990 to 2100", (_, chosen) => {
    for (const place of chosen)
      for (const serial of [32_873, 73_416, 260_314, 20_260_314, -46_095]) refuses(place, serial);
  });
});

describe("a cell that holds an error", () => {
  it.each(byFunction(read))("%s is not passed over, but named", (_, chosen) => {
    for (const place of chosen) refuses(place, { error: "#N/A" });
  });
});

describe("withdrawal days that are not certain", () => {
  const days = read.filter(({ argument, parameter }) => argument === "withdrawal_days" && parameter.kind === wholeDays);

  it.each(byFunction(days))("%s takes no unit, no part of a day and nothing below 0", (_, chosen) => {
    for (const place of chosen) for (const cell of ["28d", "4 weeks", "28,5", 28.5, -1, true]) refuses(place, cell);
  });

  it("are never read as 0, whether blank, white space or left out", () => {
    const treated = dayOf("2026-02-10");
    for (const missing of [null, "", "  "]) {
      expect(call("CLEARDATE", treated, missing)).toMatchObject({ ok: false, code: "#VALUE!" });
      expect(call("CLEARDATE", down(treated, treated), down(28, missing))).toMatchObject({
        cells: [[dayOf("2026-03-11")], ["no withdrawal days"]],
      });
      expect(call("ANIMALCLEAR", "041", down("041"), down(treated), down(missing))).toMatchObject({ ok: false });
      const sale = call("SALECHECK", down("041"), treated + 900, down("041"), down(treated), down(missing));
      expect(sale.ok && sale.cells[1]?.slice(0, 2)).toEqual(["041", "hold"]);
      const waiting = call("NOTCLEAR", treated + 900, down("041"), down(treated), down(missing));
      expect(waiting.ok && waiting.cells[1]?.slice(0, 2)).toEqual(["041", "not known"]);
    }
    expect(call("CLEARDATE", treated)).toMatchObject({ ok: false, code: "#VALUE!" });
  });
});

describe("a blank among counts and scores", () => {
  const counted = read.filter(({ argument, parameter, given }) => {
    const sheep = parameter.kind.holds === "number" && /^(lame|seen|new_cases|heads)(_|$)/.test(argument);
    return sheep && parameter.shape === "column" && given.some((one) => Array.isArray(one) && one.length > 1);
  });

  it.each(byFunction(counted))("%s is refused beside a count, never counted as 0", (_, chosen) => {
    for (const place of chosen) {
      tellsOf(place, null);
      tellsOf(place, " ");
    }
  });

  it("is a sheep not scored, never a sound one", () => {
    const scored = call("SCOREPREV", down(3, 0, 2, 1), 2);
    expect(scored.ok && scored.cells).toEqual([[0.5]]);
    for (const blank of [null, "", " "])
      expect(call("SCOREPREV", down(3, blank, 0, 2, blank, 1, blank), 2)).toEqual(scored);
  });
});

describe("a text of another hand", () => {
  const starters = ["=1+1", "+1", "-1", "@SUM(A1)", '=HYPERLINK("https://example.org","x")', "\t=1", "\r=1"];
  const groups = ["PREVBY", "FUNNEL", "SHRUNKPREV"];

  it.each(groups)("never starts a formula in what %s writes", (name) => {
    for (const start of starters) {
      const outcome = call(name, down(start, "b"), down(2, 3), down(20, 30));
      if (!outcome.ok) throw new Error(outcome.message);
      for (const cell of outcome.cells.flat()) if (typeof cell === "string") expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    }
  });
});

describe("records of one animal under two spellings", () => {
  const spellings = ["ZZ 0 123456 00042", "999012345600042", 999012345600042, "zz-012345600042", "0999012345600042"];

  it("hold it back, whichever spelling the sale list has", () => {
    const treated = dayOf("2026-02-10");
    for (const recorded of spellings)
      for (const sold of spellings) {
        const clear = call("ANIMALCLEAR", sold, down(recorded), down(treated), down(28));
        expect(clear).toMatchObject({ ok: true, cells: [[dayOf("2026-03-11")]] });
        const sale = call("SALECHECK", down(sold), treated + 28, down(recorded), down(treated), down(28));
        expect(sale.ok && sale.cells[1]?.[1]).toBe("hold");
      }
  });

  it("hold every animal they may be when the sheet has lost digits of the number", () => {
    for (const spoiled of [1e15, "9.99012E+14"]) {
      const lost = expect.stringMatching(/digits/);
      expect(call("ANIMALCLEAR", spoiled, down("1"), down(46_063), down(28))).toMatchObject({
        ok: false,
        message: lost,
      });
      const sold = call("SALECHECK", down(spoiled), 46_900, down("1"), down(46_063), down(28));
      expect(sold.ok && sold.cells[1]).toEqual(["not known", "hold", lost, ""]);
      const treated = call("SALECHECK", down("1"), 46_091, down(spoiled), down(46_063), down(28));
      expect(treated.ok && treated.cells[1]).toEqual(["1", "hold", lost, ""]);
      const listed = call("NOTCLEAR", 46_091, down(spoiled), down(46_063), down(28));
      expect(listed.ok && listed.cells[1]).toEqual(["every animal", 46_092, 1, lost]);
      // 46063 + 28 + 1: over, and so it holds nobody.
      const over = call("SALECHECK", down("1"), 46_092, down(spoiled), down(46_063), down(28));
      expect(over.ok && over.cells[1]?.[1]).toBe("no treatment recorded");
    }
  });
});

describe("a sheep that is not clear", () => {
  const treated = dayOf("2026-02-10");

  it("is held by ANIMALCLEAR, SALECHECK and NOTCLEAR alike, on each day of a year", () => {
    const [tags, dates, days] = [
      down("1", "2", "1", "3"),
      down(treated, treated + 3, treated - 9, treated),
      down(28, 0, 41, null),
    ];
    for (let day = treated - 20; day < treated + 345; day++) {
      const sale = call("SALECHECK", down("1", "2", "3"), day, tags, dates, days);
      const listed = call("NOTCLEAR", day, tags, dates, days);
      if (!sale.ok || !listed.ok) throw new Error("not answered");
      const held = sale.cells.slice(1).filter(([, answer]) => answer === "hold");
      const waiting = listed.cells.slice(1).map(([tag]) => tag);
      expect(held.map(([tag]) => tag).sort()).toEqual(waiting.sort());
      expect(waiting).toContain("3");
      // 1: 10 Feb + 28 + 1 and 1 Feb + 41 + 1 → the later, 15 Mar 2026.
      expect(waiting.includes("1")).toBe(day < dayOf("2026-03-15"));
    }
    expect(call("ANIMALCLEAR", "1", tags, dates, days)).toMatchObject({ cells: [[dayOf("2026-03-15")]] });
  });
});

describe("treatments of one animal", () => {
  const treated = dayOf("2026-02-10");
  const [tags, dates, days] = [down("1", "1", "1"), down(treated, treated, treated + 20), down(28, 7, 28)];

  it("run on: of two medicines the later date stands, and a further treatment starts its own period", () => {
    const two = [down("1", "1"), down(treated, treated), down(28, 7)] as const;
    expect(call("ANIMALCLEAR", "1", ...two)).toMatchObject({ cells: [[treated + 29]] });
    expect(call("ANIMALCLEAR", "1", tags, dates, days)).toMatchObject({ cells: [[treated + 49]] });
    const sale = call("SALECHECK", down("1"), treated + 48, tags, dates, days);
    expect(sale.ok && sale.cells[1]?.slice(1)).toEqual(["hold", treated + 49, 1]);
  });

  it("hold it even when they are dated after the day asked for", () => {
    const [sale, listed] = [
      call("SALECHECK", down("1"), treated - 30, tags, dates, days),
      call("NOTCLEAR", treated - 30, tags, dates, days),
    ];
    expect(sale.ok && sale.cells[1]?.slice(0, 2)).toEqual(["1", "hold"]);
    expect(listed.ok && listed.cells[1]?.slice(0, 2)).toEqual(["1", treated + 49]);
  });

  it("that are found under no tag never make it clear", () => {
    const sale = call("SALECHECK", down("2", "1x", "01"), treated + 900, tags, dates, days);
    expect(sale.ok && sale.cells.slice(1).map(([, answer]) => answer)).toEqual(Array(3).fill("no treatment recorded"));
    expect(sale.ok && sale.cells[3]?.[2]).toBe("it may be 1, row 3, clear since 31 Mar 2026");
  });
});

describe("one bad record", () => {
  const treated = dayOf("2026-02-10");
  const bad: readonly [string, Cell][] = [
    ["a date as text", "10/2/26"],
    ["an error", { error: "#REF!" }],
    ["a blank", null],
  ];

  it.each(bad)("%s among the dates leaves every other animal its answer", (_, cell) => {
    const [tags, dates, days] = [down("1", "2", "3"), down(treated, cell, treated), down(28, 28, 5)];
    const clear = call("CLEARDATE", dates, days);
    expect(clear.ok && clear.cells).toEqual([[treated + 29], [expect.any(String)], [treated + 6]]);
    const sale = call("SALECHECK", down("1", "2", "3", "4"), treated + 10, tags, dates, days);
    expect(sale.ok && sale.cells.slice(1).map(([, answer]) => answer)).toEqual([
      "hold",
      "hold",
      "clear",
      "no treatment recorded",
    ]);
    const listed = call("NOTCLEAR", treated + 10, tags, dates, days);
    expect(listed.ok && listed.cells.slice(1).map(([tag]) => tag)).toEqual(["2", "1"]);
    expect(call("ANIMALCLEAR", "3", tags, dates, days)).toMatchObject({ cells: [[treated + 6]] });
    expect(call("ANIMALCLEAR", "2", tags, dates, days)).toMatchObject({ ok: false });
    const apart = call("KEEPAPART", treated + 10, tags, dates, "lame");
    expect(apart.ok && apart.cells.slice(1).map(([tag]) => tag)).toEqual(["2", "1", "3"]);
    const due = call("DUELIST", treated + 10, tags, down(treated + 7, cell ?? "soon", treated + 12));
    expect(due.ok && due.cells.slice(1).map(([tag]) => tag)).toEqual(["2", "1", "3"]);
  });

  it.each(bad.slice(1))("%s among the tags holds every animal until its own period is over", (_, cell) => {
    const [tags, dates, days] = [down("1", cell, "3"), down(treated, treated, treated), down(0, 28, 5)];
    const on = (day: number) => {
      const sale = call("SALECHECK", down("1", "3", "4"), day, tags, dates, days);
      return sale.ok && sale.cells.slice(1).map(([, answer]) => answer);
    };
    expect(on(treated + 28)).toEqual(["hold", "hold", "hold"]);
    expect(on(treated + 29)).toEqual(["clear", "clear", "no treatment recorded"]);
    const apart = call("KEEPAPART", treated + 10, tags, dates, "lame");
    expect(apart.ok && apart.cells.slice(1).map(([tag]) => tag)).toEqual(["any animal", "1", "3"]);
  });

  it("is told of where records are counted, with how many and the first", () => {
    const lag = call("TREATLAG", down(treated, "10/2/26", treated, null), down(treated, treated, treated + 1, treated));
    expect(lag.ok && lag.cells).toEqual([[0.5, 1, 0, expect.stringMatching(/^2 rows left out; .*seen_lame, row 2: /)]]);
    const alone = call("TREATLAG", down("10/2/26"), down(treated));
    expect(alone).toMatchObject({ ok: false, message: expect.stringMatching(/^seen_lame: /) });
  });
});

describe("a weight", () => {
  it("that says its unit, or that no sheep has, is refused: BATCHML gives no total, DOSEML no dose to that animal", () => {
    for (const weight of ["154 lb", "70 kg", "11 st", 330, 0.07]) {
      expect(call("BATCHML", down(70, weight), 20, 200)).toMatchObject({
        ok: false,
        message: expect.stringMatching(/^weights_kg, row 2: .* kg/),
      });
      expect(call("DOSEML", down(70, weight), 20, 200)).toMatchObject({
        ok: true,
        cells: [[7], [expect.stringMatching(/ kg/)]],
      });
      expect(call("DOSEML", weight, 20, 200)).toMatchObject({
        ok: false,
        message: expect.stringMatching(/^weight_kg: .* kg/),
      });
    }
  });
});

describe("a table", () => {
  it.each(["NOTCLEAR", "DUELIST", "KEEPAPART", "REPEATS"])("of %s with nothing in it says so in words", (name) => {
    const nothing: Record<string, Argument[]> = {
      NOTCLEAR: [46_100, down(null), down(null), down(null)],
      DUELIST: [46_100, down(null), down(null)],
      KEEPAPART: [46_100, down(null), down(null), down(null)],
      REPEATS: [down(null), down(null)],
    };
    const outcome = call(name, ...(nothing[name] as Argument[]));
    expect(outcome.ok && outcome.cells).toHaveLength(2);
    expect(outcome.ok && String(outcome.cells[1]?.[0])).toMatch(/\w+ \w+/);
  });
});
