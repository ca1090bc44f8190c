import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { topics } from "../../src/definition/topics.ts";

const shared = ["statistics", "words"];
/** Which folder of the core may look into which, beside itself and what is shared. Nobody looks back. */
const mayUse: Readonly<Record<string, readonly string[]>> = {
  benchmarking: ["counting"],
  watching: ["counting"],
  treatment: ["dates"],
  records: ["dates", "treatment"],
};

const sources = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .map((path) => join(folder, path));

/** The folder of the core that each import of a file names. */
const coreFoldersIn = (file: string) =>
  [...readFileSync(file, "utf8").matchAll(/from "(\.[^"]+)"/g)]
    .map(([, path = ""]) => join(dirname(file), path).split("/"))
    .flatMap(([src, core, folder, ...rest]) =>
      src === "src" && core === "core" && folder !== undefined && rest.length > 0 ? [folder] : [],
    );

const core = sources("src/core").filter((file) => file.split("/").length > 3);
const arrows = core.flatMap((file) => {
  const from = file.split("/")[2] ?? "";
  return coreFoldersIn(file)
    .filter((to) => to !== from)
    .map((to) => `${from} to ${to}`);
});

describe("the folders of the core", () => {
  it("are topics of the functions, and what the topics share", () => {
    const folders = new Set(core.map((file) => file.split("/")[2]));
    expect([...folders].filter((folder) => !shared.includes(folder ?? "") && !((folder ?? "") in topics))).toEqual([]);
    expect(Object.keys(topics).filter((topic) => !folders.has(topic))).toEqual([]);
  });

  it("look at each other only as the table says", () => {
    const allowed = Object.keys(topics).flatMap((from) =>
      [...shared, ...(mayUse[from] ?? [])].map((to) => `${from} to ${to}`),
    );
    expect(arrows.length).toBeGreaterThan(50);
    expect([...new Set(arrows)].filter((arrow) => !allowed.includes(arrow))).toEqual([]);
  });

  it("serve the functions of their own topic, and of the topics that may look at them", () => {
    const strays = sources("functions").flatMap((file) => {
      const topic = file.split("/")[1] ?? "";
      return coreFoldersIn(file)
        .filter((folder) => topic in topics && folder !== topic && !shared.includes(folder))
        .filter((folder) => !(mayUse[topic] ?? []).includes(folder))
        .map((folder) => `${file} to ${folder}`);
    });
    expect(strays).toEqual([]);
  });
});
