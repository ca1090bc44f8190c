import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { carePlan } from "../../../../src/core/treatment/carePlans/carePlan.ts";
import { gravity } from "../../../../src/core/words/gravity.ts";
import { lesions } from "../../../../src/core/words/lesionName.ts";
import { namedLesion } from "../../../../src/core/words/namedLesion.ts";

const page = readFileSync(new URL("../../../../docs/methods/care.md", import.meta.url), "utf8");
const rows = [...page.matchAll(/^\| (.+?) \| (.+?) \| (.+?) \|$/gm)]
  .map(([, step = "", basis = "", sure = ""]) => ({ step, basis, sure }))
  .filter(({ step }) => step !== "step" && step !== "---");

const both = [false, true];
const steps = new Set(
  [...lesions, "abcess? + scald"].flatMap((words) =>
    both.flatMap((flockHasFootrot) =>
      both.flatMap((flockHasCodd) =>
        both.flatMap((pusDrained) =>
          both.flatMap((severe) =>
            carePlan(namedLesion(words), { flockHasFootrot, flockHasCodd, pusDrained, severe }).map(({ what }) => what),
          ),
        ),
      ),
    ),
  ),
);

describe("docs/methods/care.md", () => {
  it("says of every step what it rests on, and of nothing else", () => {
    expect(steps.size).toBeGreaterThan(60);
    expect([...steps].filter((what) => !rows.some(({ step }) => step === what))).toEqual([]);
    expect(rows.filter(({ step }) => !steps.has(step))).toEqual([]);
  });

  it("says how sure that is, in one of four ways, and names a source wherever there is one", () => {
    for (const { step, basis, sure } of rows) {
      expect([step, ["read", "read about", "from memory", "common practice, no source"].includes(sure)]).toEqual([
        step,
        true,
      ]);
      if (sure === "read" || sure === "read about") expect([step, basis]).not.toEqual([step, sure]);
      expect(basis.length).toBeGreaterThan(10);
    }
  });

  it("gives the order of gravity as it is", () => expect(page).toContain(`common practice: ${gravity.join(", ")}.`));
});
