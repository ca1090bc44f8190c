import { describe, expect, it } from "vitest";
import { alikeAmong } from "../../../src/core/words/alikeAmong.ts";
import { isAlike } from "../../../src/core/words/likeness.ts";
import { isNumberOfAnimals } from "../../../src/core/words/numberOfAnimals.ts";
import { type Tag, tagKey } from "../../../src/core/words/tagKey.ts";

const tag = (shown: string): Tag => ({ key: tagKey(shown), shown });

// What a pen list, a sale list and a sheet do to tags: common practice, no source. Each pair typed by hand.
describe("tags that may be one animal", () => {
  it.each([
    ["zeros lost", "042", "42"],
    ["zeros lost behind letters", "BLUE 042", "Blue 42"],
    ["zeros lost behind letters that look like digits", "BILL 042", "BILL42"],
    ["letter O for a zero", "042", "O42"],
    ["letter O for a zero in the middle", "105", "1O5"],
    ["letter I for a one", "1042", "I042"],
    ["small letter l for a one", "117", "1l7"],
    ["S for a five", "425", "42S"],
    ["B for an eight", "842", "B42"],
    ["Z for a two", "BLUE 42", "BLUE4Z"],
    ["letters in a full tag", "ZZ 0 123456 00042", "ZZ O 123456 OO042"],
    ["letters in an electronic number", "999012345600042", "9990I2345600042"],
    ["own number of a full tag", "ZZ 0 123456 00042", "42"],
    ["own number of a full tag, with its zeros", "999012345600042", "00042"],
    ["own number of a tag without its country", "0 123456 00042", "042"],
    ["country left out, zeros kept", "ZZ 0 123456 00042", "0 123456 00042"],
    ["country left out, run together", "ZZ 0 123456 00042", "012345600042"],
    ["country left out, printed without zeros", "ZZ 123456 42", "123456 42"],
    ["country left out of a short tag", "ZZ 42", "42"],
    ["a word behind", "042", "042 ewe"],
    ["two words behind", "042", "42 old ewe"],
    ["a letter behind", "042", "042 R"],
    ["a word behind a full tag", "ZZ 0 123456 00042", "ZZ 0 123456 00042 ewe"],
    ["a word for a sheep before", "042", "ewe 042"],
    ["two words before", "042", "Ewe lamb No. 042"],
    ["a word before a full tag", "ZZ 0 123456 00042", "ewe ZZ 0 123456 00042"],
    ["struck through, the new one behind: the old", "043", "043 0044"],
    ["struck through, the new one behind: the new", "0044", "043 0044"],
    ["tagged anew: the old", "062", "062 (lost), now 071"],
    ["tagged anew: the new", "071", "062 (lost), now 071"],
    ["tagged anew, told the other way round: the old", "062", "071 (was 062)"],
    ["tagged anew, told the other way round: the new", "071", "071 (was 062)"],
    ["an arrow", "71", "062->071"],
    ["a full tag anew", "ZZ 0 123456 00042", "ZZ 0 123456 00042 now ZZ 0 123456 00077"],
    ["a full tag anew, its own number", "77", "ZZ 0 123456 00042 now ZZ 0 123456 00077"],
    ["her own number before her tag", "ZZ 0 123456 00011", "12 ZZ 0123456 00011"],
    ["how many beside it", "042", "042 x2"],
    ["one of several with commas", "42", "41,42,43"],
    ["one of several with slashes", "42", "41/42/43"],
    ["a number as another program wrote it", "042", "42.0"],
    ["a word and a colon before", "042", "id: 042"],
    ["a Cyrillic letter for a zero", "042", "О42"],
    ["separators left out", "1-12", "112"],
    ["separators left out of a tag without its country", "123456 42", "12345642"],
  ])("%s: %s and %s", (_, one, other) => {
    expect([isAlike(tag(one), tag(other)), isAlike(tag(other), tag(one))]).toEqual([true, true]);
    expect(alikeAmong([{ tag: tag(one) }])(tag(other))).toHaveLength(1);
    expect(alikeAmong([{ tag: tag(other) }])(tag(one))).toHaveLength(1);
  });

  it.each([
    ["numbers that part otherwise", "1-12", "11-2"],
    ["numbers that part otherwise", "1/23", "12/3"],
    ["another tail of digits", "ZZ 0 123456 00142", "42"],
    ["another tail of digits", "1042", "42"],
    ["two animals of one flock mark", "ZZ 0 123456 00042", "ZZ 0 123456 00420"],
    ["one number in two flocks", "ZZ 0 123456 00042", "ZZ 0 654321 00042"],
    ["letters that look like no digit", "RED 42", "42"],
    ["two letters behind one number", "42A", "42C"],
    ["two colours behind one number", "12 red", "12 blue"],
    ["a zero at the end", "42", "420"],
    ["a lamb and a ewe of one number", "lamb 12", "ewe 12"],
    ["a colour before a number", "Blue 12", "12"],
    ["a pen before a number", "1/12", "12"],
    ["a flock mark beside its number", "123456 00042", "123456"],
    ["two that were tagged anew", "062, now 071", "071, now 080"],
  ])("are not: %s, %s and %s", (_, one, other) => {
    expect([isAlike(tag(one), tag(other)), isAlike(tag(other), tag(one))]).toEqual([false, false]);
    expect(alikeAmong([{ tag: tag(one) }])(tag(other))).toEqual([]);
  });

  it("are looked for among other animals only", () => {
    expect(alikeAmong([{ tag: tag("ZZ 0 123456 00042") }])(tag("999012345600042"))).toEqual([]);
    expect(alikeAmong([])(tag("42"))).toEqual([]);
  });
});

describe("a number of animals", () => {
  it.each([
    "23 lambs",
    "23 Lambs",
    "23lambs",
    "all ewes",
    "whole flock",
    "12 x ewe lambs",
    "150 sheep",
    "the rams",
    "40 head",
    "all",
    "All 40",
    "all in field 3",
    "Both",
    "various",
    "several blues",
    "twins",
    "the rest",
    "whole lot",
    "everything",
    "lame ones",
    "Pen 2",
    "Top field",
    "12 twin lambs",
  ])("%s", (text) => {
    expect(isNumberOfAnimals(text)).toBe(true);
    expect(() => tagKey(text)).toThrow("is a number of animals, not a tag");
  });

  it.each([
    "042 ewe",
    "042 R",
    "ZZ 0 123456 00042",
    "ram 3",
    "Blue 42",
    "lamb 12",
    "42",
    "Allie",
    "Everest 3",
    "pen 3 ewe 42",
    "Penny",
  ])("not %s", (text) => expect(isNumberOfAnimals(text)).toBe(false));
});

describe("tagKey of numbers set apart", () => {
  // Four animals in two flocks that number pen and sheep: a fact of the trade (common practice, no source).
  it("keeps them apart, however they are set apart", () => {
    const keys = ["1-12", "11-2", "1/23", "12/3"].map(tagKey);
    expect(new Set(keys).size).toBe(4);
    for (const spelt of ["1/12", "1 12", "1 - 12", "1.12", "1–12"]) expect(tagKey(spelt)).toBe("1-12");
    expect(tagKey("blue 1/12")).toBe("BLUE1-12");
  });
});
