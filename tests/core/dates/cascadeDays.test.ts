import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../src/cells/problem.ts";
import {
  type Basis,
  bases,
  cascadeDays,
  type Produce,
  produces,
  regions,
} from "../../../src/core/dates/cascadeDays.ts";

const days = (labelDays: number | undefined, produce: Produce, basis: Basis, vetDays?: number) =>
  regions.map((region) => cascadeDays({ labelDays, produce, basis, vetDays }, region));

describe("cascadeDays", () => {
  // × 1.5: Regulation (EU) 2019/6, Article 115(1)(a)(i) and (b)(i), read; Great Britain, Veterinary Medicines Regulations
  // 2013 Sch 4 para 2(3): milk read, meat read about. The rounding up to whole days: from memory.
  it.each([
    [1, 2],
    [2, 3],
    [5, 8],
    [7, 11],
    [28, 42],
    [35, 53],
    [3.5, 6],
  ])("%d days on the label → %i", (label, least) => {
    for (const produce of produces) expect(days(label, produce, "authorised")).toEqual([least, least]);
  });

  // Article 115(1)(a)(ii), (a)(iii), (b)(ii), (b)(iii), read; Great Britain milk read, meat's 28 days read about; its one
  // day for meat is the European one, kept because it is the longer.
  it.each<[Produce, Basis, number]>([
    ["meat", "not authorised for food animals", 28],
    ["milk", "not authorised for food animals", 7],
    ["milk", "not authorised for milk animals", 7],
    ["meat", "zero period, same family", 0],
    ["meat", "zero period, another family", 1],
    ["milk", "zero period, same family", 1],
    ["milk", "zero period, another family", 1],
  ])("%s, %s → %i", (produce, basis, least) => {
    expect(days(undefined, produce, basis)).toEqual([least, least]);
    expect(days(0, produce, basis)).toEqual([least, least]);
  });

  it.each<[number | undefined, Produce, Basis, string]>([
    [undefined, "meat", "authorised", "label_days: it is blank"],
    [0, "milk", "authorised", "label_days: it is 0 or blank"],
    [10, "meat", "not authorised for food animals", "label_days: 10 days do not go with"],
    [10, "milk", "zero period, same family", "label_days: 10 days do not go with"],
    [undefined, "meat", "not authorised for milk animals", "basis: for meat it does not matter"],
  ])("refuses %s, %s, %s", (label, produce, basis, message) => {
    expect(() => days(label, produce, basis)).toThrow(Problem);
    expect(() => days(label, produce, basis)).toThrow(message);
  });

  it("never falls below the law nor below the vet, and is one of the two", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...bases.filter((basis) => basis !== "not authorised for milk animals")),
        fc.constantFrom(...produces),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 0, max: 400 }),
        (basis, produce, label, vet) => {
          const given = basis === "authorised" ? label : undefined;
          const [least] = days(given, produce, basis) as [number, number];
          expect(days(given, produce, basis, vet)).toEqual([Math.max(least, vet), Math.max(least, vet)]);
          if (basis === "authorised") {
            expect(2 * least).toBeGreaterThanOrEqual(3 * label);
            expect(2 * (least - 1)).toBeLessThan(3 * label);
          }
        },
      ),
    );
  });
});
