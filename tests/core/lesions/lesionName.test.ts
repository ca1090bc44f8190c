import { describe, expect, it } from "vitest";
import { lesionMix } from "../../../src/core/lesions/lesionMix.ts";
import { findLesion, lesionName, lesions } from "../../../src/core/lesions/lesionName.ts";

describe("lesionName", () => {
  it("gives every standard name back, in any capitals and spacing", () => {
    for (const lesion of lesions) {
      expect(lesionName(lesion)).toBe(lesion);
      expect(lesionName(`  ${lesion.toUpperCase().replaceAll(" ", "-")} `)).toBe(lesion);
    }
  });

  // Everyday words: common practice, no source.
  it.each([
    ["Scald", "interdigital dermatitis"],
    ["foot rot", "footrot"],
    ["CODD", "contagious ovine digital dermatitis"],
    ["WLA", "white line abscess"],
    ["shelly", "shelly hoof"],
    ["toe fibroma", "toe granuloma"],
    ["joint ill", "joint infection"],
    ["none", "no lesion"],
  ])("%s is %s", (word, lesion) => {
    expect(lesionName(word)).toBe(lesion);
  });

  // Prevalence and temporal dynamics of white line disease in sheep (2021), Veterinary Sciences 8:116, abstract read: "white
  // line disease (WLD), also known as shelly hoof". White line degeneration: Conington and others 2010, abstract read.
  it.each(["White line disease", "WLD", "white line degeneration"])("%s of sheep is shelly hoof", (word) => {
    expect(lesionName(word)).toBe("shelly hoof");
  });

  it("does not guess", () => {
    expect(findLesion("white line")).toBeUndefined();
    expect(findLesion("footrot and scald")).toBeUndefined();
    expect(findLesion("")).toBeUndefined();
    expect(findLesion("constructor")).toBeUndefined();
  });
});

describe("lesionMix", () => {
  it("drops no case", () => {
    const mix = lesionMix(["scald", "??", "limping", "footrot", "FR"], 0.95);
    expect(mix.map(({ name, cases }) => [name, cases])).toEqual([
      ["not recognised", 2],
      ["footrot", 2],
      ["interdigital dermatitis", 1],
    ]);
    expect(mix.reduce((total, { cases }) => total + cases, 0)).toBe(5);
  });
});
