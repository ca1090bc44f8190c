import { expect, it } from "vitest";
import { pageName, pageOf } from "../../../src/build/release/pageOf.ts";

const page = pageOf(
  "# A & B\n\nSee [more](README.md#its-own-heading) and [the list](../functions/README.md).\n\n## Its `own` heading\n\n| a | b |\n| --- | --- |\n| 1 | `x < y` |\n",
);

it("leads to the pages as they are named in the release, and to headings in them", () => {
  expect(page).toContain('<a href="index.html#its-own-heading">more</a>');
  expect(page).toContain('<a href="../functions/index.html">the list</a>');
  expect(page).toContain('<h2 id="its-own-heading">Its <code>own</code> heading</h2>');
  expect([pageName("README.md"), pageName("FLOCKPREV.md")]).toEqual(["index.html", "FLOCKPREV.html"]);
});

it("is titled by its first heading, says what it may load, and keeps signs as they are meant", () => {
  expect(page).toContain("<title>A &amp; B</title>");
  expect(page).toContain("default-src 'none'");
  expect(page).toContain("<td><code>x &lt; y</code></td>");
  expect(page).not.toContain("<script");
});
