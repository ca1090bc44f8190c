import { escapeXml } from "../../workbook/xml/escapeXml.ts";

/** One XML element. Children that are a list are elements already; a text is escaped. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  children: string | readonly string[] = [],
): string {
  const opening = [name, ...Object.entries(attributes).map(([key, value]) => `${key}="${escapeXml(value)}"`)].join(" ");
  const inside = typeof children === "string" ? escapeXml(children) : children.join("\n");
  return inside === "" ? `<${opening}/>` : `<${opening}>${inside}</${name}>`;
}

/** A whole file with one element at its root. */
export const xmlFile = (root: string): string => `<?xml version="1.0" encoding="UTF-8"?>\n${root}\n`;
