import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Foot, feet, findFeet, footNames } from "../../../src/core/feet/footNames.ts";

// Common practice, no source.
describe("footNames", () => {
  it.each<[string, Foot[]]>([
    ["LF", ["left fore"]],
    [" right  Hind foot", ["right hind"]],
    ["LF, RH", ["left fore", "right hind"]],
    ["rh lf", ["left fore", "right hind"]],
    ["left fore and right hind", ["left fore", "right hind"]],
    ["LF/LH/LF", ["left fore", "left hind"]],
    ["near-fore", ["left fore"]],
    ["all four feet", [...feet]],
  ])("reads %s", (text, named) => expect(findFeet(text)).toEqual(named));

  it("refuses what is no foot", () => {
    expect(() => footNames("tail")).toThrow('"tail" is not a foot known here; use LF, RF, LH or RH');
    expect(findFeet("LF, tail")).toBeUndefined();
    expect(findFeet("LF,")).toBeUndefined();
  });

  it("reads back any list of feet it names", () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...feet], { minLength: 1 }),
        fc.constantFrom(", ", " + ", " and ", "/"),
        (named, s) => {
          expect(footNames(named.join(s))).toEqual(feet.filter((foot) => named.includes(foot)));
        },
      ),
    );
  });
});
