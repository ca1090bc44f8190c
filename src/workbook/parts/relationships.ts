import { walkXml } from "../xml/walkXml.ts";
import type { Parts } from "./package.ts";

export interface Relationship {
  readonly id: string;
  /** The last word of its type, which the strict and the usual form of the format share: `worksheet`, `styles`. */
  readonly kind: string;
  /** The part it points to; for something outside the file, the address as written. */
  readonly target: string;
  readonly external: boolean;
  /** Places of the element in the relationships part. */
  readonly start: number;
  readonly end: number;
}

/** @example relationshipsPart("xl/workbook.xml") // → "xl/_rels/workbook.xml.rels" */
export function relationshipsPart(part: string): string {
  const slash = part.lastIndexOf("/");
  return `${part.slice(0, slash + 1)}_rels/${part.slice(slash + 1)}.rels`;
}

/** What a part points to; none when it has no relationships part. */
export function readRelationships(files: Parts, part: string): readonly Relationship[] {
  const name = relationshipsPart(part);
  if (!files.has(name)) return [];
  const found: Relationship[] = [];
  walkXml(name, files.text(name), {
    open({ name: element, attributes, start, end }) {
      if (element !== "Relationship") return;
      const { Id: id = "", Type: type = "", Target: target = "", TargetMode: mode } = attributes;
      const external = mode === "External";
      const kind = type.slice(type.lastIndexOf("/") + 1);
      found.push({ id, kind, external, start, end, target: external ? target : resolvePart(part, target) });
    },
  });
  return found;
}

/** A target is relative to the folder of its part unless it starts with a slash. */
export function resolvePart(from: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const folders = from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") folders.pop();
    else if (step !== ".") folders.push(step);
  }
  return folders.join("/");
}
