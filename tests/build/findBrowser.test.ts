import { describe, expect, it } from "vitest";
import { findBrowser } from "../../src/build/findBrowser.ts";

const found = (platform: NodeJS.Platform, env: Record<string, string>, ...files: readonly string[]) =>
  findBrowser({ platform, env, exists: (path) => files.includes(path) });

describe("findBrowser", () => {
  it("takes the program that CHROME_PATH names before any other", () => {
    expect(found("linux", { CHROME_PATH: "/mine", PATH: "/usr/bin" }, "/usr/bin/chromium", "/mine")).toBe("/mine");
  });

  it("says so when CHROME_PATH names nothing, and does not quietly take another", () => {
    expect(() => found("linux", { CHROME_PATH: "/mine", PATH: "/usr/bin" }, "/usr/bin/chromium")).toThrow(
      "CHROME_PATH names /mine, and there is no such file.",
    );
  });

  it.each([
    ["linux", { PATH: "/usr/local/bin:/usr/bin" }, "/usr/bin/google-chrome"],
    ["linux", { PATH: "/usr/bin" }, "/usr/bin/microsoft-edge"],
    ["linux", {}, "/snap/bin/chromium"],
    ["darwin", { PATH: "/usr/bin" }, "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"],
    ["darwin", {}, "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge"],
    ["win32", { PROGRAMFILES: "C:\\Program Files" }, "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe"],
    ["win32", { "PROGRAMFILES(X86)": "C:\\P86" }, "C:\\P86\\Microsoft\\Edge\\Application\\msedge.exe"],
    ["win32", { Path: "C:\\a;D:\\b" }, "D:\\b\\chrome.exe"],
  ] as const)("finds one on %s with %j", (platform, env, program) => {
    expect(found(platform, env as Record<string, string>, program)).toBe(program);
  });

  it("finds none where there is none", () => {
    expect(found("linux", { PATH: "/usr/bin" })).toBeUndefined();
    expect(found("win32", {}, "/usr/bin/chromium")).toBeUndefined();
    expect(found("freebsd", {}, "/snap/bin/chromium")).toBeUndefined();
  });
});
