import { expect, it } from "vitest";
import { bounds, runKind } from "./runKind.ts";
import { worstKinds } from "./worstKinds.ts";

it.each(worstKinds.map((kind) => [kind.name, kind] as const))(
  "%s is worked out within the bounds, or left and said",
  async (_, kind) => {
    expect(kind.make().length).toBeLessThan(1_000_000);
    const { told, trouble, seconds, megabytes } = await runKind(kind);
    expect([trouble, told === undefined]).toEqual(["", false]);
    expect(seconds).toBeLessThan(bounds.seconds);
    expect(megabytes).toBeLessThan(bounds.megabytes);
    const { cells = {}, reasons = [] } = told ?? {};
    const { ends } = kind;
    if (ends instanceof RegExp) expect(reasons.join("\n")).toMatch(ends);
    else
      for (const [address, value] of Object.entries(ends)) expect([address, cells[address]]).toEqual([address, value]);
  },
  600_000,
);
