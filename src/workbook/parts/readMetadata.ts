import { isYes } from "../xml/isYes.ts";
import { localName, walkXml } from "../xml/walkXml.ts";
import { prefixOf } from "./readStyles.ts";

/** A list element of the part: its opening tag's `<`, its closing tag's `<`, and how many it holds. */
export interface List {
  readonly start: number;
  readonly inner: number;
  readonly close: number;
  readonly count: number;
}

export interface MetadataPart {
  readonly part: string;
  readonly text: string;
  /** `x:` where the part writes its elements with a prefix. */
  readonly prefix: string;
  /** Cell metadata numbers, from 1, that mark a dynamic array formula. */
  readonly dynamic: ReadonlySet<number>;
  readonly types: List | undefined;
  readonly cells: List | undefined;
  /** Where `<futureMetadata>` may be put: just after the list of types. */
  readonly afterTypes: number;
  /** Where `<cellMetadata>` may be put when there is none. */
  readonly beforeCells: number;
}

/** Which cell metadata marks dynamic array formulas (type XLDAPR with fDynamic). */
export function readMetadata(part: string, text: string): MetadataPart {
  const types: string[] = [];
  const dynamicFuture = new Set<number>();
  const marks: { type: number; value: number }[] = [];
  const lists = new Map<string, List>();
  const open: { name: string; start: number; inner: number }[] = [];
  let prefix = "";
  let future = "";
  let futureCount = -1;
  let afterTypes = 0;
  let beforeCells = 0;
  walkXml(part, text, {
    open({ name, attributes, start, end }) {
      const parent = open.at(-1)?.name;
      open.push({ name, start, inner: end });
      if (open.length === 1) {
        prefix = prefixOf(text, start, name);
        afterTypes = end;
      }
      if (name === "metadataType") types.push(attributes.name ?? "");
      else if (name === "futureMetadata") {
        future = attributes.name ?? "";
        futureCount = -1;
      } else if (name === "bk" && parent === "futureMetadata") futureCount += 1;
      else if (future === "XLDAPR" && localName(name) === "dynamicArrayProperties" && isYes(attributes.fDynamic ?? "1"))
        dynamicFuture.add(futureCount);
      else if (name === "bk" && parent === "cellMetadata") marks.push({ type: 0, value: -1 });
      else if (name === "rc" && open.at(-3)?.name === "cellMetadata") {
        marks[marks.length - 1] = { type: Number(attributes.t), value: Number(attributes.v) };
      } else if (name === "valueMetadata" || (name === "extLst" && open.length === 2)) beforeCells ||= start;
    },
    close(name, close, end) {
      const opened = open.pop();
      if (open.length === 0) beforeCells ||= close;
      if (opened === undefined || open.length !== 1) return;
      if (name === "metadataTypes") {
        lists.set(name, { start: opened.start, inner: opened.inner, close, count: types.length });
        afterTypes = end;
      } else if (name === "metadataStrings" || name === "mdxMetadata" || name === "futureMetadata") afterTypes = end;
      else if (name === "cellMetadata")
        lists.set(name, { start: opened.start, inner: opened.inner, close, count: marks.length });
    },
  });
  const dynamic = new Set<number>();
  marks.forEach(({ type, value }, index) => {
    if (types[type - 1] === "XLDAPR" && dynamicFuture.has(value)) dynamic.add(index + 1);
  });
  return {
    part,
    text,
    prefix,
    dynamic,
    types: lists.get("metadataTypes"),
    cells: lists.get("cellMetadata"),
    afterTypes,
    beforeCells,
  };
}
