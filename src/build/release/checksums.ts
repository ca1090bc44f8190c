import { createHash } from "node:crypto";

/**
 * One line a file: its SHA-256 and its path, as `sha256sum --check` reads them.
 *
 * @example
 * checksums(new Map([["a.txt", ""]]))
 * // → "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  a.txt\n"
 */
export function checksums(files: ReadonlyMap<string, string | Uint8Array>): string {
  const line = (path: string): string =>
    `${createHash("sha256")
      .update(files.get(path) ?? "")
      .digest("hex")}  ${path}\n`;
  return [...files.keys()].sort().map(line).join("");
}
