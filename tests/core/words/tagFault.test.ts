import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Fault, faultInWords } from "../../../src/cells/fault.ts";
import { tagFault } from "../../../src/core/words/tagFault.ts";

// Where a code may be a real one the animal number is above 274877906943, more than an electronic tag can hold; or, where
// the tag must be right, that highest number itself, as unlikely on an animal as a number can be.
const highest = 274_877_906_943;

const inWords = (fault: Fault | undefined): string => (fault === undefined ? "" : faultInWords(fault));

describe("tagFault", () => {
  it.each(["ZZ 0 123456 00042", 999012345600042, "0999012345600042", "042", 42, "Blue 7", "999123456789012"])(
    "finds nothing wrong with %s",
    (tag) => expect(tagFault(tag)).toBeUndefined(),
  );

  it.each([
    [null, "no tag"],
    [true, "TRUE is not a tag"],
    [{ error: "#N/A" } as const, "the cell holds #N/A"],
    [1e16, "more than 15 digits"],
    ["99901234560004", "14 digits: an electronic number has 15"],
    ["9990123456000421", "16 digits"],
    [40999999999942, "a zero at the front is lost; enter 040999999999942 as text"],
    ["999000000000000", "the animal number is 0"],
    ["897012345600042", "897 is no country's code"],
    ["003012345600042", "003 is no country's code"],
    ["895012345600042", "895 is no country's code"],
    ["899012345600042", "899 is no country's code"],
  ])("says what is wrong with %s", (tag, words) => expect(inWords(tagFault(tag))).toContain(words));

  // ISO 3166-1 from its first number to its last (from memory); makers from 900, tests at 999 (ISO 11784).
  it.each(["004", "894", "900", "998", "999"])("accepts %s for a code", (code) => {
    expect(tagFault(`${code}${highest}`)).toBeUndefined();
  });

  // ISO 11784: the animal number has 38 bits.
  it("accepts animal numbers up to 274877906943 and none above", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999_999_999 }), (animal) => {
        const fault = tagFault(`999${String(animal).padStart(12, "0")}`);
        expect(fault === undefined).toBe(animal < 2 ** 38);
      }),
    );
    expect(tagFault(`999${highest}`)).toBeUndefined();
    expect(inWords(tagFault(`999${highest + 1}`))).toContain("above 274877906943");
  });
});
