import { days1904 } from "../cells/day.ts";
import { shiftFormula } from "./formula/shiftFormula.ts";
import { type Limits, usualLimits } from "./limits.ts";
import type { Sheet, Table } from "./model.ts";
import { type Package, type Parts, packageOf } from "./parts/package.ts";
import { type MetadataPart, readMetadata } from "./parts/readMetadata.ts";
import { readSheet } from "./parts/readSheet.ts";
import { readStyles } from "./parts/readStyles.ts";
import { readTable } from "./parts/readTable.ts";
import { type Relationship, readRelationships } from "./parts/relationships.ts";
import { readSharedStrings } from "./parts/sharedStrings.ts";
import { untouchedIn } from "./parts/untouchedIn.ts";
import { readWorkbookPart } from "./parts/workbookPart.ts";
import type { Workbook } from "./workbook.ts";
import { WorkbookProblem } from "./workbookProblem.ts";
import type { Packing } from "./zip/packing.ts";
import { readZip } from "./zip/readZip.ts";
import { refuseOtherFiles } from "./zip/refuseOtherFiles.ts";

/**
 * Opens an .xlsx (or .xlsm) workbook held in memory.
 *
 * @param packing - what unpacks its parts, and packs them when it is saved, where it is not to be the library
 * @throws WorkbookProblem with one sentence that says why it cannot be worked on
 */
export function openWorkbook(bytes: Uint8Array, limits: Limits = usualLimits, packing?: Packing): Workbook {
  refuseOtherFiles(bytes);
  const files = packageOf(
    readZip(bytes, limits, () => true, packing),
    packing,
  );
  const part = mainPart(files);
  const listed = readWorkbookPart(part, files.text(part));
  if (listed.sheets.length === 0) throw new WorkbookProblem("The workbook is damaged: it lists no sheets.");
  const relationships = readRelationships(files, part);
  // Of several with one name the first counts.
  const links = new Map([...relationships].reverse().map((link) => [link.id, link]));
  refuseShared(listed.sheets, links);
  const partOf = (kind: string): string | undefined => relationships.find((link) => link.kind === kind)?.target;
  const read = <T>(kind: string, reader: (name: string, text: string) => T): T | undefined => {
    const name = partOf(kind);
    return name === undefined ? undefined : reader(name, files.text(name));
  };
  const metadata = read("sheetMetadata", readMetadata);
  const common: Common = {
    files,
    metadata,
    sharedStrings: read("sharedStrings", readSharedStrings) ?? [],
    dayOffset: listed.date1904 ? days1904 : 0,
  };
  return {
    files,
    part,
    relationships,
    metadata,
    sheets: listed.sheets.map(({ name, relationship }) =>
      // A macro sheet of the oldest kind has no part of its own.
      relationship === "" ? withoutCells(name, "") : openSheet(name, linkOf(name, relationship, links), common),
    ),
    names: listed.names,
    dateSystem: listed.date1904 ? 1904 : 1900,
    asksForAll: listed.asksForAll,
    styles: read("styles", readStyles),
    untouched: untouchedIn(files),
  };
}

/** What is saved for one of two sheets that are one part would be lost for the other. */
function refuseShared(
  sheets: readonly { readonly name: string; readonly relationship: string }[],
  links: ReadonlyMap<string, Relationship>,
): void {
  const taken = new Set<string>();
  for (const { name, relationship } of sheets) {
    const part = links.get(relationship)?.target.toLowerCase();
    if (part === undefined) continue;
    if (taken.has(part))
      throw new WorkbookProblem(`The workbook is damaged: two of its sheets are one part; the second is ${name}.`);
    taken.add(part);
  }
}

interface Common {
  readonly files: Package;
  readonly metadata: MetadataPart | undefined;
  readonly sharedStrings: readonly string[];
  readonly dayOffset: number;
}

/** The part that lists the sheets. @throws WorkbookProblem when this is no workbook of a kind that can be read */
export function mainPart(files: Parts): string {
  const main = readRelationships(files, "").find(({ kind }) => kind === "officeDocument")?.target;
  if (main === undefined) throw new WorkbookProblem("This is a zip, but not an .xlsx workbook.");
  if (!files.has(main)) throw new WorkbookProblem(`The workbook is damaged: its part ${main} is missing.`);
  if (main.endsWith(".bin")) {
    throw new WorkbookProblem("This is a binary workbook (.xlsb): open it in the spreadsheet and save it as .xlsx.");
  }
  return main;
}

function linkOf(name: string, id: string, links: ReadonlyMap<string, Relationship>): Relationship {
  const link = links.get(id);
  if (!link) throw new WorkbookProblem(`The workbook is damaged: the sheet ${name} has no part of its own.`);
  return link;
}

function openSheet(name: string, link: Relationship, { files, metadata, sharedStrings, dayOffset }: Common): Sheet {
  const part = link.target;
  if (!files.has(part)) throw new WorkbookProblem(`The workbook is damaged: the part of its sheet ${name} is missing.`);
  // Chart sheets, dialogue sheets and macro sheets hold no cells to work out.
  if (link.kind !== "worksheet") return withoutCells(name, part);
  const text = files.text(part);
  const isDynamic = (mark: number): boolean => metadata?.dynamic.has(mark) ?? false;
  const { tableParts, ...grid } = readSheet({ part, text, sharedStrings, isDynamic, shift: shiftFormula, dayOffset });
  const tables = tableParts ? tablesOf(files, part) : [];
  const filters = [...grid.filters, ...tables.flatMap(({ area, filtered }) => (filtered ? [area] : []))];
  return { name, part, text, ...grid, filters, tables };
}

const tablesOf = (files: Package, part: string): readonly Table[] =>
  readRelationships(files, part)
    .filter(({ kind }) => kind === "table")
    .map(({ target }) => readTable(target, files.text(target)));

const withoutCells = (name: string, part: string): Sheet => ({
  name,
  part,
  text: "",
  prefix: "",
  rows: [],
  data: { start: 0, inner: 0, close: 0, end: 0 },
  columnStyles: [],
  merged: [],
  filters: [],
  tables: [],
});
