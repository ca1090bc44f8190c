import { describe, expect, it } from "vitest";
import { Doubt } from "../../../src/cells/doubt.ts";
import { animalClear } from "../../../src/core/dates/animalClear.ts";
import type { Treatments } from "../../../src/core/dates/clearByAnimal.ts";
import { mayBeGroup } from "../../../src/core/dates/mayBeGroup.ts";
import { notClear } from "../../../src/core/dates/notClear.ts";
import { saleCheck } from "../../../src/core/dates/saleCheck.ts";
import { type Tag, tagKey } from "../../../src/core/words/tagKey.ts";

const tag = (shown: string): Tag => ({ key: tagKey(shown), shown });
const rowOf = (index: number): number => index + 1;
const badDay = new Doubt("treated", { what: '"12/3" is not a date', mend: "enter a real date" });
const badTag = new Doubt("tags", { what: "the cell holds #REF!", mend: "mend that cell first" });

const sold = (
  tags: readonly string[],
  sale: number,
  treatments: Treatments,
  groups?: readonly (string | undefined)[],
) =>
  [
    ...saleCheck({ tags: tags.map(tag), groups }, sale, treatments, "whole days", { sale: rowOf, treatment: rowOf }),
  ].map(({ answer, clear }) => [answer, clear]);

describe("a treatment of which the day cannot be read", () => {
  const treatments = {
    tags: [tag("041"), tag("042"), tag("042")],
    treated: [46000, badDay, 46000],
    withdrawalDays: [5, 5, 5],
  };

  it("holds its own animal for as long as it is so, and no other", () => {
    expect(sold(["041", "042", "051"], 46900, treatments)).toEqual([
      ["clear", 46006],
      ["hold", 'treated, row 2: "12/3" is not a date; enter a real date'],
      ["no treatment recorded", undefined],
    ]);
    expect(notClear(46900, treatments, "whole days", rowOf)).toEqual([
      {
        tag: "042",
        clear: "not known",
        daysToWait: undefined,
        why: 'treated, row 2: "12/3" is not a date; enter a real date',
      },
    ]);
    expect(animalClear(tag("041"), treatments, "whole days", rowOf)).toBe(46006);
    expect(() => animalClear(tag("042"), treatments, "whole days", rowOf)).toThrow('"12/3" is not a date');
  });
});

describe("a treatment without a readable tag", () => {
  const treatments = { tags: [tag("041"), badTag], treated: [46000, 46010], withdrawalDays: [5, 28] };

  it("holds every animal until its own period is over, and none after that", () => {
    expect(sold(["041", "051"], 46038, treatments)).toEqual(
      Array(2).fill([
        "hold",
        "tags, row 2: the cell holds #REF!; mend that cell first; it may be any animal, not clear until 17 Jan 2026",
      ]),
    );
    expect(notClear(46038, treatments, "whole days", rowOf).map((line) => line.tag)).toEqual(["every animal"]);
    expect(sold(["041", "051"], 46039, treatments)).toEqual([
      ["clear", 46006],
      ["no treatment recorded", undefined],
    ]);
    expect(notClear(46039, treatments, "whole days", rowOf)).toEqual([]);
    expect(animalClear(tag("051"), treatments, "whole days", rowOf)).toBe(46039);
  });

  it("holds them for ever while its days are not known either", () => {
    const unknown = { ...treatments, withdrawalDays: [5, undefined] };
    expect(sold(["051"], 60000, unknown)[0]?.[0]).toBe("hold");
    expect(() => animalClear(tag("051"), unknown, "whole days", rowOf)).toThrow("without withdrawal days");
  });
});

describe("a treatment of a whole group", () => {
  const treatments = {
    tags: [undefined, tag("041")],
    treated: [46010, 46000],
    withdrawalDays: [28, 5],
    groups: ["Lambs", undefined],
  };

  it("holds the animals of that group and those of an unknown one, and no others", () => {
    expect(sold(["041", "051", "052", "053"], 46020, treatments, ["Ewes", "lambs ", undefined, "Lamb"])).toEqual([
      ["clear", 46006],
      ["hold", 46039],
      ["hold", "it may be of the group Lambs, row 1, not clear until 17 Jan 2026"],
      ["hold", "it may be of the group Lambs, row 1, not clear until 17 Jan 2026"],
    ]);
    expect(sold(["041", "051"], 46039, treatments).map(([answer]) => answer)).toEqual([
      "clear",
      "no treatment recorded",
    ]);
    // Without a column of groups for the sale, nobody's group is known.
    expect(sold(["051"], 46020, treatments)[0]?.[0]).toBe("hold");
  });

  it("stands in the list as a group; a tag that is there and cannot be read may be any animal's", () => {
    const spoilt = { ...treatments, tags: [badTag, tag("041")] };
    expect(notClear(46020, treatments, "whole days", rowOf)).toEqual([
      { tag: "every animal of group Lambs", clear: 46039, daysToWait: 19, why: undefined },
    ]);
    expect(notClear(46020, spoilt, "whole days", rowOf)[0]).toMatchObject({
      tag: "every animal",
      why: expect.stringMatching(/^tags, row 1: the cell holds #REF!/),
    });
  });
});

describe("names of groups", () => {
  it.each([
    ["lambs", "lamb", true],
    ["lambs", "store lambs", true],
    ["hoggets", "hogets", true],
    ["lambs pen 1", "lambs pen 2", false],
    ["ewes", "lambs", false],
    ["ewes", "rams", false],
    ["lambs", "all", true],
    ["lambs", "whole flock", true],
    ["lambs", "?", true],
    ["ewes", "lambs?", true],
    ["lambs", "unknown", true],
    ["lambs", "n/a", true],
    ["lambs", "all ewes", false],
    ["lambs", "flock 2", false],
  ])("%s and %s: %s", (one, other, same) =>
    expect([mayBeGroup(one, other), mayBeGroup(other, one)]).toEqual([same, same]),
  );
});
