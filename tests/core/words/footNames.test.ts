import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Foot, feet, findFeet, footNames } from "../../../src/core/words/footNames.ts";

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
    ["4", [...feet]],
    ["all 4", [...feet]],
    ["both fore", ["left fore", "right fore"]],
    ["both front feet", ["left fore", "right fore"]],
    ["both hind", ["left hind", "right hind"]],
    ["both back legs", ["left hind", "right hind"]],
    ["hinds", ["left hind", "right hind"]],
    ["four", [...feet]],
    ["L fore, R hind", ["left fore", "right hind"]],
    ["RF & LF", ["left fore", "right fore"]],
  ])("reads %s", (text, named) => expect(findFeet(text)).toEqual(named));

  // Left is the near side and right the off side; front is fore, back and rear are hind.
  it.each<[Foot, string[]]>([
    ["left fore", ["LF", "FL", "NSF", "left front", "near fore", "front left", "fore left", "near front"]],
    ["right fore", ["RF", "FR", "OSF", "right front", "off fore", "front right", "fore right", "off front"]],
    [
      "left hind",
      ["LH", "HL", "LB", "BL", "NSH", "left back", "left rear", "near hind", "back left", "hind left", "near back"],
    ],
    [
      "right hind",
      ["RH", "HR", "RB", "BR", "OSH", "right back", "right rear", "off hind", "back right", "hind right", "off back"],
    ],
  ])("knows %s by its other names", (foot, others) => {
    for (const name of others) expect([name, findFeet(name)]).toEqual([name, [foot]]);
  });

  it("refuses what is no foot", () => {
    expect(() => footNames("tail")).toThrow('"tail" is not a foot known here; use LF, RF, LH or RH');
    expect(findFeet("LF, tail")).toBeUndefined();
    expect(findFeet("LF,")).toBeUndefined();
    // A foot in doubt may be any other.
    expect(findFeet("LF?")).toBeUndefined();
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
