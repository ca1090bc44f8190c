import type { Package } from "./package.ts";

const kinds: readonly (readonly [RegExp, string])[] = [
  [/vbaProject\.bin$/i, "macros"],
  [/(^|\/)externalLinks\//i, "links to other workbooks"],
  [/(^|\/)connections\.xml$|(^|\/)queryTables\//i, "data connections"],
  [/(^|\/)pivot(Tables|Cache)\//i, "pivot tables"],
  [/(^|\/)(chart|charts|chartsheets)\//i, "charts"],
  [/(^|\/)media\//i, "pictures"],
  [/(^|\/)(activeX|ctrlProps|embeddings)\//i, "controls and embedded files"],
  [/(^|\/)(comments|threadedComments)/i, "comments"],
  [/^_xmlsignatures\//i, "a digital signature, which no longer holds once values change"],
];

const known =
  /^(\[Content_Types\]\.xml|_rels\/|docProps\/|xl\/(_rels\/|workbook\.xml|styles\.xml|sharedStrings\.xml|metadata\.xml|calcChain\.xml|worksheets\/|tables\/|theme\/|drawings\/|persons\/|printerSettings\/))/i;

/** What the file holds that this program carries along without looking into it, in words. */
export function untouchedIn({ entries }: Package): readonly string[] {
  const words: string[] = [];
  let unknown = 0;
  for (const { name } of entries) {
    // Some writers list the folders too.
    if (name.endsWith("/")) continue;
    const kind = kinds.find(([pattern]) => pattern.test(name))?.[1];
    if (kind === undefined) unknown += known.test(name) ? 0 : 1;
    else if (!words.includes(kind)) words.push(kind);
  }
  return unknown === 0
    ? words
    : [...words, unknown === 1 ? "1 part of a kind not known here" : `${unknown} parts of a kind not known here`];
}
