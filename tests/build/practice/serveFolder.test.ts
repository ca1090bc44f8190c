import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { type Serving, serveFolder } from "../../../src/build/practice/serveFolder.ts";

const open: Serving[] = [];
const made: string[] = [];
afterEach(() => {
  for (const serving of open.splice(0)) serving.close();
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

async function serve(ports: readonly number[]): Promise<Serving & { readonly folder: string }> {
  const home = mkdtempSync(join(tmpdir(), "soundfold-serve-"));
  made.push(home);
  const folder = join(home, "served");
  mkdirSync(folder);
  writeFileSync(join(folder, "index.html"), "<p>here</p>");
  mkdirSync(join(folder, "icons"));
  writeFileSync(join(folder, "icons", "icon.png"), "a picture");
  writeFileSync(join(folder, "..", "soundfold-outside.txt"), "outside");
  const serving = await serveFolder(folder, ports);
  open.push(serving);
  return { ...serving, folder };
}

/** As typed: other ways of asking tidy the path up first. */
const statusOf = (port: number, path: string): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    request({ host: "localhost", port, path }, (answer) => {
      answer.resume();
      resolve(answer.statusCode);
    })
      .on("error", reject)
      .end();
  });

describe("serving a folder", () => {
  it("gives the page and its kind", async () => {
    const { address } = await serve([0]);
    const answer = await fetch(address);
    expect(answer.headers.get("content-type")).toBe("text/html;charset=utf-8");
    expect(await answer.text()).toBe("<p>here</p>");
  });

  it("gives what lies in a folder of its own, and not the folder itself", async () => {
    const { port } = await serve([0]);
    expect(await statusOf(port, "/icons/icon.png")).toBe(200);
    expect(await statusOf(port, "/icons")).toBe(404);
    expect(await statusOf(port, "/icons/")).toBe(404);
  });

  it("gives nothing from outside the folder", async () => {
    const { port, folder } = await serve([0]);
    mkdirSync(`${folder}-beside`);
    writeFileSync(join(`${folder}-beside`, "outside.txt"), "outside");
    expect(await statusOf(port, "/index.html")).toBe(200);
    for (const path of [
      "/../soundfold-outside.txt",
      "/%2e%2e/soundfold-outside.txt",
      "/%2e%2e%2fsoundfold-outside.txt",
      "/%",
      // A folder beside the one that is served, whose name begins as its name does.
      `/..%2f${basename(folder)}-beside%2foutside.txt`,
    ])
      expect(await statusOf(port, path)).toBe(404);
  });

  it("goes on when a file vanishes or comes while it serves", async () => {
    const { port, folder } = await serve([0]);
    rmSync(join(folder, "icons", "icon.png"));
    expect(await statusOf(port, "/icons/icon.png")).toBe(404);
    writeFileSync(join(folder, "new.js"), "built again");
    expect(await statusOf(port, "/new.js")).toBe(200);
  });

  it("only gives", async () => {
    const { address } = await serve([0]);
    expect((await fetch(address, { method: "POST", body: "taken" })).status).toBe(405);
  });

  it("takes the next port where one is taken, and says so where none is left", async () => {
    const first = await serve([0]);
    const second = await serve([first.port, 0]);
    expect(second.port).not.toBe(first.port);
    await expect(serve([first.port])).rejects.toThrow(`The ports ${first.port} are all taken`);
  });
});
