import { strToU8 } from "fflate";
import { writeZip } from "../../workbook/zip/writeZip.ts";

/** A zip that depends on nothing but the files: sorted by path, with one fixed time. */
export function zipOf(files: ReadonlyMap<string, string | Uint8Array>): Uint8Array {
  const sorted = [...files].sort(([one], [other]) => (one < other ? -1 : 1));
  return writeZip(
    sorted.map(([name, content]) => ({
      name,
      bytes: typeof content === "string" ? strToU8(content) : content,
      stored: false,
    })),
  );
}
