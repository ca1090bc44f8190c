import { describe, expect, it } from "vitest";
import { flockSize, heldTooMany, numberings } from "../../src/build/methods/heldTooMany.ts";

describe("animals held for a tag that is alike, in flocks whose tags are all right", () => {
  it.each(Object.entries(numberings))("with %s are fewer than 1 in 1,000", (_, tagOf) =>
    expect(heldTooMany(tagOf)).toBeLessThan(flockSize / 1000),
  );
});
