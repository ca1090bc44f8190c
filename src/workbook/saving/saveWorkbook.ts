import type { Relationship } from "../parts/relationships.ts";
import { relationshipsPart } from "../parts/relationships.ts";
import type { Workbook } from "../workbook.ts";
import type { WorkedOut } from "../workOut.ts";
import { walkXml } from "../xml/walkXml.ts";
import type { Entry } from "../zip/readZip.ts";
import { writeZip } from "../zip/writeZip.ts";
import { addDynamicMark } from "./addDynamicMark.ts";
import { addNumberFormats } from "./addNumberFormats.ts";
import { changesOf } from "./changesOf.ts";
import { type Splice, splice } from "./splice.ts";
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
  workbook.sheets.forEach((sheet, place) => {
    const changes = changesOf(sheet, sheets[place] ?? [], saving);
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
    bytes: writeZip(entriesWith(files.entries, changed, list.dropped)),
    changedParts: [...changed.keys()],
    changedCells,
  };
}

const metadataType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
const relationshipTypes = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
const contentTypes = "[Content_Types].xml";

const targetOf = (relationships: readonly Relationship[], kind: string): string | undefined =>
  relationships.find((link) => link.kind === kind)?.target;

function entriesWith(
  entries: readonly Entry[],
  changed: ReadonlyMap<string, string>,
  dropped: ReadonlySet<string>,
): Entry[] {
  const encoder = new TextEncoder();
  const texts = new Map([...changed].map(([part, text]) => [part.toLowerCase(), { part, text }]));
  const kept = entries.flatMap((entry): Entry[] => {
    if (dropped.has(entry.name.toLowerCase())) return [];
    const text = texts.get(entry.name.toLowerCase())?.text;
    texts.delete(entry.name.toLowerCase());
    return [text === undefined ? entry : { ...entry, bytes: encoder.encode(text) }];
  });
  const added = [...texts.values()].map(({ part, text }) => ({
    name: part,
    bytes: encoder.encode(text),
    stored: false,
  }));
  return [...kept, ...added];
}

/** Parts added to and dropped from the file, with what the file says about them. */
class PartList {
  readonly dropped = new Set<string>();
  private readonly workbook: Workbook;
  private readonly links: Splice[] = [];
  private readonly types: Splice[] = [];

  constructor(workbook: Workbook) {
    this.workbook = workbook;
  }

  /** @returns the full name of the added part */
  add(file: string, kind: string, type: string): string {
    const { part, relationships } = this.workbook;
    const folder = part.slice(0, part.lastIndexOf("/") + 1);
    const ids = new Set(relationships.map(({ id }) => id));
    let number = ids.size + 1;
    while (ids.has(`rId${number}`)) number += 1;
    const links = this.place(relationshipsPart(part));
    const link = `<${links.prefix}Relationship Id="rId${number}" Type="${relationshipTypes}${kind}" Target="${file}"/>`;
    this.links.push({ start: links.close, end: links.close, text: link });
    const types = this.place(contentTypes);
    const override = `<${types.prefix}Override PartName="/${folder}${file}" ContentType="${type}"/>`;
    this.types.push({ start: types.close, end: types.close, text: override });
    return folder + file;
  }

  drop(kind: string): void {
    for (const link of this.workbook.relationships) {
      if (link.kind !== kind || link.external) continue;
      this.dropped.add(link.target.toLowerCase());
      this.links.push({ start: link.start, end: link.end, text: "" });
      const override = this.overrideOf(link.target);
      if (override) this.types.push({ ...override, text: "" });
    }
  }

  texts(): ReadonlyMap<string, string> {
    const { files, part } = this.workbook;
    const links = relationshipsPart(part);
    const texts = new Map<string, string>();
    if (this.links.length > 0) texts.set(links, splice(files.text(links), this.links));
    if (this.types.length > 0) texts.set(contentTypes, splice(files.text(contentTypes), this.types));
    return texts;
  }

  private place(part: string): { close: number; prefix: string } {
    let close = 0;
    let prefix = "";
    const text = this.workbook.files.text(part);
    walkXml(part, text, {
      close(name, start) {
        close = start;
        prefix = text.slice(start + 2, text.indexOf(name, start));
      },
    });
    return { close, prefix };
  }

  private overrideOf(target: string): { start: number; end: number } | undefined {
    let found: { start: number; end: number } | undefined;
    walkXml(contentTypes, this.workbook.files.text(contentTypes), {
      open({ name, attributes, start, end }) {
        if (name === "Override" && attributes.PartName?.toLowerCase() === `/${target}`.toLowerCase())
          found = { start, end };
      },
    });
    return found;
  }
}
