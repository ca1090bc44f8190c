import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, posix } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { version } from "../../functions/version.ts";

const folder = mkdtempSync(join(tmpdir(), "soundfold-package-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: unknown;
  readonly errors: string;
}

const run = (out: string, baseUrl: string, zone: string): Promise<Ended> =>
  new Promise((resolve) => {
    const given = ["run", "--silent", "package", "--", "--env", `baseUrl=${baseUrl}`, "--out", join(folder, out)];
    const options = { env: { ...process.env, TZ: zone }, shell: process.platform === "win32" };
    execFile("npm", given, options, (error, _, errors) => resolve({ code: error ? error.code : 0, errors }));
  });

const zipIn = (out: string): Buffer => readFileSync(join(folder, out, `soundfold-${version}.zip`));

describe("npm run package", () => {
  const baseUrl = "https://add-in.invalid/soundfold";
  let files: Readonly<Record<string, Uint8Array>>;
  const text = (path: string): string => strFromU8(files[path] ?? new Uint8Array());

  beforeAll(async () => {
    expect(await run("first", `${baseUrl}/`, "Pacific/Auckland")).toEqual({ code: 0, errors: "" });
    files = unzipSync(zipIn("first"));
  }, 600_000);

  it("gives the same bytes in another time zone and folder", async () => {
    expect(await run("second", baseUrl, "America/St_Johns")).toEqual({ code: 0, errors: "" });
    expect(zipIn("second").equals(zipIn("first"))).toBe(true);
  }, 600_000);

  it("holds what each spreadsheet needs", () => {
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining([
        "README.txt",
        "SHA256SUMS",
        "benchmarks.html",
        "bounds.html",
        "changelog.html",
        `command/soundfold-${version}.tgz`,
        "excel/SHA256SUMS",
        "excel/functions.js",
        "excel/functions.json",
        "excel/index.html",
        "excel/manifest.xml",
        "excel/privacy.html",
        "excel/site.js",
        "excel/support.html",
        "google-sheets/Code.gs",
        "google-sheets/appsscript.json",
        "index.html",
        "libreoffice/soundfold.oxt",
        "libreoffice/workbooks/flock-comparison-empty.xlsx",
        "libreoffice/workbooks/flock-foot-book-empty.xlsx",
        "libreoffice/workbooks/visit-sheet-empty.xlsx",
        "licences/LICENSE.txt",
        "licences/bundled.txt",
        "safety.html",
        "sbom.cdx.json",
        "soundfold.html",
      ]),
    );
    expect(Object.keys(files).filter((path) => path.startsWith("practice/"))).toEqual([
      "practice/.htaccess",
      "practice/_headers",
      "practice/flock-comparison-empty.xlsx",
      "practice/flock-foot-book-empty.xlsx",
      "practice/flock-foot-book.xlsx",
      "practice/functions.js",
      "practice/icon-64.png",
      "practice/index.html",
      "practice/nginx.conf.txt",
      "practice/practice.css",
      "practice/practice.js",
      "practice/visit-sheet-empty.xlsx",
      "practice/web.config",
    ]);
    for (const { name } of catalogue) {
      expect(text("excel/functions.js"), name).toContain(`"${name}"`);
      expect(text("google-sheets/Code.gs"), name).toContain(`function FOOT_${name}(`);
      expect(text("practice/functions.js"), name).toContain(`"${name}"`);
    }
    expect(Object.keys(unzipSync(files["libreoffice/soundfold.oxt"] ?? new Uint8Array()))).toContain("answerLines.cjs");
  });

  it("holds a page for each function, and no page that leads to one that is not there", () => {
    for (const { name } of catalogue) expect(files, name).toHaveProperty([`functions/${name}.html`]);
    // Whoever takes the release has no reader of Markdown.
    expect(Object.keys(files).filter((path) => path.endsWith(".md"))).toEqual([]);
    const pages = Object.keys(files).filter(
      (path) =>
        /^(?:[^/]+|(?:install|functions|methods)\/.*)$/.test(path) &&
        path.endsWith(".html") &&
        path !== "soundfold.html",
    );
    expect(pages.length).toBeGreaterThan(catalogue.length);
    const anchors = (path: string): ReadonlySet<string | undefined> =>
      new Set([...text(path).matchAll(/ id="([^"]+)"/g)].map(([, id]) => id));
    const astray = pages.flatMap((path) =>
      [...text(path).matchAll(/(?:href|src)="(?!https?:)([^"#]*)(?:#([^"]+))?"/g)].flatMap(([, link = "", anchor]) => {
        const target = link === "" ? path : posix.normalize(posix.join(posix.dirname(path), link));
        const isThere = target in files && (anchor === undefined || anchors(target).has(anchor));
        return isThere ? [] : [`${path}: ${link}#${anchor}`];
      }),
    );
    expect(astray).toEqual([]);
  });

  it("leads from its first page to every page and every program, and tells what stands on top of it", () => {
    const links = [...text("index.html").matchAll(/href="(?!https?:)([^"#]+)"/g)].map(([, link]) => link);
    expect(links).toEqual(
      expect.arrayContaining([
        "soundfold.html",
        "excel/index.html",
        "libreoffice/soundfold.oxt",
        "google-sheets/Code.gs",
        `command/soundfold-${version}.tgz`,
        "functions/index.html",
        "install/index.html",
        "methods/index.html",
        "benchmarks.html",
        "changelog.html",
        "safety.html",
        "scale.html",
      ]),
    );
    // An address that is only for the person who serves the folder is nothing to press.
    expect(text("index.html")).not.toContain(`href="${baseUrl}`);
    expect(text("install/index.html")).not.toMatch(/>[\w-]+\.md</);
    const onTop = new Set(Object.keys(files).map((path) => (path.includes("/") ? path.replace(/\/.*/, "/") : path)));
    onTop.delete("README.txt");
    for (const name of onTop)
      expect(text("README.txt"), name).toMatch(new RegExp(`^${name.replace(".", "\\.")} `, "m"));
  });

  it("is made for the address given, and everything the manifest names there is in it", () => {
    const addresses = text("excel/manifest.xml").match(/https:\/\/add-in\.invalid[^"<]*/g) ?? [];
    expect(addresses.length).toBeGreaterThan(4);
    for (const address of addresses) {
      const path = address.slice(baseUrl.length + 1).replace(/\?.*$/, "");
      expect(address === new URL(baseUrl).origin || `excel/${path}` in files, address).toBe(true);
    }
    expect(text("README.txt")).toContain(`${baseUrl}\n`);
  });

  it("holds every workbook that is kept, and none that a command left behind", () => {
    const kept = readdirSync("samples").filter((name) => name.endsWith(".xlsx") && !name.endsWith("-worked-out.xlsx"));
    expect(kept.length).toBeGreaterThan(0);
    const handedOut = Object.keys(files).filter((path) => path.startsWith("workbooks/"));
    expect(handedOut.sort()).toEqual(kept.map((name) => `workbooks/${name}`).sort());
  });

  it("gives the checksum of every file, once for all and once for the web folder", () => {
    const sums = (paths: readonly string[], folder = "") =>
      paths
        .map(
          (path) =>
            `${createHash("sha256")
              .update(files[path] ?? "")
              .digest("hex")}  ${path.slice(folder.length)}\n`,
        )
        .join("");
    const others = (list: string, prefix = "") =>
      Object.keys(files)
        .filter((path) => path.startsWith(prefix) && path !== list)
        .sort();
    expect(text("SHA256SUMS")).toBe(sums(others("SHA256SUMS")));
    expect(text("excel/SHA256SUMS")).toBe(sums(others("excel/SHA256SUMS", "excel/"), "excel/"));
  });

  it("names the licence of each package that is bundled, and the bill lists the same packages", () => {
    const listed = text("licences/bundled.txt").matchAll(/^={80}\n\n(\S+) (\S+) \((.+)\)$/gm);
    const licences = new Map([...listed].map(([, name, its, licence]) => [`${name}@${its}`, licence]));
    // What a bundle cannot do without, found here by its own marks in the code and not by the list of modules.
    expect(text("excel/functions.js")).toContain("[big.js] ");
    const names = [...licences.keys()].map((key) => key.slice(0, key.lastIndexOf("@")));
    expect(names).toEqual(
      expect.arrayContaining(["@univerjs/core", "big.js", "date-fns", "esbuild", "preact", "uplot", "webpack"]),
    );
    expect(names).not.toContain("typescript");
    // The embedded spreadsheet is in the practice sheet and the command, and nowhere else.
    expect(text("licences/bundled.txt")).toMatch(
      /^@univerjs\/core .*\n.*\nin: soundfold.html, practice, command\/\S+\.tgz$/m,
    );
    for (const [name, licence] of licences)
      expect(licence, name).toMatch(/^(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0)$/);
    const { components } = JSON.parse(text("sbom.cdx.json")) as {
      components: { name: string; version: string; purl: string; hashes: unknown[]; licenses: unknown[] }[];
    };
    expect(components.map((part) => `${part.name}@${part.version}`).sort()).toEqual([...licences.keys()].sort());
    for (const { purl, hashes, licenses } of components)
      expect([purl.startsWith("pkg:npm/"), hashes.length, licenses.length], purl).toEqual([true, 1, 1]);
  });

  it("says nothing of the time, the machine or the folder it was made in", () => {
    for (const path of Object.keys(files).filter((name) => /\.(js|json|xml|html|css|gs|txt)$/.test(name))) {
      expect(text(path), path).not.toContain(process.cwd());
      // Code may use these words for something else.
      if (path.endsWith(".json")) expect(text(path).match(/"(timestamp|serialNumber)"/g), path).toBeNull();
    }
  });

  it("refuses an address that Excel would refuse, in one sentence, and writes nothing", async () => {
    const { code, errors } = await run("refused", "http://example.org", "UTC");
    expect(code).toBe(2);
    expect(errors).toBe(
      'baseUrl "http://example.org" is neither https nor on localhost; give an address such as https://example.org/soundfold.\n',
    );
    expect(existsSync(join(folder, "refused"))).toBe(false);
  }, 300_000);
});
