import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ApartRecords, keepApart as apartOf } from "../../../src/core/animals/keepApart.ts";
import { type Soundness, soundness, soundnessWords } from "../../../src/core/animals/soundness.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (shown: string): Tag => ({ key: shown, shown });
const keepApart = (
  event: number,
  tags: readonly Tag[],
  dates: readonly number[],
  states: readonly Soundness[],
  settleDays: number,
  further: Pick<ApartRecords, "soundOn" | "leftOn"> = {},
) => apartOf(event, { tags, dates, states, ...further }, settleDays, (index) => index + 1);
const [a, b, c, d] = [tagOf("a"), tagOf("b"), tagOf("c"), tagOf("d")];

// Apart until sound: common practice, no source; worked out by hand.
describe("keepApart", () => {
  it("lists the lame, then those sound for too short a time, and says why", () => {
    const tags = [b, b, a, c, c, d, a];
    const dates = [46080, 46096, 46090, 46080, 46090, 46095, 46101];
    const states: Soundness[] = ["lame", "sound", "lame", "lame", "sound", "sound", "sound"];
    expect(keepApart(46100, tags, dates, states, 7)).toEqual([
      { tag: "a", why: "lame on 9 Mar 2026", lastRecord: 46090 },
      { tag: "b", why: "sound only since 15 Mar 2026, lame on 27 Feb 2026; settled on 22 Mar 2026", lastRecord: 46096 },
    ]);
  });

  it("lets go on the day the settling ends", () => {
    const run = (event: number) => keepApart(event, [a, a, a], [0, 10, 14], ["lame", "sound", "sound"], 7).length;
    expect([run(10), run(16), run(17)]).toEqual([1, 1, 0]);
  });

  it("lets lame stand when one day says both", () => {
    expect(keepApart(5, [a, a], [5, 5], ["lame", "sound"], 0)).toHaveLength(1);
    expect(keepApart(5, [a, a], [5, 5], ["sound", "lame"], 0)).toHaveLength(1);
  });

  it("leaves out what has gone, unless it is recorded again later", () => {
    expect(keepApart(9, [a, a], [5, 6], ["lame", "gone"], 0)).toEqual([]);
    expect(keepApart(9, [a, a], [5, 5], ["gone", "lame"], 0)).toEqual([]);
    expect(keepApart(9, [a, a], [5, 10], ["lame", "gone"], 0)).toHaveLength(1);
    expect(keepApart(9, [a, a, a], [5, 6, 7], ["lame", "gone", "lame"], 0)).toHaveLength(1);
    expect(keepApart(9, [a, a, a], [5, 6, 7], ["lame", "gone", "sound"], 7)).toEqual([]);
  });

  it("agrees with looking each animal up by hand", () => {
    const record = fc.tuple(
      fc.constantFrom(a, b, c),
      fc.integer({ min: 0, max: 40 }),
      fc.constantFrom<Soundness>("lame", "sound", "gone"),
    );
    fc.assert(
      fc.property(
        fc.array(record, { maxLength: 40 }),
        fc.integer({ min: 0, max: 45 }),
        fc.integer({ min: 0, max: 15 }),
        (records, event, settle) => {
          const apart = [a, b, c].filter((animal) => {
            const all = records.filter(([tag, day]) => tag === animal && day <= event);
            const gone = Math.max(-1, ...all.filter(([, , state]) => state === "gone").map(([, day]) => day));
            const own = all.filter(([, day]) => day > gone);
            const lameDays = own.filter(([, , state]) => state === "lame").map(([, day]) => day);
            if (lameDays.length === 0) return false;
            const lastLame = Math.max(...lameDays);
            const soundDays = own.filter(([, day, state]) => state === "sound" && day > lastLame).map(([, day]) => day);
            return soundDays.length === 0 || event - Math.min(...soundDays) < settle;
          });
          const found = keepApart(
            event,
            records.map(([tag]) => tag),
            records.map(([, day]) => day),
            records.map(([, , state]) => state),
            settle,
          );
          expect(found.map(({ tag }) => tag).sort()).toEqual(apart.map(({ shown }) => shown));
        },
      ),
    );
  });
});

// A case is one row in many records: worked out by hand, and as its two days in two rows.
describe("keepApart of cases with the day sound again", () => {
  it("lists the ewe that was sound too short a time before the event", () => {
    const soundOn = [46097, 46093, undefined];
    const apart = keepApart(46100, [a, b, c], [46080, 46080, 46080], ["lame", "lame", "lame"], 7, { soundOn });
    expect(apart.map(({ tag, why }) => [tag, why])).toEqual([
      ["c", "lame on 27 Feb 2026"],
      ["a", "sound only since 16 Mar 2026, lame on 27 Feb 2026; settled on 23 Mar 2026"],
    ]);
  });

  it("keeps apart an animal that was sound before it was lame, with its row, and no other for it", () => {
    const apart = keepApart(46100, [a, b, c], [46080, 46080, 46080], ["lame", "lame", "lame"], 7, {
      soundOn: [undefined, 46079, 46081],
    });
    expect(apart.map(({ tag, why }) => [tag, why])).toEqual([
      ["b", "not known: sound_on, row 2: 26 Feb 2026 is before the record of 27 Feb 2026; mend one of the two dates"],
      ["a", "lame on 27 Feb 2026"],
    ]);
  });

  it("leaves out the animal that has left, from that day on", () => {
    const run = (event: number, leftOn: (number | undefined)[]) =>
      keepApart(event, [a, a, b], [46080, 46085, 46080], ["lame", "lame", "lame"], 7, { leftOn }).map(({ tag }) => tag);
    expect(run(46090, [undefined, 46089, undefined])).toEqual(["b"]);
    expect(run(46088, [undefined, 46089, undefined])).toEqual(["a", "b"]);
    expect(run(46090, [46079, undefined, undefined])).toEqual(["a", "b"]);
  });

  it("lets sound stand on the day of its own case, and lame of another case that day", () => {
    const run = (event: number, soundOn: (number | undefined)[]) =>
      keepApart(
        event,
        soundOn.map(() => a),
        soundOn.map(() => 46080),
        soundOn.map(() => "lame" as const),
        7,
        { soundOn },
      );
    expect(run(46087, [46080])).toEqual([]);
    expect(run(46086, [46080])[0]?.why).toMatch(/^sound only since 27 Feb 2026/);
    expect(run(46087, [46080, undefined])[0]?.why).toBe("lame on 27 Feb 2026");
    expect(run(46087, [undefined, 46080])[0]?.why).toBe("lame on 27 Feb 2026");
    expect(run(46087, [46080, 46080])).toEqual([]);
  });

  it("is the same as a record for each of the two days", () => {
    const oneCase = fc.record({
      tag: fc.constantFrom(a, b, c),
      day: fc.integer({ min: 0, max: 40 }),
      lasted: fc.option(fc.integer({ min: 1, max: 20 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(oneCase, { maxLength: 20 }), fc.integer({ min: 0, max: 60 }), (found, event) => {
        const tags = found.map(({ tag }) => tag);
        const days = found.map(({ day }) => day);
        const soundOn = found.map(({ day, lasted }) => (lasted === undefined ? undefined : day + lasted));
        const ended = found.filter(({ lasted }) => lasted !== undefined);
        const inTwoRows = keepApart(
          event,
          [...tags, ...ended.map(({ tag }) => tag)],
          [...days, ...ended.map(({ day, lasted = 0 }) => day + lasted)],
          [...found.map(() => "lame" as const), ...ended.map(() => "sound" as const)],
          7,
        );
        const lame = found.map(() => "lame" as const);
        expect(keepApart(event, tags, days, lame, 7, { soundOn })).toEqual(inTwoRows);
      }),
    );
  });
});

describe("soundness", () => {
  it("knows its words however they are typed, each on one side only", () => {
    const all = Object.entries(soundnessWords).flatMap(([state, words]) => words.map((word) => [state, word] as const));
    expect(new Set(all.map(([, word]) => word)).size).toBe(all.length);
    for (const [state, word] of all) expect(soundness(` ${word.toUpperCase().replace(" ", "-")} `)).toBe(state);
  });

  it.each(["yes", "no", "better", "2", ""])("refuses %s", (word) =>
    expect(() => soundness(word)).toThrow("does not say lame or sound"),
  );

  it.each(["sound?", "not lame ?", "sold??", "? dead"])("does not take %s for sound or gone", (word) =>
    expect(() => soundness(word)).toThrow("is not sure"),
  );

  it.each(["lame?", "not sound?"])("holds %s for lame", (word) => expect(soundness(word)).toBe("lame"));
});
