import { readFileSync } from "node:fs";
import { SaxesParser } from "saxes";
import { expect, it } from "vitest";
import { hostHeaders } from "../../../src/build/release/hostHeaders.ts";

const pages = ["src/pages/taskPane/taskPane.html", "src/pages/practice/practice.html"];

it.each(pages)("%s: every host is told the policy that the page states itself, and to guess no kinds", (path) => {
  const page = readFileSync(path, "utf8");
  const policy = /content="(default-src[^"]+)"/.exec(page)?.[1] ?? "";
  expect(policy).toContain("default-src 'none'");
  const files = hostHeaders(page, "functions.json");
  expect([...files.keys()]).toEqual(["_headers", ".htaccess", "web.config", "nginx.conf.txt"]);
  for (const [name, text] of files) {
    expect(text, name).toContain(policy);
    expect(text, name).toMatch(/X-Content-Type-Options.*nosniff/);
    expect(text, name).toMatch(/Cache-Control.*no-cache/);
    expect(text, name).toMatch(/functions\\?\.json[\s\S]*Access-Control-Allow-Origin/);
    expect(hostHeaders(page).get(name), name).not.toContain("Access-Control");
  }
});

it("web.config is well-formed, and a page without a policy is refused", () => {
  const parser = new SaxesParser();
  const names: string[] = [];
  parser.on("opentag", ({ name }) => names.push(name));
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(hostHeaders(readFileSync(pages[0] ?? "", "utf8"), "functions.json").get("web.config") ?? "").close();
  expect(names.filter((name) => name === "add")).toHaveLength(5);
  expect(() => hostHeaders("<html></html>")).toThrow("no content security policy");
});
