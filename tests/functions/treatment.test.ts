import { describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { cautions } from "../../functions/cautions.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";

const named = (name: string): AnyFunction => {
  const found = catalogue.find((definition) => definition.name === name);
  if (!found) throw new Error(`there is no function ${name}`);
  return found;
};
const refusal = (name: string, ...given: Argument[]): string => {
  const outcome = evaluate(named(name), given);
  if (outcome.ok) throw new Error(`${name} gives ${JSON.stringify(outcome)}`);
  return outcome.message;
};

describe("a country", () => {
  it.each(["UK", "Scotland", "NI", "Northern Ireland", "Ireland", "IE", "DE", "NZ"])(
    "in the place of a region, %s, is told which rule is its own",
    (country) => {
      const said = refusal("CASCADEDAYS", 28, "meat", "authorised", country);
      expect(said).toContain('"GB" for England, Scotland and Wales');
      expect(said).toContain('"EU" for a country of the European Union or for Northern Ireland');
      expect(said).toContain("anywhere else neither is the law, so ask your vet");
    },
  );
});

describe("an injection", () => {
  it("is shared over no number of sites that nobody has given", () => {
    for (const given of [[6.1], [6.1, null], [6.1, null, null], [6.1, "", ""]])
      expect(refusal("SITEML", ...given)).toMatch(/^sites: it is blank.*the data sheet or your vet allows$/);
  });
});

describe("a footbath", () => {
  it.each(["powder", "zinc", "Zinc sulphate", "zinc sulfate"])("of %s is asked about, not guessed", (kind) => {
    expect(refusal("BATHMIX", 100, 10, kind)).toMatch(
      /does not say which.*"zinc sulphate heptahydrate".*"zinc sulphate monohydrate".*1\.6 times as strong/,
    );
  });
});

describe("another name of a footbath's product", () => {
  it.each([
    ["bluestone", 'enter "copper sulphate"'],
    ["Copper sulfate", 'enter "copper sulphate"'],
    ["zinc sulfate monohydrate", 'enter "zinc sulphate monohydrate"'],
    ["formaldehyde", 'enter "formalin"; if the target means formaldehyde'],
    ["constructor", "is not a choice here"],
  ])("%s is told how it is called here", (kind, mend) => {
    expect(refusal("BATHMIX", 100, 2, kind)).toContain(mend);
  });
});

describe("the caution of a function that touches a medicine", () => {
  it("names its withdrawal days, and the route where one is injected", () => {
    for (const { words } of [cautions.dosing, cautions.carePlan, cautions.footbath])
      expect(words).toContain("withdrawal days");
    for (const { words } of [cautions.dosing, cautions.carePlan]) expect(words).toContain("route");
  });
});
