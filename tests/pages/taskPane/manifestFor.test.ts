import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { excelManifest } from "../../../src/build/excelManifest.ts";
import { manifestFor } from "../../../src/pages/taskPane/site/manifestFor.ts";

const template = readFileSync("manifest/manifest.xml", "utf8");
const built = (baseUrl: string): string => excelManifest(template, { baseUrl, version: "0.1.0" });

it.each(["https://farm.example.org", "https://farm.example.org:8443/a/feet", "https://x.example.org/it's&more"])(
  "makes for %s what a build for that address makes",
  (here) => {
    expect(manifestFor(built("https://localhost:3000"), here)).toBe(built(here));
    expect(manifestFor(built("https://old.example.org/soundfold"), here)).toBe(built(here));
  },
);

it("makes none for an address that Excel refuses, nor of another text", () => {
  for (const here of ["http://farm.example.org", "file:///C:/soundfold", "farm"])
    expect(manifestFor(built("https://localhost:3000"), here)).toBeUndefined();
  expect(manifestFor("<OfficeApp/>", "https://farm.example.org")).toBeUndefined();
});

it("names a page for support that is there", () => {
  expect(built("https://localhost:3000")).toContain('<SupportUrl DefaultValue="https://localhost:3000/support.html"/>');
});
