import { describe, expect, it } from "vitest";
import { wrappedLines } from "../../../src/pages/practice/grid/wrappedLines.ts";

describe("the lines a text takes", () => {
  it.each([
    ["", 9, 1],
    ["tag", 9, 1],
    ["days to wait", 12, 1],
    ["days to wait", 9, 2],
    ["days to wait", 4, 3],
    ["one\ntwo three", 20, 2],
    ["abcdefghij", 4, 3],
    ["a abcdefgh b", 4, 4],
  ])("%j in lines of %d characters: %d", (text, room, lines) => {
    expect(wrappedLines(text, room)).toBe(lines);
  });
});
