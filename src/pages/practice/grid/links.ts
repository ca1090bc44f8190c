import { type Area, isInside, type Place, readArea } from "../../../workbook/address.ts";
import { readRelationships } from "../../../workbook/parts/relationships.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { attributeNamed, walkXml } from "../../../workbook/xml/walkXml.ts";

/** Where a cell leads to: a place of the workbook, such as 'Sale check'!A1, or an address outside it. */
export type Link = { readonly place: string } | { readonly address: string };

export interface CellLink {
  readonly area: Area;
  readonly link: Link;
}

// Other kinds of address could start a program.
const outside = /^(?:https?|mailto):/i;

/** The links of one sheet. Those that lead to a file or start a program are left out. */
export function readLinks({ files, sheets }: Workbook, sheet: number): readonly CellLink[] {
  const { part, text, data } = sheets[sheet] ?? { part: "", text: "", data: { end: 0 } };
  const block = /<((?:\w+:)?hyperlinks)\b[^>]*>[\s\S]*?<\/\1>/.exec(text.slice(data.end))?.[0];
  if (block === undefined) return [];
  const targets = new Map(readRelationships(files, part).map(({ id, target }) => [id, target]));
  const links: CellLink[] = [];
  walkXml(part, block, {
    open({ name, attributes }) {
      const area = name === "hyperlink" ? readArea(attributes.ref ?? "") : undefined;
      if (!area) return;
      const address = targets.get(attributeNamed(attributes, "id") ?? "");
      if (address !== undefined && outside.test(address)) links.push({ area, link: { address } });
      else if (address === undefined && attributes.location !== undefined)
        links.push({ area, link: { place: attributes.location.replace(/^#/, "") } });
    },
    text: () => {},
    close: () => {},
  });
  return links;
}

export const linkAt = (links: readonly CellLink[], place: Place): Link | undefined =>
  links.find(({ area }) => isInside(place, area))?.link;
