import { describe, expect, it } from "vitest";
import sheetOnly from "../../src/build/sheetOnlyLoader.ts";

const withoutSpace = (text: string) => text.replaceAll(/\s+/g, " ").trim();

describe("sheetOnly", () => {
  it("leaves out of a definition what only readers need", () => {
    const kept = sheetOnly(`
      export const f = defineFunction({
        name: "F", summary: "A, b", questions: ["x"], notes: [], parameters: {},
        result: single("a", "text"), caution: undefined, sources: [sources.practice],
        compute: () => ({ summary: "kept", examples: 1 }),
        examples: [{ call: [], gives: problem("no") }]
      });`);
    expect(withoutSpace(kept)).toBe(
      withoutSpace(
        'export const f = defineFunction({ name: "F", parameters: {}, result: single("a", "text"), compute: () => ({ summary: "kept", examples: 1 }), });',
      ),
    );
  });

  it("leaves out the description of a parameter, and keeps its default", () => {
    const kept = sheetOnly(`
      import { column as columnOf, oneOr } from "../../src/reading/parameter.ts";
      export const a = { lame: columnOf(counts("sheep"), "Lame sheep", { repeats: true }), how: oneOr(k, "exact", "How") };`);
    expect(kept).toContain('columnOf(counts("sheep"), "", { repeats: true })');
    expect(kept).toContain('oneOr(k, "exact", "")');
  });

  it("says of a date that it may go when nothing uses it", () => {
    const kept = sheetOnly('import { dayOf } from "../../src/cells/day.ts";\nconst first = [dayOf("2026-02-10")];');
    expect(kept).toContain('[/* @__PURE__ */ dayOf("2026-02-10")]');
  });

  it("leaves other objects and calls alone", () => {
    const source = 'export const s = { summary: "x", sources: 1 };\nother({ summary: "y" }); column("z");';
    expect(sheetOnly(source)).toBe(source);
  });
});
