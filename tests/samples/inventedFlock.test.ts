import { describe, expect, test } from "vitest";
import { isoText } from "../../src/cells/day.ts";
import { tagKey } from "../../src/core/words/tagKey.ts";
import { typedCases, typedGathers } from "../../src/workbooks/farmRecords/asTyped.ts";
import type { farmCases } from "../../src/workbooks/farmRecords/farmTables.ts";
import { groups, year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { inventedFlock, sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { printedTag } from "../../src/workbooks/inventedFlock/printedTag.ts";
import { saleList } from "../../src/workbooks/inventedFlock/saleList.ts";
import { seededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import type { KeyOf } from "../../src/workbooks/tables/defineTable.ts";

const flock = inventedFlock(sampleSeed);
const { animals, cases, gathers } = flock;
const monthOf = (day: number) => isoText(day).slice(0, 7);
const shareIn = (wanted: (gather: (typeof gathers)[number]) => boolean) => {
  const some = gathers.filter(wanted);
  return some.reduce((sum, { lame }) => sum + lame, 0) / some.reduce((sum, { seen }) => sum + seen, 0);
};

describe("the invented flock", () => {
  test("has 420 ewes and their lambs, and about 340 case records within the year", () => {
    expect(animals.filter(({ group }) => !group.lambs)).toHaveLength(420);
    expect(animals.filter(({ group }) => group.lambs)).toHaveLength(640);
    expect(new Set(animals.map(({ number }) => number)).size).toBe(animals.length);
    expect(Math.abs(cases.length - 340)).toBeLessThanOrEqual(20);
    for (const { seen } of cases) expect(seen >= year.first && seen <= year.last).toBe(true);
  });

  test("is the same again for the same seed, and another for another", () => {
    expect(inventedFlock(sampleSeed)).toEqual(flock);
    expect(inventedFlock(sampleSeed + 1).cases).not.toEqual(cases);
  });

  test("is gathered every month, group by group, and never has more lame than seen", () => {
    expect(new Set(gathers.map(({ date }) => monthOf(date))).size).toBe(12);
    for (const { name, from } of groups) {
      const months = gathers.filter(({ group }) => group === name).map(({ date }) => monthOf(date));
      expect(new Set(months).size).toBe(months.length);
      expect(months.length).toBeGreaterThanOrEqual(monthOf(from) === monthOf(year.first) ? 12 : 2);
    }
    for (const { lame, seen } of gathers) expect(lame).toBeLessThanOrEqual(seen);
  });

  test("has what such a year has: a peak when housed, footrot and scald first, disease bought in, animals lame again", () => {
    const older = ({ group }: { group: string }) => ["Old ewes", "Young ewes"].includes(group);
    const housed = shareIn((g) => older(g) && ["2026-02", "2026-03"].includes(monthOf(g.date)));
    const autumn = shareIn((g) => older(g) && ["2025-11", "2025-12"].includes(monthOf(g.date)));
    expect(housed).toBeGreaterThan(1.5 * autumn);
    const count = (lesion: string) => cases.filter((record) => record.lesion === lesion).length;
    expect(count("footrot") + count("interdigital dermatitis")).toBeGreaterThan(cases.length / 2);
    const codd = cases.filter(({ lesion }) => lesion === "contagious ovine digital dermatitis");
    expect(codd.length).toBeGreaterThan(3);
    expect(Math.min(...codd.map(({ seen }) => seen))).toBeGreaterThan(year.boughtIn);
    expect(codd[0]?.animal.group.name).toBe("Bought-in shearlings");
    const perAnimal = new Map<number, number>();
    for (const { animal } of cases) perAnimal.set(animal.number, (perAnimal.get(animal.number) ?? 0) + 1);
    expect([...perAnimal.values()].filter((times) => times >= 3).length).toBeGreaterThanOrEqual(5);
  });

  test("has dates in their order and nothing after its last day", () => {
    for (const { seen, treated, lookedAgain, sound } of cases) {
      if (treated === undefined) {
        expect([lookedAgain, sound]).toEqual([undefined, undefined]);
        continue;
      }
      expect(treated).toBeGreaterThanOrEqual(seen);
      for (const later of [lookedAgain, sound]) expect(later ?? year.last).toBeGreaterThanOrEqual(treated);
      for (const day of [treated, lookedAgain, sound]) expect(day ?? 0).toBeLessThanOrEqual(year.last);
    }
  });
});

describe("the records as typed", () => {
  const typed = typedCases(cases, seededRandom(1));
  const column = (key: KeyOf<typeof farmCases>) => typed.map((row) => row[key] ?? null);
  const filled = typed.filter((row) => Object.keys(row).length > 0);

  test("hold the slips that real records hold", () => {
    expect(typed.some((row) => Object.keys(row).length === 0)).toBe(true);
    const text = (key: KeyOf<typeof farmCases>) => column(key).filter((cell) => typeof cell === "string");
    expect(text("ml").length).toBeGreaterThan(0);
    expect(text("withdrawalDays").length).toBeGreaterThan(0);
    expect(text("treated").every((cell) => /^\d{4}-\d\d-\d\d$/.test(String(cell)))).toBe(true);
    expect(text("treated").length).toBeGreaterThan(0);
    expect(text("group").some((cell) => /\s$/.test(String(cell)))).toBe(true);
    expect(new Set(text("lesion")).size).toBeGreaterThan(15);
    expect(text("lesion")).toEqual(expect.arrayContaining(["sore", "hot hoof?"]));
  });

  test("have exactly one treatment with medicine whose withdrawal days are missing", () => {
    const [treated, days, medicine] = (["treated", "withdrawalDays", "medicine"] as const).map(column);
    const missing = typed.flatMap((_, row) => (treated?.[row] && days?.[row] === null ? [medicine?.[row]] : []));
    expect(missing).toHaveLength(1);
    expect(missing[0]).toMatch(/^medicine [AB]/);
  });

  test("write a tag in several ways that all mean the same animal", () => {
    const keys = filled.map((row) => tagKey(row.tag as string | number));
    expect(keys).toEqual(cases.map(({ animal }) => tagKey(printedTag(animal.number))));
    for (const key of keys) expect(key).toMatch(/^999/);
    expect(filled.some((row) => typeof row.tag === "number")).toBe(true);
  });

  test("leave rows blank between gathers and keep a number as text here and there", () => {
    const rows = typedGathers(gathers, seededRandom(1));
    expect(rows.filter((row) => Object.keys(row).length > 0)).toHaveLength(gathers.length);
    expect(rows.some((row) => Object.keys(row).length === 0)).toBe(true);
    expect(rows.some((row) => typeof row.lame === "string" || typeof row.seen === "string")).toBe(true);
  });
});

test("the sale list has animals with treatments, without, and one in no record", () => {
  const keys = saleList(flock).map(tagKey);
  const treated = new Set(cases.map(({ animal }) => tagKey(printedTag(animal.number))));
  const there = new Set(animals.map(({ number }) => tagKey(printedTag(number))));
  expect(new Set(keys).size).toBe(keys.length);
  expect(keys.filter((key) => treated.has(key)).length).toBeGreaterThanOrEqual(8);
  expect(keys.filter((key) => there.has(key) && !treated.has(key)).length).toBeGreaterThanOrEqual(2);
  expect(keys.filter((key) => !there.has(key))).toEqual(["999012345607777"]);
});

describe("seeded chance", () => {
  test("gives shares from 0 up to 1 that are spread evenly", () => {
    const random = seededRandom(7);
    const bins = new Array<number>(10).fill(0);
    const shares = Array.from({ length: 100_000 }, random.share);
    expect(shares.every((share) => share >= 0 && share < 1)).toBe(true);
    for (const share of shares) bins[Math.floor(share * 10)] = (bins[Math.floor(share * 10)] ?? 0) + 1;
    // Chi-square with 9 degrees of freedom: 27.9 is passed once in 1000 runs.
    expect(bins.reduce((sum, bin) => sum + (bin - 10_000) ** 2 / 10_000, 0)).toBeLessThan(27.9);
  });

  test("picks by weight and refuses to pick from nothing", () => {
    const random = seededRandom(3);
    const picked = Array.from({ length: 4000 }, () => random.weighted({ often: 3, seldom: 1 }));
    expect(picked.filter((name) => name === "often").length / 4000).toBeCloseTo(0.75, 1);
    expect(() => random.pick([])).toThrow("nothing to pick");
    expect(() => random.weighted({ none: 0 })).toThrow("add up to nothing");
    const thrown = Array.from({ length: 600 }, () => random.whole(1, 6));
    expect([...new Set(thrown)].sort()).toEqual([1, 2, 3, 4, 5, 6]);
  });
});
