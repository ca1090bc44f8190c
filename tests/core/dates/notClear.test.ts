import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { faultInWords } from "../../../src/cells/fault.ts";
import { notClear } from "../../../src/core/dates/notClear.ts";
import { saleCheck as eachSale } from "../../../src/core/dates/saleCheck.ts";
import { noDate, noDays } from "../../../src/core/words/faults.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (name: string): Tag => ({ key: name, shown: name });
const rowOf = (index: number): number => index + 2;

const rows = { sale: rowOf, treatment: rowOf };

describe("notClear", () => {
  const asOf = dayOf("2026-03-10");

  it("lists what is not known first, then the latest date first, and ties in the order of the records", () => {
    const names = ["early", "tie", "late", "clear", "gap", "tie too", "no date"];
    const treatments = {
      tags: names.map(tagOf),
      treated: [asOf - 1, asOf - 1, asOf, asOf - 40, asOf - 90, asOf - 1, undefined],
      withdrawalDays: [3, 5, 28, 28, undefined, 5, 28],
    };
    expect(notClear(asOf, treatments, "whole days", rowOf)).toEqual([
      {
        tag: "gap",
        clear: "not known",
        daysToWait: undefined,
        why: `withdrawal_days, row 6: ${faultInWords(noDays)}`,
      },
      { tag: "no date", clear: "not known", daysToWait: undefined, why: `treated, row 8: ${faultInWords(noDate)}` },
      { tag: "late", clear: asOf + 29, daysToWait: 29, why: undefined },
      { tag: "tie", clear: asOf + 5, daysToWait: 5, why: undefined },
      { tag: "tie too", clear: asOf + 5, daysToWait: 5, why: undefined },
      { tag: "early", clear: asOf + 3, daysToWait: 3, why: undefined },
    ]);
  });

  it("holds an animal until the hour when counted from the hour", () => {
    const treatments = { tags: [tagOf("a")], treated: [asOf - 28 + 0.4], withdrawalDays: [28] };
    expect(notClear(asOf + 0.3, treatments, "from the hour", rowOf)).toHaveLength(1);
    expect(notClear(asOf + 0.5, treatments, "from the hour", rowOf)).toHaveLength(0);
  });

  it("says of animals without any treatment that none is recorded, not that they are clear", () => {
    const untreated = {
      tags: [tagOf("a"), tagOf("b")],
      treated: [undefined, undefined],
      withdrawalDays: [undefined, undefined],
    };
    const nothing = { tag: "no treatments recorded", clear: undefined, daysToWait: undefined, why: undefined };
    expect(notClear(asOf, untreated, "whole days", rowOf)).toEqual([nothing]);
    const over = { tags: [tagOf("a")], treated: [asOf - 60], withdrawalDays: [28] };
    expect(notClear(asOf, over, "whole days", rowOf)).toEqual([]);
  });

  const record = fc.record({
    tag: fc.constantFrom("a", "b", "c", "d", "e").map(tagOf),
    treated: fc.integer({ min: asOf - 60, max: asOf }),
    days: fc.option(fc.integer({ min: 0, max: 60 }), { nil: undefined }),
  });

  it("lists exactly the animals that a sale on that day holds", () => {
    fc.assert(
      fc.property(fc.array(record, { maxLength: 30 }), (records) => {
        const treatments = {
          tags: records.map(({ tag }) => tag),
          treated: records.map(({ treated }) => treated),
          withdrawalDays: records.map(({ days }) => days),
        };
        const lines = notClear(asOf, treatments, "whole days", rowOf);
        const listed = records.length > 0 ? lines : [];
        const held = [...eachSale({ tags: "abcde".split("").map(tagOf) }, asOf, treatments, "whole days", rows)].filter(
          ({ answer }) => answer === "hold",
        );
        if (records.length === 0) expect(lines.map(({ tag }) => tag)).toEqual(["no treatments recorded"]);
        expect(listed.map(({ tag }) => tag).sort()).toEqual(held.map(({ tag }) => tag).sort());
        const dates = listed.flatMap(({ clear }) => (typeof clear === "number" ? [clear] : []));
        expect(dates).toEqual([...dates].sort((x, y) => y - x));
        expect(listed.slice(listed.length - dates.length).every(({ clear }) => clear !== "not known")).toBe(true);
      }),
    );
  });
});
