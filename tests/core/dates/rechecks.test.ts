import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Doubt } from "../../../src/cells/doubt.ts";
import { dueList } from "../../../src/core/dates/dueList.ts";
import { recheckState } from "../../../src/core/dates/recheckState.ts";
import { noTag } from "../../../src/core/words/faults.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (name: string): Tag => ({ key: name, shown: name });

// Looking again after 7 days: common practice, no source.
describe("recheckState", () => {
  it("counts one day as one day", () => {
    expect(recheckState(46001, undefined, 46000)).toBe("due in 1 day");
    expect(recheckState(45999, undefined, 46000)).toBe("1 day overdue");
  });

  it("does not count a look that comes after the day asked for", () => {
    expect(recheckState(46001, 46005, 46003)).toBe("2 days overdue");
    expect(recheckState(46001, 46005, 46005)).toBe("done");
    expect(recheckState(46001, false, 46005)).toBe("4 days overdue");
    expect(recheckState(46001, true, 46005)).toBe("done");
  });
});

describe("dueList", () => {
  const record = fc.record({
    tag: fc.constantFrom(..."ABCDEF".split("").map(tagOf)),
    due: fc.option(fc.integer({ min: 45980, max: 46030 }), { nil: undefined }),
    done: fc.option(fc.integer({ min: 45980, max: 46030 }), { nil: undefined }),
  });

  it("lists every look that is due and not done, the longest overdue first, in any order of rows", () => {
    fc.assert(
      fc.property(fc.array(record, { maxLength: 40 }), (records) => {
        const list = (rows: typeof records) =>
          dueList(
            46000,
            {
              tags: rows.map((row) => row.tag),
              due: rows.map((row) => row.due),
              done: rows.map((row) => row.done),
            },
            7,
            (index) => index + 1,
          );
        const looks = list(records);
        const expected = records.filter(
          ({ due, done }) => due !== undefined && due <= 46007 && !(done !== undefined && done <= 46000),
        );
        expect(looks.length).toBe(expected.length);
        expect(looks.map((look) => look.due)).toEqual(
          expected.map((row) => row.due).sort((a, b) => (a ?? 0) - (b ?? 0)),
        );
        const backwards = list([...records].reverse());
        expect(backwards.map((look) => `${look.tag} ${look.due}`).sort()).toEqual(
          looks.map((look) => `${look.tag} ${look.due}`).sort(),
        );
      }),
    );
  });

  it("puts the worst of a day first, and before it whoever was not scored, in any order of rows", () => {
    const scored = fc.record({
      due: fc.integer({ min: 45995, max: 45998 }),
      score: fc.oneof(fc.constantFrom(0, 1, 2, 3.5, 6), fc.constant(undefined), fc.constant(new Doubt("score", noTag))),
    });
    fc.assert(
      fc.property(fc.array(scored, { maxLength: 30 }), (rows) => {
        const tags = rows.map((_, index) => tagOf(String(index)));
        const records = { tags, due: rows.map(({ due }) => due), score: rows.map(({ score }) => score) };
        const listed = dueList(46000, records, 7, (index) => index + 1).map(({ tag }) => rows[Number(tag)]);
        expect(listed).toHaveLength(rows.length);
        const lame = (score: unknown): number => (typeof score === "number" && score > 0 ? score : 7);
        listed.slice(1).forEach((row, index) => {
          const before = listed[index];
          const isInOrder =
            (before?.due ?? 0) < (row?.due ?? 0) ||
            (before?.due === row?.due && lame(before?.score) >= lame(row?.score));
          expect(isInOrder).toBe(true);
        });
      }),
    );
  });

  it("takes a look that is written twice for as lame as its worst row", () => {
    const [one, other] = [tagOf("one"), tagOf("other")];
    const records = {
      tags: [one, other, one],
      due: [45999, 45999, 45999],
      treated: [45992, 45992, 45992],
      score: [1, 3, 5],
    };
    expect(dueList(46000, records, 7, (index) => index + 1).map(({ tag }) => tag)).toEqual(["one", "other"]);
  });
});
