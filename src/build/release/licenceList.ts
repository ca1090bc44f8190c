import type { BundledPackage } from "./bundledPackages.ts";

/**
 * The licences of everything that is bundled, as one text.
 *
 * @param bundles the packages in each file that is handed out, by the path of the file
 */
export function licenceList(bundles: ReadonlyMap<string, readonly BundledPackage[]>): string {
  const found = new Map<string, { readonly item: BundledPackage; readonly files: string[] }>();
  for (const [file, items] of bundles) {
    for (const item of items) {
      const key = `${item.name}@${item.version}`;
      const known = found.get(key) ?? { item, files: [] };
      known.files.push(file);
      found.set(key, known);
    }
  }
  const parts = [...found.keys()].sort().map((key) => {
    const { item, files } = found.get(key) as { item: BundledPackage; files: string[] };
    return [
      `${item.name} ${item.version} (${item.licence})`,
      item.homepage,
      `in: ${files.join(", ")}`,
      "",
      item.words.join("\n\n"),
    ].join("\n");
  });
  return `${[head(found.size), ...parts].join(`\n\n${"=".repeat(80)}\n\n`)}\n`;
}

const head = (count: number): string =>
  `Soundfold itself is under the MIT licence, in the file beside this one. Its bundles hold code of ${count} ${count === 1 ? "package" : "packages"} by\nothers; each follows with its licence.`;
