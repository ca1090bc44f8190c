import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { Doubt } from "../../../src/cells/doubt.ts";
import { Problem } from "../../../src/cells/problem.ts";
import { animalClear as clearOf } from "../../../src/core/dates/animalClear.ts";
import { clearByAnimal, type Treatments } from "../../../src/core/dates/clearByAnimal.ts";
import { type Counting, clearDate } from "../../../src/core/dates/clearDate.ts";
import { saleCheck as eachSale } from "../../../src/core/dates/saleCheck.ts";
import { noDays, noTag } from "../../../src/core/words/faults.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (name: string): Tag => ({ key: name, shown: name });
const [ann, bea, cis] = [tagOf("A"), tagOf("B"), tagOf("C")];

const rowOf = (index: number): number => index + 1;
const saleCheck = (tags: readonly Tag[], sale: number, treatments: Treatments, counting: Counting) => [
  ...eachSale({ tags }, sale, treatments, counting, { sale: rowOf, treatment: rowOf }),
];
const animalClear = (tag: Tag, treatments: Treatments, counting: Counting) => clearOf(tag, treatments, counting, rowOf);

describe("clearDate", () => {
  // Finnish Medicines Agency, on counting a withdrawal period: with a 6-day period the animal may go on the 7th day after the last dose.
  it("gives the 7th day after the dose for a 6-day period", () => {
    expect(clearDate(dayOf("2026-05-01"), 6, "whole days")).toBe(dayOf("2026-05-08"));
  });

  // Elapsed 24-hour days: the same clock time on the 6th day (from memory).
  it("gives the same hour on the 6th day when counted from the hour", () => {
    expect(clearDate(dayOf("2026-05-01") + 0.4375, 6, "from the hour")).toBe(dayOf("2026-05-07") + 0.4375);
  });

  // Worked by hand on the calendar: a leap February, the turn of a year.
  it.each([
    ["2026-02-10", 28, "2026-03-11"],
    ["2028-02-15", 14, "2028-03-01"],
    ["2026-12-20", 28, "2027-01-18"],
    ["2026-02-10", 0, "2026-02-10"],
  ])("%s and %i days → %s", (treated, days, clear) => {
    expect(clearDate(dayOf(treated), days, "whole days")).toBe(dayOf(clear));
  });

  it("refuses to count from an hour that is not there", () => {
    expect(() => clearDate(dayOf("2026-02-10"), 28, "from the hour")).toThrow(Problem);
  });

  const day = fc.integer({ min: 33000, max: 73000 });
  const days = fc.integer({ min: 0, max: 400 });

  it("is never earlier than the dose plus its days, whichever way it is counted", () => {
    fc.assert(
      fc.property(day, fc.double({ min: 0.0001, max: 0.9999, noNaN: true }), days, (treated, hour, period) => {
        const dose = treated + hour;
        // In whole days the first moment of the clear day must not come before the last moment of the period.
        if (period > 0) expect(clearDate(dose, period, "whole days")).toBeGreaterThanOrEqual(dose + period);
        expect(clearDate(dose, period, "from the hour")).toBeGreaterThanOrEqual(dose + period);
      }),
    );
  });

  it("moves by a day when the dose or the period does", () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 400 }), (treated, period) => {
        const clear = clearDate(treated, period, "whole days");
        expect(clearDate(treated + 1, period, "whole days")).toBe(clear + 1);
        expect(clearDate(treated, period + 1, "whole days")).toBe(clear + 1);
      }),
    );
  });
});

describe("clearByAnimal", () => {
  const record = fc.record({
    tag: fc.constantFrom(ann, bea, cis),
    treated: fc.integer({ min: 46000, max: 46400 }),
    days: fc.option(fc.integer({ min: 0, max: 60 }), { nil: undefined }),
  });
  const asTreatments = (records: readonly { tag: Tag; treated: number; days: number | undefined }[]) => ({
    tags: records.map((one) => one.tag),
    treated: records.map((one) => one.treated),
    withdrawalDays: records.map((one) => one.days),
  });

  it("is the latest over all treatments, whatever their order", () => {
    fc.assert(
      fc.property(
        fc.array(record, { minLength: 1, maxLength: 30 }),
        fc.infiniteStream(fc.nat()),
        (records, shuffle) => {
          const mixed = records
            .map((one) => ({ one, at: shuffle.next().value as number }))
            .sort((a, b) => a.at - b.at)
            .map(({ one }) => one);
          const straight = clearByAnimal(asTreatments(records), "whole days");
          const shuffled = clearByAnimal(asTreatments(mixed), "whole days");
          for (const { tag } of records) {
            const known = records.filter((one) => one.tag === tag && one.days !== undefined);
            const latest = known.map((one) => clearDate(one.treated, one.days as number, "whole days"));
            expect(straight.animals.get(tag)?.clear).toBe(latest.length > 0 ? Math.max(...latest) : undefined);
            expect(shuffled.animals.get(tag)?.clear).toBe(straight.animals.get(tag)?.clear);
            expect(shuffled.animals.get(tag)?.gap === undefined).toBe(straight.animals.get(tag)?.gap === undefined);
          }
        },
      ),
    );
  });

  it("takes a row without date and days for no treatment, and a 0 without a date too", () => {
    const treatments = { tags: [ann, bea], treated: [undefined, undefined], withdrawalDays: [undefined, 0] };
    expect(clearByAnimal(treatments, "whole days").animals.values.length).toBe(0);
  });

  it("never takes missing days for 0 days", () => {
    const treatments = { tags: [ann], treated: [46000], withdrawalDays: [undefined] };
    expect(clearByAnimal(treatments, "whole days").animals.get(ann)).toEqual({
      tag: ann,
      clear: undefined,
      index: 0,
      gap: new Doubt("withdrawal_days", noDays),
    });
  });

  it("keeps treatments that no animal can be found for, until the last of them is over", () => {
    const treatments = { tags: [ann, undefined, undefined], treated: [46000, 46001, 46000], withdrawalDays: [5, 5, 5] };
    expect(clearByAnimal(treatments, "whole days").unknown).toEqual({
      clear: 46007,
      index: 1,
      gap: undefined,
      rows: 2,
      who: new Doubt("tags", noTag),
    });
  });

  it("gives a treatment without a tag to its group, and one without either to everybody", () => {
    const treatments = {
      tags: [undefined, undefined, ann],
      treated: [46000, 46000, 46000],
      withdrawalDays: [5, undefined, 5],
      groups: ["Lambs", undefined, "lambs"],
    };
    const { animals, groups, unknown } = clearByAnimal(treatments, "whole days");
    expect([...groups.keys()]).toEqual(["lambs"]);
    expect(groups.get("lambs")?.clear).toBe(46006);
    expect(animals.values.map(({ tag }) => tag)).toEqual([ann]);
    expect(unknown?.gap).toEqual(new Doubt("withdrawal_days", noDays));
  });
});

describe("animalClear of a tag that lost its zeros", () => {
  const treatments = { tags: [tagOf("042"), tagOf("A7")], treated: [46000, 46000], withdrawalDays: [28, 28] };

  it("is refused while another spelling has a treatment, and blank for any other tag", () => {
    expect(() => animalClear(tagOf("42"), treatments, "whole days")).toThrow(
      "it may be 042, row 1, not clear until 7 Jan 2026; look at both tags",
    );
    // The later treatment stands under another spelling.
    const split = { tags: [tagOf("42"), tagOf("042")], treated: [46000, 46020], withdrawalDays: [28, 28] };
    expect(() => animalClear(tagOf("42"), split, "whole days")).toThrow("it may be 042, row 2, not clear until");
    const untreated = { ...split, treated: [46000, undefined], withdrawalDays: [28, undefined] };
    expect(animalClear(tagOf("42"), untreated, "whole days")).toBe(46029);
    for (const tag of ["43", "420", "7"]) expect(animalClear(tagOf(tag), treatments, "whole days")).toBeUndefined();
  });
});

describe("animalClear", () => {
  it("is not kept from an answer by another animal's missing days", () => {
    const treatments = { tags: [ann, bea], treated: [46000, 46001], withdrawalDays: [5, undefined] };
    expect(animalClear(ann, treatments, "whole days")).toBe(46006);
    expect(() => animalClear(bea, treatments, "whole days")).toThrow("a treatment without withdrawal days");
    expect(animalClear(cis, treatments, "whole days")).toBeUndefined();
  });

  it("names the row of days without a date", () => {
    const treatments = { tags: [ann], treated: [undefined], withdrawalDays: [5] };
    expect(() => animalClear(ann, treatments, "whole days")).toThrow("no date in a row that holds a record");
  });
});

describe("saleCheck", () => {
  const check = (
    sale: number,
    treated: number,
    days: number,
    counting: "whole days" | "from the hour" = "whole days",
  ) => saleCheck([ann], sale, { tags: [ann], treated: [treated], withdrawalDays: [days] }, counting)[0];

  it("clears on the clear date and holds the day before", () => {
    expect(check(46034, 46000, 33)).toEqual({ tag: "A", answer: "clear", clear: 46034, daysToWait: 0 });
    expect(check(46033, 46000, 33)).toEqual({ tag: "A", answer: "hold", clear: 46034, daysToWait: 1 });
  });

  it("holds on a day of sale during which the period ends", () => {
    expect(check(46010, 46000.5, 10, "from the hour")).toMatchObject({ answer: "hold", daysToWait: 1 });
    expect(check(46010.5, 46000.5, 10, "from the hour")).toMatchObject({ answer: "clear" });
  });

  it("names a treated animal whose tag differs by zeros at the front only", () => {
    const treatments = { tags: [tagOf("042"), tagOf("7")], treated: [46000, 46000], withdrawalDays: [28, 0] };
    const answers = saleCheck(["42", "007", "0", "420", "A42"].map(tagOf), 46010, treatments, "whole days");
    expect(answers.map(({ answer, clear }) => [answer, clear])).toEqual([
      ["hold", "it may be 042, row 1, not clear until 7 Jan 2026"],
      ["no treatment recorded", "it may be 7, row 2, clear since 9 Dec 2025"],
      ["no treatment recorded", undefined],
      ["no treatment recorded", undefined],
      ["no treatment recorded", undefined],
    ]);
  });

  it("holds a tag for any treated animal that differs by zeros only, until all of them are clear", () => {
    const treatments = { tags: ["042", "0042", "7", "07"].map(tagOf), treated: [46000, 46000, 46000, 46000] };
    const answerOn = (sale: number, tag: string, withdrawalDays: (number | undefined)[]) => {
      const [answer] = saleCheck([tagOf(tag)], sale, { ...treatments, withdrawalDays }, "whole days");
      return [answer?.answer, answer?.clear];
    };
    // The latest clear date is 46000 + 28 + 1.
    expect(answerOn(46028, "42", [5, 28, 0, 0])).toEqual(["hold", expect.stringMatching(/^it may be 0042, row /)]);
    expect(answerOn(46029, "42", [5, 28, 0, 0])[0]).toBe("no treatment recorded");
    expect(answerOn(46028, "42", [28, 5, 0, 0])).toEqual(["hold", expect.stringMatching(/^it may be 042, row /)]);
    expect(answerOn(46900, "007", [5, 28, undefined, 0])).toEqual([
      "hold",
      expect.stringMatching(/^it may be 7, row /),
    ]);
    expect(answerOn(46900, "007", [5, 28, 0, undefined])).toEqual([
      "hold",
      expect.stringMatching(/^it may be 07, row /),
    ]);
  });

  it("holds an animal that is clear under its own tag while another spelling is not", () => {
    const split = { tags: [tagOf("42"), tagOf("042")], treated: [46000, 46020], withdrawalDays: [28, 28] };
    const answerOn = (sale: number, tag: string) => {
      const [answer] = saleCheck([tagOf(tag)], sale, split, "whole days");
      return [answer?.answer, answer?.clear];
    };
    expect(answerOn(46030, "42")).toEqual(["hold", expect.stringMatching(/^it may be 042, row /)]);
    expect(answerOn(46030, "042")).toEqual(["hold", 46049]);
    // Its own date is 46029, and the other may be it.
    expect(answerOn(46028, "42")).toEqual(["hold", expect.stringMatching(/^it may be 042, row 2/)]);
    expect(answerOn(46049, "42")).toEqual(["clear", 46029]);
  });

  it("calls an animal clear exactly when the sale is not before its clear date", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 46000, max: 46060 }),
        fc.integer({ min: 46000, max: 46030 }),
        fc.integer({ min: 0, max: 30 }),
        (sale, treated, days) => {
          const clear = clearDate(treated, days, "whole days");
          expect(check(sale, treated, days)?.answer).toBe(sale >= clear ? "clear" : "hold");
        },
      ),
    );
  });
});
