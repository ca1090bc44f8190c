import { expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { pageLines } from "../../../src/pages/practice/printing/pageLines.ts";

const named = { file: "book.xlsx", sheet: "Cases", now: dayOf("2026-03-14") + 0.75 };
const sheet = (inside: string, settings = ""): string =>
  `<worksheet><sheetData><row/></sheetData><headerFooter${settings}>${inside}</headerFooter></worksheet>`;
const box = (rules: string, name: string): string | undefined =>
  new RegExp(`@${name} \\{ content: (.*?);`).exec(rules)?.[1];

// The codes are those of ECMA-376 Part 1 §18.3.1.39.
it("keeps texts, the numbers of pages, file and sheet, each in its third of the line", () => {
  const rules = pageLines(sheet("<oddFooter>&amp;L&amp;F, &amp;A&amp;RPage &amp;P of &amp;N</oddFooter>"), named);
  expect(box(rules, "bottom-left")).toBe('"book.xlsx" ", " "Cases"');
  expect(box(rules, "bottom-right")).toBe('"Page " counter(page) " of " counter(pages)');
  expect(box(rules, "bottom-center")).toBe("none");
  expect(box(rules, "top-left")).toBe("none");
});

it("a line without a third stands in the middle; day, hour and & are written out", () => {
  const rules = pageLines(sheet("<oddHeader>Ewes &amp;&amp; lambs &amp;D &amp;T</oddHeader>"), named);
  expect(box(rules, "top-center")).toBe('"Ewes " "&" " lambs " "2026-03-14" " " "18:00"');
});

it("no letter is smaller than 8 points, and kinds of letters are left out, not printed", () => {
  const rules = pageLines(
    sheet('<oddFooter>&amp;L&amp;"Arial,Bold"&amp;6small&amp;R&amp;14&amp;B&amp;K00FF00large</oddFooter>'),
    named,
  );
  expect(box(rules, "bottom-left")).toBe('"small"');
  expect(box(rules, "bottom-right")).toBe('"large"');
  expect([...rules.matchAll(/font: (\d+)pt/g)].map(([, size]) => size)).toEqual(["8", "14"]);
});

it("a reckoned number of a page is left out, as it would be wrong", () => {
  expect(box(pageLines(sheet("<oddFooter>&amp;P+3</oddFooter>"), named), "bottom-center")).toBe("none");
});

it("has rules of their own for the first page and the even ones, where the file has", () => {
  const lines = "<oddFooter>all</oddFooter><evenFooter>even</evenFooter><firstFooter>first</firstFooter>";
  const rules = pageLines(sheet(lines, ' differentOddEven="1" differentFirst="1"'), named).split("\n");
  expect(rules.map((rule) => [/^@page( :\w+)?/.exec(rule)?.[1], box(rule, "bottom-center")])).toEqual([
    [undefined, '"all"'],
    [" :left", '"even"'],
    [" :first", '"first"'],
  ]);
  expect(pageLines(sheet(lines), named).split("\n")).toHaveLength(1);
});

it("no text of a file ends its rule", () => {
  const rules = pageLines(sheet('<oddFooter>a"; } &lt;/style&gt; \\ b</oddFooter>'), named);
  expect(box(rules.replace(/;(?= \})/, ""), "bottom-center")).not.toContain("</");
  expect(rules).toContain('"a\\22 ; } \\3c /style> \\5c  b"');
});

it("there are none where the file has none", () => {
  expect(pageLines("<worksheet><sheetData/></worksheet>", named)).toBe("");
});
