import { strToU8, type Zippable, zipSync } from "fflate";

// A zip entry holds the local time of day, so a local time gives the same bytes in every time zone.
const mtime = new Date(2020, 0, 1);

/** A zip that depends on nothing but the files: sorted by path, with one fixed time. */
export function zipOf(files: ReadonlyMap<string, string | Uint8Array>): Uint8Array {
  const entries: Zippable = {};
  for (const path of [...files.keys()].sort()) {
    const content = files.get(path) ?? "";
    entries[path] = [typeof content === "string" ? strToU8(content) : content, { mtime }];
  }
  return zipSync(entries);
}
