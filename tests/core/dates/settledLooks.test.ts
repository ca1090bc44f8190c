import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Doubt } from "../../../src/cells/doubt.ts";
import { dueList } from "../../../src/core/dates/dueList.ts";
import { recheckStates } from "../../../src/core/dates/recheckStates.ts";
import { settledLooks } from "../../../src/core/dates/settledLooks.ts";
import { noTag } from "../../../src/core/words/faults.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (name: string): Tag => ({ key: name, shown: name });
const doubt = new Doubt("treated", { what: '"soon" is not a date', mend: "enter a date" });
const asOf = 46_100;

interface Row {
  readonly tag: Tag | undefined | Doubt;
  readonly treated: number | undefined | Doubt;
  readonly due: number | undefined | Doubt;
  readonly done?: number | undefined | Doubt;
}

const columns = (rows: readonly Row[]) => ({
  tags: rows.map(({ tag }) => tag),
  treated: rows.map(({ treated }) => treated),
  due: rows.map(({ due }) => due),
  done: rows.map(({ done }) => done),
});
const listOf = (rows: readonly Row[]) =>
  dueList(asOf, columns(rows), 7, (index) => index + 1).map(({ tag, due }) => `${tag} ${due}`);

/** A treatment of an animal so many days before the day asked for, to be looked at again after 7 days. */
const row = (name: string, daysAgo: number, rest: Partial<Row> = {}): Row => ({
  tag: tagOf(name),
  treated: asOf - daysAgo,
  due: asOf - daysAgo + 7,
  ...rest,
});

// That whoever treats an animal again has looked at it: common practice, no source.
describe("a second look that another row settles", () => {
  it("is that before a later treatment, which has a look of its own", () => {
    expect(listOf([row("A", 20), row("A", 5), row("B", 20)])).toEqual([`B ${asOf - 13}`, `A ${asOf + 2}`]);
  });

  it("is none for a treatment to come, one without a look of its own, or another animal's", () => {
    expect(listOf([row("A", 20), row("A", -1)])).toEqual([`A ${asOf - 13}`]);
    expect(listOf([row("A", 20), row("A", 5, { due: undefined })])).toEqual([`A ${asOf - 13}`]);
    expect(listOf([row("041", 20), row("O41", 9)])).toEqual([`041 ${asOf - 13}`, `O41 ${asOf - 2}`]);
  });

  it("is none for a treatment of which tag or day cannot be read", () => {
    const first = `A ${asOf - 13}`;
    expect(listOf([row("A", 20), row("A", 5, { tag: new Doubt("tags", noTag) })])).toContain(first);
    expect(listOf([row("A", 20), row("A", 5, { treated: doubt })])).toContain(first);
    expect(listOf([row("A", 5, { treated: doubt, due: asOf - 1 }), row("A", 0)])).toContain(`A ${asOf - 1}`);
    expect(listOf([row("A", 20), row("A", 20, { done: doubt })])).toContain(first);
  });

  it("is that of a look without a treatment by one on or after its day", () => {
    const asked = row("A", 0, { treated: undefined, due: asOf - 10 });
    expect(listOf([asked, row("A", 10)])).toEqual([`A ${asOf - 3}`]);
    expect(listOf([asked, row("A", 11)])).toEqual([`A ${asOf - 10}`, `A ${asOf - 4}`]);
  });

  it("is one look where two medicines were given on a day, done when either row says so", () => {
    expect(listOf([row("A", 9), row("A", 9)])).toEqual([`A ${asOf - 2}`]);
    expect(listOf([row("A", 9), row("A", 9, { done: asOf - 1 })])).toEqual([]);
    const both = columns([row("A", 9), row("A", 9, { done: asOf - 1 }), row("A", 9, { done: doubt })]);
    expect(recheckStates(both.due, both.done, asOf, settledLooks(both, asOf))).toEqual(["done", "done", "done"]);
  });

  it("leaves no animal out that is not treated later or looked at, in any order of rows", () => {
    const record = fc.record({
      tag: fc.option(fc.constantFrom(..."ABC".split("").map(tagOf)), { nil: undefined }),
      treated: fc.oneof(
        fc.integer({ min: asOf - 30, max: asOf + 5 }),
        fc.constant(undefined),
        fc.constant<Doubt>(doubt),
      ),
      due: fc.option(fc.integer({ min: asOf - 25, max: asOf + 7 }), { nil: undefined }),
      done: fc.option(fc.integer({ min: asOf - 25, max: asOf + 7 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(record, { maxLength: 12 }), (rows) => {
        const listed = listOf(rows);
        for (const one of rows) {
          if (one.tag === undefined || one.due === undefined || (one.done !== undefined && one.done <= asOf)) continue;
          const settledBy = rows.some(
            (other) =>
              other.tag === one.tag &&
              other.due !== undefined &&
              typeof other.treated === "number" &&
              ((other.treated <= asOf &&
                (typeof one.treated === "number"
                  ? other.treated > one.treated
                  : one.treated === undefined && other.treated >= (one.due as number))) ||
                (other.treated === one.treated &&
                  other.due === one.due &&
                  other.done !== undefined &&
                  other.done <= asOf)),
          );
          expect(listed.includes(`${one.tag.shown} ${one.due}`) || settledBy).toBe(true);
          if (rows.filter((other) => other.tag === one.tag && other.due === one.due).length === 1)
            expect(listed.includes(`${one.tag.shown} ${one.due}`)).toBe(!settledBy);
        }
        expect([...listOf([...rows].reverse())].sort()).toEqual([...listed].sort());
      }),
    );
  });
});
