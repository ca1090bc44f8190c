import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { runParity } from "./runParity.ts";

it("every example of every function gives the same answer in every host, as docs/parity.md says", async () => {
  const { page, different } = await runParity();
  expect(different).toEqual([]);
  expect(readFileSync("docs/parity.md", "utf8"), "run npm run parity").toBe(page);
}, 600_000);
