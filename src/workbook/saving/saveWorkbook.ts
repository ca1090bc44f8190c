import { usualLimits } from "../limits.ts";
import type { Relationship } from "../parts/relationships.ts";
import type { Workbook } from "../workbook.ts";
import type { WorkedOut } from "../workOut.ts";
import type { Packing } from "../zip/packing.ts";
import { type Entry, packsWithin } from "../zip/readZip.ts";
import { writeZip } from "../zip/writeZip.ts";
import { addDynamicMark } from "./addDynamicMark.ts";
import { addNumberFormats } from "./addNumberFormats.ts";
import { changesOf } from "./changesOf.ts";
import { entriesWith } from "./entriesWith.ts";
import { PartList } from "./partList.ts";
import { spliceSheet } from "./spliceSheet.ts";

export interface Saved {
  readonly bytes: Uint8Array;
  /** The parts that differ from the file that was opened. */
  readonly changedParts: readonly string[];
  readonly changedCells: number;
}

/** The workbook's file with the answers in it. Parts that hold nothing new keep their bytes. */
export function saveWorkbook(workbook: Workbook, { sheets }: Pick<WorkedOut, "sheets">): Saved {
  const { files, relationships, styles } = workbook;
  const numberFormats = addNumberFormats(styles);
  const mark = addDynamicMark(workbook.metadata);
  let marked = false;
  const saving = {
    styleWith: numberFormats.styleWith,
    dynamicMark() {
      marked = true;
      return mark.number;
    },
  };
  const changed = new Map<string, string>();
  let changedCells = 0;
  let formulasChanged = false;
  workbook.sheets.forEach((sheet, index) => {
    const changes = changesOf(sheet, sheets[index] ?? [], saving);
    if (changes.length === 0) return;
    changedCells += changes.length;
    formulasChanged ||= changes.some(
      ({ formula, old }) => typeof formula === "object" || (formula === undefined && old?.formula !== undefined),
    );
    changed.set(sheet.part, spliceSheet(sheet, changes));
  });
  const stylesText = numberFormats.text();
  const stylesPart = targetOf(relationships, "styles");
  if (stylesText !== undefined && stylesPart !== undefined) changed.set(stylesPart, stylesText);
  const list = new PartList(workbook);
  if (marked && mark.text !== undefined) {
    changed.set(workbook.metadata?.part ?? list.add("metadata.xml", "sheetMetadata", metadataType), mark.text);
  }
  // The order of calculation is no longer true once a formula is another; the spreadsheet makes it anew.
  if (formulasChanged) list.drop("calcChain");
  for (const [part, text] of list.texts()) changed.set(part, text);
  return {
    bytes: packed(entriesWith(files.entries, changed, list.dropped), files.packing),
    changedParts: [...changed.keys()],
    changedCells,
  };
}

/** The parts as a file that this program opens again: answers that repeat may pack better than it believes of a part. */
function packed(entries: readonly Entry[], packing: Packing | undefined): Uint8Array {
  const bytes = writeZip(entries, packing);
  if (packsWithin(bytes, usualLimits)) return bytes;
  return writeZip(
    entries.map((entry) => (entry.bytes.length > usualLimits.ratioFrom ? { ...entry, stored: true } : entry)),
    packing,
  );
}

const metadataType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";

const targetOf = (relationships: readonly Relationship[], kind: string): string | undefined =>
  relationships.find((link) => link.kind === kind)?.target;
