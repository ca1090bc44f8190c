import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { functionSearch } from "../../../src/pages/parts/functionSearch.ts";

const search = functionSearch(catalogue);
const names = (question: string) => search(question).map(({ name }) => name);

describe("a search in plain words", () => {
  // What is asked, and a function that must be among the first three found.
  it.each([
    ["when can she be sold", "CLEARDATE"],
    ["can I sell these lambs", "SALECHECK"],
    ["how many sheep are lame", "FLOCKPREV"],
    ["withdrawal period", "CLEARDATE"],
    ["which sheep keep going lame", "REPEATS"],
    ["how much to inject", "DOSEML"],
    ["footbath how many litres", "BATHLITRES"],
    ["footbath how much zinc", "BATHMIX"],
    ["quarantine bought in sheep", "QUARANTINEEND"],
    ["is it getting better", "RATECHANGE"],
    ["is this worse than usual", "LAMEWATCH"],
    ["how many sheep to look at", "SAMPLETOESTIMATE"],
    ["what does lameness cost me", "LAMECOST"],
    ["mistakes in my records", "RECORDCHECK"],
    ["who must be looked at again", "DUELIST"],
    ["are we worse than other farms", "FLOCKRANK"],
    ["what to do about scald", "CAREPLAN"],
    ["abattoir", "SALECHECK"],
    ["can they go to the abattoir", "SALECHECK"],
    ["compare with other farms", "FLOCKRANK"],
    ["flokprev", "FLOCKPREV"],
    ["withdrawl", "CLEARDATE"],
    ["LAMEW", "LAMEWATCH"],
  ])("%s → %s", (question, name) => {
    expect(names(question).slice(0, 3)).toContain(name);
  });

  // Words as shepherds and advisers use them (common practice, no source), and the function that is meant.
  it.each([
    ["abattoir", "SALECHECK"],
    ["slaughter", "SALECHECK"],
    ["market", "SALECHECK"],
    ["compare with other farms", "FLOCKRANK"],
    ["Fit to travel", "CAREPLAN"],
    ["scald", "CAREPLAN"],
    ["CODD", "CAREPLAN"],
    ["trimming", "CAREPLAN"],
    ["culling", "REPEATS"],
    ["new sheep", "QUARANTINEEND"],
    ["tups", "PREVBY"],
    ["how many lame", "FLOCKPREV"],
    ["limping", "FLOCKPREV"],
    ["report for the vet", "MEDICINEUSE"],
    ["spread", "FLOCKSPREAD"],
    ["spreading", "KEEPAPART"],
    ["isolation", "KEEPAPART"],
    ["withdrawal", "CLEARDATE"],
    ["when can I eat it", "CLEARDATE"],
    ["is the treatment working", "SOUNDBY"],
    ["better than last year", "PREVCHANGE"],
    ["how much medicine to buy", "BATCHML"],
    ["inspector", "RECORDCHECK"],
  ])("%s → %s, first of all", (question, name) => {
    expect(names(question)[0]).toBe(name);
  });

  it("finds all three of the footbath first of all", () => {
    expect(names("footbath").slice(0, 3).sort()).toEqual(["BATHLITRES", "BATHMIX", "BATHSHEEP"]);
  });

  it("finds every function by its name, first of all", () => {
    for (const { name } of catalogue) expect(names(` ${name.toLowerCase()}`)[0], name).toBe(name);
  });

  it("finds every function by each question that it answers, among the first five", () => {
    const missed = catalogue.flatMap(({ name, questions }) =>
      questions.filter((question) => !names(question).slice(0, 5).includes(name)).map((question) => [question, name]),
    );
    expect(missed).toEqual([]);
  });

  it("finds nothing for words that nobody here knows, or that every question holds", () => {
    expect(names("xylophone zzz")).toEqual([]);
    expect(names("what is the")).toEqual([]);
  });
});
