import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, sep } from "node:path";

/** A package of someone else, some of whose code is in a bundle. */
export interface BundledPackage {
  readonly name: string;
  readonly version: string;
  /** As the package states it, in SPDX terms. */
  readonly licence: string;
  readonly homepage: string;
  /** The words of the licence and of any notice, as they came with the package. */
  readonly words: readonly string[];
}

/**
 * The packages that the given source files belong to, by name.
 *
 * @param modules absolute paths; files that are no package's are left out
 * @throws Error when a package does not state its licence or brings no licence text
 */
export function bundledPackages(modules: readonly string[]): readonly BundledPackage[] {
  const folders = modules.filter((path) => path.includes(`${sep}node_modules${sep}`)).map(folderOf);
  return [...new Set(folders)].map(packageIn).sort((a, b) => compare(a.name, b.name) || compare(a.version, b.version));
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

interface PackageFile {
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly homepage?: string;
}

const packageFile = (folder: string): PackageFile => {
  const path = join(folder, "package.json");
  return existsSync(path) ? (JSON.parse(readFileSync(path, "utf8")) as PackageFile) : {};
};

function folderOf(path: string): string {
  let folder = dirname(path);
  // Folders inside a package may hold a package.json without a version, which only tells the kind of module.
  while (packageFile(folder).version === undefined) {
    if (folder === dirname(folder)) throw new Error(`${path} belongs to no package`);
    folder = dirname(folder);
  }
  return folder;
}

function packageIn(folder: string): BundledPackage {
  const { name, version, license, homepage } = packageFile(folder);
  if (name === undefined || version === undefined) throw new Error(`${folder} names no package`);
  const words = licenceTexts(folder);
  const licence = license ?? stated(words);
  if (typeof licence !== "string") throw new Error(`${name} does not state its licence, so it cannot be bundled`);
  // Some packages leave their licence file out of what they publish; those are kept beside this file.
  const kept = new URL(`licences/${name.replace("/", "+")}.txt`, import.meta.url);
  if (words.length === 0 && existsSync(kept)) words.push(readFileSync(kept, "utf8").trim());
  if (words.length === 0) throw new Error(`${name} brings no licence text, so it cannot be bundled`);
  return { name, version, licence, homepage: homepage ?? `https://www.npmjs.com/package/${name}`, words };
}

/** The licence of a package that does not name it but brings its text. */
const stated = ([first = ""]: readonly string[]): string | undefined =>
  /^Apache License\s+Version 2\.0, January 2004\s/.test(first) ? "Apache-2.0" : undefined;

const licenceTexts = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => /^(licen[cs]e|copying|notice)/i.test(name) && !/\.[cm]?[jt]s$/.test(name))
    .sort()
    .map((name) => readFileSync(join(folder, name), "utf8").replaceAll("\r\n", "\n").trim());
