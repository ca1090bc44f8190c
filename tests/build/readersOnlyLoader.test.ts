import { expect, it } from "vitest";
import readersOnly from "../../src/build/readersOnlyLoader.ts";

it("leaves the computation out of a definition, and nothing else", () => {
  const kept = readersOnly(`
    const compute = () => 1;
    export const f = defineFunction({ name: "F", rowFault: ({ lame }, index) => fault(lame, index), compute: ({ lame }) => share(lame, { compute: 1 }), examples: [{ call: [dayOf("2026-02-10")] }] });
    other({ compute: 2 });`);
  expect(kept.replaceAll(/\s+/g, " ").trim()).toBe(
    'const compute = () => 1; export const f = defineFunction({ name: "F", examples: [{ call: [dayOf("2026-02-10")] }] }); other({ compute: 2 });',
  );
});
