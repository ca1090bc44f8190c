import { describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { Problem } from "../../src/cells/problem.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { asArgument, mismatch } from "./exampleCall.ts";

describe.each(catalogue.map((definition) => [definition.name, definition] as const))("%s", (_, definition) => {
  it.each(definition.examples.map((example, index) => [example.shows ?? `example ${index + 1}`, example] as const))(
    "%s",
    (_shows, { call, gives }) => {
      expect(mismatch(evaluate(definition, call.map(asArgument)), gives)).toBeUndefined();
    },
  );

  it("names an argument of its own in each refusal", () => {
    for (const { gives } of definition.examples) {
      if (!(gives instanceof Problem)) continue;
      const [, argument = ""] = /^([a-z_]+)(?:, row \d+)?: /.exec(gives.message) ?? [];
      expect(Object.keys(definition.parameters), gives.message).toContain(argument);
    }
  });
});
