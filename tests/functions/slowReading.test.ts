import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caseTableFunction } from "../../functions/animals/caseTable.ts";
import { repeatAnimalsFunction } from "../../functions/animals/repeatAnimals.ts";
import { funnelFunction } from "../../functions/benchmarking/funnel.ts";
import { prevalenceByGroupFunction } from "../../functions/counting/prevalenceByGroup.ts";
import { saleCheckFunction } from "../../functions/dates/saleCheck.ts";
import type { Cell, Cells } from "../../src/cells/cell.ts";
import { dayOf, isoText, showDay } from "../../src/cells/day.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";

// The functions go through long columns in ways that are quick. Here the same rules are followed slowly, as their pages
// say them, over cells as people type them; what each cell means is written beside it, and read by nothing of ours.

/** A cell and what it means; no meaning where nobody can tell. */
interface Typed<M> {
  readonly cell: Cell;
  readonly means: M | undefined;
}

const typed = <M>(means: M | undefined, ...cells: readonly Cell[]): readonly Typed<M>[] =>
  cells.map((cell) => ({ cell, means }));

const tags: readonly Typed<string>[] = [
  ...typed("small", "042", " 042 "),
  ...typed("blue", "blue-7", "BLUE 7", "Blue7"),
  ...typed("full", "ZZ 0 123456 00007", "zz0 123456 00007", "999012345600007", 999_012_345_600_007),
  ...typed("other", "ZZ 0 123456 00008", "0999012345600008"),
];
const noTags: readonly Typed<string>[] = typed<string>(undefined, null, "", "?", "ditto", true, {
  error: "#N/A",
} as const);

const first = dayOf("2026-01-05");
const anyDay = fc.integer({ min: 0, max: 60 }).map((days) => first + days);
const dates: fc.Arbitrary<Typed<number>> = fc.oneof(
  { arbitrary: anyDay.map((day) => ({ cell: day, means: day })), weight: 4 },
  anyDay.map((day) => ({ cell: isoText(day), means: day })),
  anyDay.map((day) => ({ cell: ` ${showDay(day)} `, means: day })),
  fc.constantFrom(...typed<number>(undefined, null, "12/3", "soon", false, 12)),
);
const tag = fc.oneof({ arbitrary: fc.constantFrom(...tags), weight: 6 }, fc.constantFrom(...noTags));

const isBlank = (cell: Cell): boolean => cell === null || (typeof cell === "string" && cell.trim() === "");

/** A row of the sheet, and its cells' meanings. */
interface Row<R> {
  readonly row: number;
  readonly is: R;
}

/** Rows that hold a record, counted as the sheet does. */
const filled = <R extends Readonly<Record<string, Typed<unknown>>>>(rows: readonly R[]): readonly Row<R>[] =>
  rows.map((is, at) => ({ row: at + 1, is })).filter(({ is }) => !Object.values(is).every(({ cell }) => isBlank(cell)));

const down = <R extends Readonly<Record<string, Typed<unknown>>>>(rows: readonly R[], name: keyof R): Cells =>
  rows.map((is) => [(is[name] as Typed<unknown>).cell]);

function tableOf(definition: AnyFunction, ...given: readonly Argument[]): readonly (readonly Cell[])[] {
  const outcome = evaluate(definition, given);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.cells.slice(1);
}

const shown = ({ cell }: Typed<unknown>): string => String(cell).trim();

type Treated = { readonly tag: Typed<string>; readonly date: Typed<number> };
const records = fc.array(fc.record<Treated>({ tag, date: dates }), { minLength: 1, maxLength: 30 });

interface SlowAnimal {
  readonly animal: string;
  readonly shown: string;
  readonly cases: readonly (readonly number[])[];
}

const isSure = ({ is }: Row<Treated>): boolean => is.tag.means !== undefined && is.date.means !== undefined;

/** Animals in order of their first record, each with the days of its cases: a record within the gap of the one before joins. */
function slowCases(rows: readonly Row<Treated>[], gap: number): readonly SlowAnimal[] {
  const sure = rows.filter(isSure);
  return [...new Set(sure.map(({ is }) => is.tag.means))].map((animal) => {
    const own = sure.filter(({ is }) => is.tag.means === animal);
    const days = own.map(({ is }) => is.date.means as number).sort((one, other) => one - other);
    const cases: number[][] = [];
    for (const day of days) {
      const open = cases.at(-1);
      if (open !== undefined && day - (open.at(-1) as number) <= gap) open.push(day);
      else cases.push([day]);
    }
    return { animal: animal as string, shown: shown((own[0] as Row<Treated>).is.tag), cases };
  });
}

const inRow = (row: number) => expect.stringMatching(new RegExp(`, row ${row}: `));

describe("cases of long columns", () => {
  it("are those that a slow reading finds, after a line for each record that cannot be read", () => {
    fc.assert(
      fc.property(records, fc.integer({ min: 0, max: 20 }), (given, gap) => {
        const rows = filled(given);
        const doubted = rows
          .filter((row) => !isSure(row))
          .map(({ row, is }) => [is.tag.means ? shown(is.tag) : "not known", "not known", inRow(row), "", "", ""]);
        const lines = slowCases(rows, gap).flatMap(({ shown, cases }) =>
          cases.map((days, at) => [shown, at + 1, days[0], days.at(-1), days.length, ""]),
        );
        const expected = [...doubted, ...lines];
        expect(tableOf(caseTableFunction, down(given, "tag"), down(given, "date"), gap)).toEqual(
          expected.length > 0 ? expected : [["no records", "", "", "", "", ""]],
        );
      }),
      { numRuns: 500 },
    );
  });

  it("are counted for each animal, and not known where a record of it cannot be read", () => {
    fc.assert(
      fc.property(records, fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 3 }), (given, gap, atLeast) => {
        const rows = filled(given);
        const unsure = rows.filter((row) => !isSure(row));
        const untagged = unsure.filter(({ is }) => is.tag.means === undefined);
        const notKnown = (name: string, [topmost]: readonly Row<Treated>[]) => [
          name,
          "not known",
          inRow(topmost?.row ?? 0),
          "",
        ];
        const animals = slowCases(rows, gap);
        const ofAnimal = (animal: string | undefined) =>
          unsure.filter(({ is }) => animal !== undefined && is.tag.means === animal);
        const inDoubt = animals.filter(({ animal }) => ofAnimal(animal).length > 0);
        const never = [...new Set(unsure.map(({ is }) => is.tag.means))].filter(
          (animal) => animal !== undefined && !animals.some((met) => met.animal === animal),
        );
        const listed = animals
          .filter(({ animal, cases }) => ofAnimal(animal).length === 0 && cases.length >= atLeast)
          .map(({ shown, cases }) => [shown, cases.length, cases[0]?.[0], cases.at(-1)?.at(-1)] as const)
          .sort((one, other) => other[1] - one[1] || (other[3] as number) - (one[3] as number));
        const expected = [
          ...(untagged.length > 0 ? [notKnown("any animal", untagged)] : []),
          ...inDoubt
            .filter(({ animal, cases }) => cases.length + ofAnimal(animal).length >= atLeast)
            .map((one) => notKnown(one.shown, ofAnimal(one.animal))),
          ...never
            .filter((animal) => ofAnimal(animal).length >= atLeast)
            .map((animal) => notKnown(shown((ofAnimal(animal)[0] as Row<Treated>).is.tag), ofAnimal(animal))),
          ...listed,
        ];
        expect(tableOf(repeatAnimalsFunction, down(given, "tag"), down(given, "date"), atLeast, gap)).toEqual(
          expected.length > 0 ? expected : [["no animal has so many cases", "", "", ""]],
        );
      }),
      { numRuns: 500 },
    );
  });
});

type Dosed = Treated & { readonly days: Typed<number> };
const withdrawal: fc.Arbitrary<Typed<number>> = fc.oneof(
  { arbitrary: fc.constantFrom(...typed(0, 0, "0"), ...typed(5, 5, " 5 "), ...typed(28, 28, "28")), weight: 5 },
  fc.constantFrom(...typed<number>(undefined, null, "about 28", 2.5, -1)),
);

describe("a sale list against long columns", () => {
  it("is answered as a slow reading answers it", () => {
    const treatments = fc.array(fc.record<Dosed>({ tag, date: dates, days: withdrawal }), { maxLength: 12 });
    // Few are without a tag, or every animal would be held by them.
    const mostlyTagged = treatments.map((rows) =>
      rows.filter(({ tag }, at) => tag.means !== undefined || at % 4 === 0),
    );
    const saleTags = fc.array(fc.constantFrom(...tags), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(saleTags, fc.integer({ min: 0, max: 70 }), mostlyTagged, (sale, after, given) => {
        const saleDay = first + after;
        const done = filled(given)
          // Neither a date nor days: no treatment; a 0 without a date may be a blank.
          .filter(({ is }) => !isBlank(is.date.cell) || (!isBlank(is.days.cell) && is.days.means !== 0));
        // The day after the last of its days; with 0 days the day itself. Undefined where it cannot be known.
        const clearOf = ({ is }: Row<Dosed>): number | undefined => {
          const [date, days] = [is.date.means, is.days.means];
          return date === undefined || days === undefined ? undefined : date + days + (days === 0 ? 0 : 1);
        };
        const holds = (one: Row<Dosed>): boolean => (clearOf(one) ?? Number.POSITIVE_INFINITY) > saleDay;
        const anybody = done.filter(({ is }) => is.tag.means === undefined);
        const expected = sale.map((animal) => {
          const own = done.filter(({ is }) => is.tag.means === animal.means);
          const ends = own.map(clearOf);
          const last = ends.includes(undefined) ? undefined : Math.max(...(ends as number[]));
          if (anybody.some(holds)) return [shown(animal), "hold", expect.anything(), expect.anything()];
          if (own.length === 0) return [shown(animal), "no treatment recorded", "", ""];
          if (last === undefined) return [shown(animal), "hold", expect.stringContaining("row "), ""];
          return [shown(animal), last > saleDay ? "hold" : "clear", last, Math.max(0, last - saleDay)];
        });
        expect(
          tableOf(
            saleCheckFunction,
            sale.map(({ cell }) => [cell]),
            saleDay,
            down(given, "tag"),
            down(given, "date"),
            down(given, "days"),
          ),
        ).toEqual(expected);
      }),
      { numRuns: 500 },
    );
  });
});

type Counted = { readonly name: Typed<string>; readonly lame: Typed<number>; readonly seen: Typed<number> };
const names = [
  ...typed("Ewes", "Ewes", "ewes ", " EWES"),
  ...typed("Low Field", "Low  field", "low field"),
  ...typed("7", 7, "7"),
];
const count = (most: number): fc.Arbitrary<Typed<number>> =>
  fc
    .integer({ min: 0, max: most })
    .chain((sheep) => fc.constantFrom(...typed(sheep, sheep, String(sheep), ` ${sheep}.0 `)));
const soundCounts = fc.record<Counted>({ name: fc.constantFrom(...names), lame: count(20), seen: count(60) });
const anyCounts = fc.oneof(
  { arbitrary: soundCounts, weight: 6 },
  fc.record<Counted>({
    name: fc.constantFrom(...names, ...typed<string>(undefined, null, " ", { error: "#REF!" } as const)),
    lame: fc.oneof(count(20), fc.constantFrom(...typed<number>(undefined, "3,5", 2.5, -1, null))),
    seen: fc.oneof(count(60), fc.constantFrom(...typed<number>(undefined, "many", true, ""))),
  }),
  fc.constant<Counted>({
    name: { cell: null, means: undefined },
    lame: { cell: "", means: undefined },
    seen: { cell: " ", means: undefined },
  }),
);
const counts = fc.array(anyCounts, { minLength: 1, maxLength: 25 });

const isUsable = ({ is: { name, lame, seen } }: Row<Counted>): boolean =>
  name.means !== undefined && lame.means !== undefined && seen.means !== undefined && lame.means <= seen.means;

const sum = (rows: readonly Row<Counted>[], of: "lame" | "seen"): number =>
  rows.reduce((all, { is }) => all + (is[of].means as number), 0);

/** The rows of each name, in order of its first. */
const parted = (rows: readonly Row<Counted>[]): readonly (readonly Row<Counted>[])[] =>
  [...new Set(rows.map(({ is }) => is.name.means))].map((name) => rows.filter(({ is }) => is.name.means === name));

const written = ([topmost]: readonly Row<Counted>[]): string =>
  shown((topmost as Row<Counted>).is.name).replace(/ +/g, " ");

describe("counts of long columns", () => {
  it("are added up for each group by a slow reading too, without the rows that cannot be used", () => {
    fc.assert(
      fc.property(counts, (given) => {
        const rows = filled(given);
        const usable = rows.filter(isUsable);
        fc.pre(sum(usable, "seen") > 0);
        const line = (name: string, own: readonly Row<Counted>[]) => {
          const [lame, seen] = [sum(own, "lame"), sum(own, "seen")];
          const range = seen === 0 ? ["", "", ""] : [lame / seen, expect.any(Number), expect.any(Number)];
          return [name, lame, seen, ...range];
        };
        const left = rows.length - usable.length;
        const topmost = rows.find((row) => !isUsable(row));
        expect(
          tableOf(prevalenceByGroupFunction, down(given, "name"), down(given, "lame"), down(given, "seen")),
        ).toEqual([
          ...parted(usable).map((own) => line(written(own), own)),
          line("all", usable),
          ...(left === 0
            ? []
            : [
                [
                  expect.stringMatching(new RegExp(`^${left} rows? left out; .*row ${topmost?.row}: `)),
                  "",
                  "",
                  "",
                  "",
                  "",
                ],
              ]),
        ]);
      }),
      { numRuns: 500 },
    );
  });

  it("of flocks are refused for a row that cannot be used, and else are those of a slow reading", () => {
    fc.assert(
      fc.property(fc.oneof(counts, fc.array(soundCounts, { minLength: 1, maxLength: 25 })), (given) => {
        const rows = filled(given);
        fc.pre(rows.length > 1);
        const outcome = evaluate(funnelFunction, [down(given, "name"), down(given, "lame"), down(given, "seen"), 0.05]);
        const unusable = rows.filter((row) => !isUsable(row));
        if (unusable.length > 0) {
          const [, row] = (!outcome.ok && /, row (\d+): /.exec(outcome.message)) || [];
          expect(unusable.map((one) => one.row)).toContain(Number(row));
          return;
        }
        const flocks = parted(rows).map((own) => {
          const [lame, seen] = [sum(own, "lame"), sum(own, "seen")];
          return [written(own), seen, seen === 0 ? "" : lame / seen];
        });
        expect(outcome.ok && outcome.cells.slice(1).map((cells) => cells.slice(0, 3))).toEqual(flocks);
      }),
      { numRuns: 500 },
    );
  });
});
