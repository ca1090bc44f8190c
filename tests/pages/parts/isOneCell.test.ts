import { expect, it } from "vitest";
import { isOneCell } from "../../../src/pages/parts/isOneCell.ts";

it.each(["A1", "$xfd$9", "Gathers!B2", "'My flock'!B2", "'It''s'!B2", " B2 "])("%s is one cell", (text) => {
  expect(isOneCell(text)).toBe(true);
});

it.each(["", "A1:A2", "A", "1", "A0", "TODAY()", "Gathers!", "ABCD1", "Table[Lame]"])("%s is not", (text) => {
  expect(isOneCell(text)).toBe(false);
});
