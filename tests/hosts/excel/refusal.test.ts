import { expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { dayOf, days1904 } from "../../../src/cells/day.ts";
import { evaluate } from "../../../src/definition/evaluate.ts";
import { refusal } from "../../../src/hosts/excel/refusal.ts";

const refuses = refusal(catalogue);

it("tells the sentence with which a function refuses, and nothing where it answers", () => {
  expect(refuses("FLOCKPREV", [21, 20])).toEqual({
    code: "#VALUE!",
    message: "lame: 21 is more than the 20 seen; enter the lame sheep among those seen",
  });
  expect(refuses("FLOCKPREV", [4, 20])).toBeUndefined();
  expect(refuses("FLOKPREV", [21, 20])).toBeUndefined();
});

it("reads days by the date system of the workbook", () => {
  const definition = catalogue.find(({ name }) => name === "CLEARDATE");
  if (!definition) throw new Error("CLEARDATE is gone");
  const given = [dayOf("2026-02-10") - days1904, "soon"];
  const outcome = evaluate(definition, given, { dateSystem: 1904 });
  expect(outcome.ok).toBe(false);
  expect(refuses("CLEARDATE", given, { dateSystem: 1904 })).toEqual({
    code: outcome.ok ? "" : outcome.code,
    message: outcome.ok ? "" : outcome.message,
  });
});
