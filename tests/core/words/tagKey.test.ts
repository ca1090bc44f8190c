import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tagKey } from "../../../src/core/words/tagKey.ts";

/** An animal as ISO 11784 numbers it: the test country 999, a 6-digit flock mark, a number in the flock. */
interface Animal {
  readonly mark: string;
  readonly number: number;
}

const animals: fc.Arbitrary<Animal> = fc.record({
  mark: fc.integer({ min: 0, max: 999_999 }).map((mark) => String(mark).padStart(6, "0")),
  number: fc.integer({ min: 1, max: 99_999 }),
});

const separators = fc.constantFrom(" ", "  ", "-", " - ", ".", "/", "\u00a0");
const iso = ({ mark, number }: Animal): string => `9990${mark}${String(number).padStart(5, "0")}`;

/** The ways in which an animal's tag is printed and typed. */
const spellings = (animal: Animal): fc.Arbitrary<string | number> =>
  fc
    .record({ s: separators, lower: fc.boolean(), space: fc.constantFrom("", " ", "\t") })
    .chain(({ s, lower, space }) => {
      const long = String(animal.number).padStart(5, "0");
      const forms: (string | number)[] = [
        iso(animal),
        Number(iso(animal)),
        `0${iso(animal)}`,
        `999${s}0${animal.mark}${long}`,
        `0999${s}0${s}${animal.mark}${s}${long}`,
        `ZZ0${animal.mark}${long}`,
        `ZZ${s}0${s}${animal.mark}${s}${long}`,
        `ZZ${s}0${animal.mark}${s}${long}`,
        `ZZ${s}0${animal.mark}${s}${animal.number}`,
        `ZZ0${s}${animal.mark}${s}${animal.number}`,
        `ZZ${s}${animal.mark}${s}${long}`,
        `ZZ${s}${animal.mark}${s}${animal.number}`,
        ...(animal.mark.startsWith("0") ? [] : [`ZZ${animal.mark}${animal.number}`]),
      ];
      return fc
        .constantFrom(...forms)
        .map((form) => (typeof form === "number" ? form : space + (lower ? form.toLowerCase() : form) + space));
    });

describe("tagKey", () => {
  it("gives two spellings of one animal one key: its 15 digits", () => {
    fc.assert(
      fc.property(
        animals.chain((animal) => fc.tuple(fc.constant(animal), spellings(animal))),
        ([animal, spelling]) => {
          expect(tagKey(spelling)).toBe(iso(animal));
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("takes a flock mark without a number for no electronic number", () => {
    expect(tagKey("ZZ 123456")).toBe("ZZ123456");
    expect(tagKey("zz 012345")).toBe("ZZ012345");
    expect(tagKey("ZZ 123456 7")).toBe("999012345600007");
  });

  it("never gives two animals one key, however each is spelt", () => {
    const spelt = animals.chain((animal) => fc.tuple(fc.constant(animal), spellings(animal)));
    // Marks and numbers that share digits are where a careless rule runs them together.
    const alike = animals.chain(({ mark, number }) => {
      const shifted = `${mark}${number}`.slice(1, 7).padEnd(6, "0");
      return fc.tuple(
        fc.constant({ mark, number }),
        fc.constantFrom(
          { mark: shifted, number: Number(String(number).slice(1)) || 7 },
          { mark: `0${mark.slice(0, 5)}`, number: Number(`${mark.slice(5)}${number}`.slice(0, 5)) || 7 },
        ),
      );
    });
    const pairs = fc.oneof(
      fc.tuple(spelt, spelt),
      alike.chain(([a, b]) => fc.tuple(fc.tuple(fc.constant(a), spellings(a)), fc.tuple(fc.constant(b), spellings(b)))),
    );
    fc.assert(
      fc.property(pairs, ([[one, oneSpelt], [other, otherSpelt]]) => {
        fc.pre(iso(one) !== iso(other));
        expect(tagKey(oneSpelt)).not.toBe(tagKey(otherSpelt));
      }),
      { numRuns: 4000 },
    );
  });

  it("keeps any two electronic numbers apart, as numbers and as text, and forgets the zero a cell drops", () => {
    // Real countries only with animal numbers of more than 38 bits, which no electronic tag can hold.
    const numbered = (country: string, min: number, max: number) =>
      fc.integer({ min, max }).map((animal) => country + String(animal).padStart(12, "0"));
    const electronic = fc.oneof(
      numbered("999", 1, 274_877_906_943),
      ...["040", "056", "372", "826"].map((country) => numbered(country, 274_877_906_944, 999_999_999_999)),
    );
    fc.assert(
      fc.property(electronic, electronic, (one, other) => {
        expect(tagKey(Number(one))).toBe(one);
        expect(tagKey(`0${one}`)).toBe(one);
        if (one !== other) expect(tagKey(Number(one))).not.toBe(tagKey(other));
      }),
    );
  });

  it("changes nothing when its own answer is read again", () => {
    fc.assert(
      fc.property(
        animals.chain(spellings),
        fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 -]{0,8}$/),
        (spelling, management) => {
          expect(tagKey(tagKey(spelling))).toBe(tagKey(spelling));
          let key: string;
          try {
            key = tagKey(management);
          } catch {
            return;
          }
          expect(tagKey(key)).toBe(key);
        },
      ),
    );
  });

  it.each([
    ["management tags keep leading zeros", "042", "042"],
    ["full-width letters are letters", "ＺＺ 0 123456 00042", "999012345600042"],
    // Ten digits always fit into 38 bits; no part of Germany has the number 99 (from memory).
    ["a national number of 10 digits is filled up with zeros", "DE 99 999 99999", "276009999999999"],
    ["letters that are no country stay", "QQ 123456 00042", "QQ123456-00042"],
    ["too short for a flock mark and number", "ZZ 12345", "ZZ12345"],
    ["one tag of two numbers", "1/12", "1-12"],
    ["Arabic digits", "٠٤٢", "042"],
    ["Persian digits behind letters", "Blue ۴۲", "BLUE42"],
    ["Devanagari digits", "०४२", "042"],
    ["a Cyrillic letter that looks like ours", "А12", "A12"],
    ["a Greek letter that looks like ours", "Β12", "B12"],
    ["a Cyrillic letter that looks like none of ours", "Ж12", "Ж12"],
    ["her own number before her tag", "12 ZZ 0123456 00011", "12ZZ0123456-00011"],
    ["a name that begins like a word for none", "Lost Lass", "LOSTLASS"],
  ])("%s", (_, tag, key) => expect(tagKey(tag)).toBe(key));

  it.each([
    [1e15, "has more than 15 digits"],
    [12.5, "12.5 is not a tag number"],
    [-4, "-4 is not a tag number"],
    ["9.99012E+14", "has lost digits"],
    ["--", "has no letter or digit"],
    ["ZZ012345642", "can be read as two animals"],
    // Words and ways of shepherds: common practice, no source.
    ["ditto", "is no tag"],
    ["n/a", "is no tag"],
    ["do.", "is no tag"],
    ["see note", "is no tag"],
    ["x", "is no tag"],
    ["no", "is no tag"],
    ["Tag lost", "is no tag"],
    ["041 and 042", "names more than one animal"],
    ["041 or 042", "names more than one animal"],
    ["041 to 045", "names more than one animal"],
    ["Ditto ", '"Ditto" is no tag'],
    ["04?", '"04?" is not sure'],
    ["0?2", "is not sure"],
    ["042？", "is not sure"],
    ["11 & 12", "names more than one animal"],
    ["ZZ 0123456 00011, ZZ 0123456 00012", "names more than one animal"],
    ["ZZ 0 123456 00011 / ZZ 0 123456 00012", "names more than one animal"],
    ["999012345600011 999012345600012", "names more than one animal"],
  ])("refuses %s", (tag, message) => expect(() => tagKey(tag)).toThrow(message));
});
