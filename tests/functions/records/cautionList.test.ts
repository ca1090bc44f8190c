import { expect, it } from "vitest";
import { cautions } from "../../../functions/cautions.ts";
import { cautionListFunction } from "../../../functions/records/cautionList.ts";
import { evaluate } from "../../../src/definition/evaluate.ts";
import { topics } from "../../../src/definition/topics.ts";

it("CAUTIONS lists every caution once, in the order of the topics", () => {
  const all = evaluate(cautionListFunction, []);
  if (!all.ok) throw new Error(all.message);
  const [heading, ...lines] = all.cells;
  expect(heading).toEqual(["topic", "caution"]);
  expect(lines.map(([, words]) => words).sort()).toEqual(
    Object.values(cautions)
      .map(({ words }) => words)
      .sort(),
  );
  const places = lines.map(([topic]) => Object.keys(topics).indexOf(topic as string));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places).not.toContain(-1);
});
