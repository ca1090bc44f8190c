import { WorkbookProblem } from "../workbookProblem.ts";
import type { Packing } from "../zip/packing.ts";
import type { Entry } from "../zip/readZip.ts";

/** Parts that can be asked for by name. */
export type Parts = Pick<Package, "has" | "text">;

/** The parts of the file by name, as text on demand. Part names do not depend on case (ECMA-376 Part 2 §6.2.2). */
export interface Package {
  readonly entries: readonly Entry[];
  /** What packs them again, where it is not to be the library. */
  readonly packing?: Packing;
  readonly has: (part: string) => boolean;
  /** @throws WorkbookProblem when the part is missing or is not text */
  readonly text: (part: string) => string;
}

export function packageOf(entries: readonly Entry[], packing?: Packing): Package {
  const byName = new Map(entries.map((entry) => [entry.name.toLowerCase(), entry]));
  return {
    entries,
    ...(packing && { packing }),
    has: (part) => byName.has(part.toLowerCase()),
    text(part) {
      const entry = byName.get(part.toLowerCase());
      if (entry === undefined) throw new WorkbookProblem(`The workbook is damaged: its part ${part} is missing.`);
      return decode(part, entry.bytes);
    },
  };
}

// The mark at the start is kept, so that places in the text and the bytes written back stay true.
export function decode(part: string, bytes: Uint8Array): string {
  const wide =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? "utf-16le"
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? "utf-16be"
        : undefined;
  if (wide)
    throw new WorkbookProblem(
      `The part ${part} is written in ${wide.toUpperCase()}; save the workbook again in the spreadsheet first.`,
    );
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    throw new WorkbookProblem(`The workbook is damaged: its part ${part} is not text in UTF-8.`, { cause: error });
  }
}
