import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { Problem } from "../../../src/cells/problem.ts";
import type { AnyFunction, Example } from "../../../src/definition/defineFunction.ts";
import { exampleInSheet } from "../../../src/definition/exampleInSheet.ts";
import { buildFormula } from "../../../src/pages/parts/buildFormula.ts";

const named = (name: string): AnyFunction => {
  const found = catalogue.find((definition) => definition.name === name);
  if (!found) throw new Error(`there is no ${name}`);
  return found;
};
const built = (name: string, typed: Record<string, string>, cell?: string) => buildFormula(named(name), typed, cell);
const faultOf = (name: string, typed: Record<string, string>, argument: string) =>
  built(name, typed).faults.get(argument);

describe("a formula from a filled form", () => {
  it("takes cells as they are, and leaves out what is left out at the end", () => {
    expect(built("FLOCKPREV", { lame: " B2:B9 ", seen: "$C$2:$C$9" }).formula).toBe("=FOOT.FLOCKPREV(B2:B9,$C$2:$C$9)");
    expect(built("PREVRANGE", { lame: "Gathers[Lame]", seen: "Gathers[Seen]", method: "" }).formula).toBe(
      "=FOOT.PREVRANGE(Gathers[Lame],Gathers[Seen])",
    );
  });

  it("leaves a gap for what is left out before something given", () => {
    expect(built("PREVRANGE", { lame: "4", seen: "20", method: "Exact" }).formula).toBe(
      '=FOOT.PREVRANGE(4,20,,,"exact")',
    );
  });

  it("writes cells of the formula's own sheet without the sheet, and of others with it", () => {
    const typed = { lame: "Gathers!B2:B9", seen: "'My flock'!C2:C9" };
    expect(built("FLOCKPREV", typed, "Gathers!F2").formula).toBe("=FOOT.FLOCKPREV(B2:B9,'My flock'!C2:C9)");
    expect(built("FLOCKPREV", typed, "'My flock'!F2").formula).toBe("=FOOT.FLOCKPREV(Gathers!B2:B9,C2:C9)");
    expect(built("FLOCKPREV", typed, "F2").formula).toBe("=FOOT.FLOCKPREV(Gathers!B2:B9,'My flock'!C2:C9)");
  });

  it("keeps a tag as text with its zeros, and a quote mark inside", () => {
    expect(built("TAGKEY", { tag: "042" }).formula).toBe('=FOOT.TAGKEY("042")');
    expect(built("TAGKEY", { tag: "ZZ 0 123456 00042" }).formula).toBe('=FOOT.TAGKEY("ZZ 0 123456 00042")');
    expect(built("LESIONNAME", { text: "=Word" }).formula).toBe("=FOOT.LESIONNAME(Word)");
  });

  it("writes a day so that it is that day in every spreadsheet", () => {
    expect(built("RECHECKDUE", { treated: "2026-03-14" }).formula).toBe("=FOOT.RECHECKDUE(DATE(2026,3,14))");
    expect(built("RECHECKDUE", { treated: "TODAY()" }).formula).toBe("=FOOT.RECHECKDUE(TODAY())");
    expect(built("RECHECKDUE", { treated: "A2+1" }).formula).toBe("=FOOT.RECHECKDUE(A2+1)");
  });

  it("takes yes and no in the ways people write them", () => {
    expect(built("CAREPLAN", { lesion: "scald", flock_has_footrot: "yes", flock_has_codd: "N" }).formula).toBe(
      '=FOOT.CAREPLAN("scald",TRUE,FALSE)',
    );
  });

  it.each([
    ["FLOCKPREV", { lame: "4" }, "seen", /^it must be given: a whole number/],
    ["FLOCKPREV", { lame: "4", seen: "many sheep" }, "seen", /^"many sheep" is not/],
    ["FLOCKPREV", { lame: "-4", seen: "20" }, "lame", /-4/],
    ["FLOCKPREV", { lame: "B2:B9,C2", seen: "20" }, "lame", /has a comma between its parts/],
    ["FLOCKPREV", { lame: "4", seen: "=SUM(B2:B9" }, "seen", /a quote mark or a bracket may be missing/],
    ["PREVRANGE", { lame: "4", seen: "20", confidence: "0,95" }, "confidence", /0,95/],
    ["PREVRANGE", { lame: "4", seen: "20", method: "guess" }, "method", /"guess" is not a choice here/],
    ["RECHECKDUE", { treated: "14/3/2026" }, "treated", /03\/04 means two days; enter it as 2026-03-14/],
    ["RECHECKDUE", { treated: "14 March 2026" }, "treated", /is not taken as a date/],
    ["LESIONNAME", { text: "limping" }, "text", /"limping" is not a lesion known here/],
    ["CAREPLAN", { lesion: "scald", severe: "maybe" }, "severe", /maybe/],
    ["RECORDCHECK", { headings: "my cases", rows: "A2:F9" }, "headings", /is no range/],
  ] as const)("%s with %j: says what is wrong with %s", (name, typed, argument, sentence) => {
    expect(faultOf(name, typed, argument)).toMatch(sentence);
    expect(built(name, typed).formula).toBeUndefined();
  });

  it("says of every argument what is wrong with it", () => {
    expect([...built("FLOCKPREV", {}).faults.keys()]).toEqual(["lame", "seen"]);
  });
});

describe("every example that a person could type", () => {
  const typable = catalogue.flatMap((definition) =>
    (definition.examples as readonly Example[])
      .filter(({ gives }) => !(gives instanceof Problem))
      .filter(({ call }) => call.length <= Object.keys(definition.parameters).length)
      .map((example) => ({ definition, formula: exampleInSheet(definition, example).formula })),
  );

  it.each(typable.map(({ formula, definition }) => [formula, definition] as const))("%s", (formula, definition) => {
    const inside = /\((.*)\)$/s.exec(formula)?.[1] ?? "";
    const pieces = inside === "" ? [] : splitArguments(inside);
    const names = Object.keys(definition.parameters);
    const typed = Object.fromEntries(pieces.map((piece, index) => [names[index], piece.trim()]));
    const { formula: again, faults } = buildFormula(definition, typed);
    expect([...faults]).toEqual([]);
    // Digits that stand for a tag are kept as text, so that none is lost.
    const wanted = pieces.map((piece, index) =>
      definition.parameters[names[index] as string].kind.holds === "text" && /^\d+$/.test(piece.trim())
        ? `"${piece.trim()}"`
        : piece.trim(),
    );
    expect(again).toBe(`=FOOT.${definition.name}(${wanted.join(",")})`);
  });
});

/** Arguments of a call, commas inside brackets and quotes left alone. */
function splitArguments(text: string): string[] {
  return text.match(/(?:"(?:[^"]|"")*"|\([^()]*\)|[^,"(])+|(?<=,|^)(?=,|$)/g) ?? [];
}
