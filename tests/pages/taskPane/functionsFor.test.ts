import { strFromU8 } from "fflate";
import { expect, it } from "vitest";
import { addInFiles } from "../../../src/build/addInFiles.ts";
import { functionsFor } from "../../../src/pages/taskPane/site/functionsFor.ts";

function built(baseUrl: string): string {
  const content = addInFiles(baseUrl).get("functions.json") ?? "";
  return typeof content === "string" ? content : strFromU8(content);
}

it.each(["https://farm.example.org", "https://farm.example.org:8443/a/feet", "https://x.example.org/it's&\"more"])(
  "makes for %s what a build for that address makes",
  (here) => {
    const made = built(here);
    expect(made).toContain(JSON.stringify(`${here}/taskpane.html#CLEARDATE`));
    expect(functionsFor(built("https://localhost:3000"), here)).toBe(made);
  },
);

it("leaves a list for that address as it is", () => {
  const made = built("https://farm.example.org/feet");
  expect(functionsFor(made, "https://farm.example.org/feet")).toBe(made);
});
