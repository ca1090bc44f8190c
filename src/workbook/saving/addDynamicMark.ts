import type { List, MetadataPart } from "../parts/readMetadata.ts";
import { setAttribute } from "./addNumberFormats.ts";
import { type Splice, splice } from "./splice.ts";

const typeElement = (prefix: string): string =>
  `<${prefix}metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>`;
const futureElement = (prefix: string): string =>
  `<${prefix}futureMetadata name="XLDAPR" count="1"><${prefix}bk><${prefix}extLst><${prefix}ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" fDynamic="1" fCollapsed="0"/></${prefix}ext></${prefix}extLst></${prefix}bk></${prefix}futureMetadata>`;

export interface DynamicMark {
  readonly number: number;
  /** The metadata part with the mark in it; undefined when it already was. */
  readonly text: string | undefined;
}

/** The cell metadata that marks a dynamic array formula, as Excel writes it ([MS-XLSX] 2.2.4.4). */
export function addDynamicMark(metadata: MetadataPart | undefined): DynamicMark {
  if (!metadata) {
    return {
      number: 1,
      text: `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><metadataTypes count="1">${typeElement("")}</metadataTypes>${futureElement("")}<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`,
    };
  }
  const [known] = metadata.dynamic;
  if (known !== undefined) return { number: known, text: undefined };
  const { text, prefix, types, cells, afterTypes, beforeCells } = metadata;
  const type = typeElement(prefix);
  const mark = `<${prefix}bk><${prefix}rc t="${(types?.count ?? 0) + 1}" v="0"/></${prefix}bk>`;
  const list = (name: string, element: string): string => `<${prefix}${name} count="1">${element}</${prefix}${name}>`;
  return {
    number: (cells?.count ?? 0) + 1,
    text: splice(text, [
      ...(types ? extend(text, types, type) : [insert(afterTypes, list("metadataTypes", type))]),
      insert(afterTypes, futureElement(prefix)),
      ...(cells ? extend(text, cells, mark) : [insert(beforeCells, list("cellMetadata", mark))]),
    ]),
  };
}

const insert = (at: number, text: string): Splice => ({ start: at, end: at, text });

const extend = (text: string, { start, inner, close, count }: List, element: string): Splice[] => [
  { start, end: inner - 1, text: setAttribute(text.slice(start, inner - 1), "count", String(count + 1)) },
  insert(close, element),
];
