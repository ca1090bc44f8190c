import { type Zippable, zipSync } from "fflate";
import type { Entry } from "./readZip.ts";

// Excel itself writes this moment, the first a zip can hold. The same workbook then gives the same bytes.
const firstMoment = "1980-01-01T00:00:00";

/** Packs the parts in the order given; parts that were stored unpacked stay so. */
export function writeZip(entries: readonly Entry[]): Uint8Array {
  const files: Zippable = {};
  for (const { name, bytes, stored } of entries) files[name] = [bytes, { level: stored ? 0 : 6, mtime: firstMoment }];
  return zipSync(files);
}
