import type { Limits } from "../limits.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import type { Packing } from "../zip/packing.ts";
import { readZip } from "../zip/readZip.ts";
import { decode, type Parts } from "./package.ts";

/**
 * The parts of a file of which few are wanted: each is unpacked when it is asked for, and not kept.
 *
 * @throws WorkbookProblem when it is no zip, is damaged, or would unpack to more than the limits allow
 */
export function partsOnDemand(bytes: Uint8Array, limits: Limits, packing?: Packing): Parts {
  const names = new Map(readZip(bytes, limits, () => false).map(({ name }) => [name.toLowerCase(), name]));
  return {
    has: (part) => names.has(part.toLowerCase()),
    text(part) {
      const name = names.get(part.toLowerCase());
      const entry = readZip(bytes, limits, (candidate) => candidate === name, packing).find(
        (found) => found.name === name,
      );
      if (!entry) throw new WorkbookProblem(`The workbook is damaged: its part ${part} is missing.`);
      return decode(part, entry.bytes);
    },
  };
}
