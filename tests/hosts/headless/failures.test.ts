import { describe, expect, it } from "vitest";
import { aboutFunction } from "../../../functions/records/about.ts";
import { createEngine } from "../../../src/hosts/headless/createEngine.ts";
import { univerInNode } from "../../../src/hosts/headless/univerInNode.ts";
import { localClock } from "../../../src/hosts/localClock.ts";

const faulty = {
  ...aboutFunction,
  name: "FAULTY",
  compute: () => {
    throw new RangeError("a fault of the program");
  },
};
const calculate = (formula: string) =>
  createEngine([faulty], univerInNode(), localClock).calculate({
    dateSystem: 1900,
    names: [],
    sheets: [{ name: "One", cells: [{ row: 0, column: 0, value: null, formula }] }],
  });

describe("a fault of the program", () => {
  it("is heard of, whoever worked out the formula", async () => {
    await expect(calculate("=FOOT.FAULTY()")).rejects.toThrow("a fault of the program");
    await expect(calculate("=IF(TRUE,FOOT.FAULTY())")).rejects.toThrow("a fault of the program");
  });
});
