import { relationshipsPart } from "../parts/relationships.ts";
import type { Workbook } from "../workbook.ts";
import { walkXml } from "../xml/walkXml.ts";
import { type Splice, splice } from "./splice.ts";

const relationshipTypes = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
const contentTypes = "[Content_Types].xml";

/** Parts added to and dropped from the file, with what the file says about them. */
export class PartList {
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
