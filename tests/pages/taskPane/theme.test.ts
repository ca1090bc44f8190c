import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { themeOf } from "../../../src/pages/taskPane/theme.ts";

const theme = (bodyBackgroundColor: string) => themeOf({ officeTheme: { bodyBackgroundColor } });

// Grounds of the program's looks, from memory: colourful, dark grey, black, white.
it.each([
  ["#E6E6E6", "light"],
  ["#666666", "dark"],
  ["#262626", "dark"],
  ["#FFFFFF", "light"],
  ["", undefined],
] as const)("%s is %s", (colour, worn) => {
  expect(theme(colour)).toBe(worn);
  expect(themeOf({})).toBeUndefined();
});

it("the dark look is the same whoever asks for it", () => {
  const css = readFileSync("src/pages/parts/look.css", "utf8");
  const colours = (selector: string): readonly string[] => {
    const [, body = ""] = new RegExp(`${selector.replace(/[[\](){}:"=-]/g, "\\$&")} \\{([^}]+)\\}`).exec(css) ?? [];
    return [...body.matchAll(/--[\w-]+: [^;]+/g)].map(([colour]) => colour);
  };
  expect(colours(':root:not([data-theme="light"])')).toHaveLength(14);
  expect(colours(':root[data-theme="dark"]')).toEqual(colours(':root:not([data-theme="light"])'));
});
