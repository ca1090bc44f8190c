import type { Limits } from "../limits.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import type { Packing } from "../zip/packing.ts";
import { unpackOnDemand } from "../zip/readZip.ts";
import { decode, type Parts } from "./package.ts";

/**
 * The parts of a file of which few are wanted: each is unpacked when it is asked for, and not kept.
 *
 * @throws WorkbookProblem when it is no zip, is damaged, or would unpack to more than the limits allow
 */
export function partsOnDemand(bytes: Uint8Array, limits: Limits, packing?: Packing): Parts {
  const byName = new Map(
    [...unpackOnDemand(bytes, limits, packing)].map(([name, unpack]) => [name.toLowerCase(), unpack]),
  );
  return {
    has: (part) => byName.has(part.toLowerCase()),
    text(part) {
      const unpack = byName.get(part.toLowerCase());
      if (!unpack) throw new WorkbookProblem(`The workbook is damaged: its part ${part} is missing.`);
      return decode(part, unpack());
    },
  };
}
