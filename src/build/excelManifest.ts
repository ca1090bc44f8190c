import { escapeXml } from "../workbook/xml/escapeXml.ts";

interface Filling {
  readonly baseUrl: string;
  /** The version of the package, e.g. 0.1.0. The vendor asks for four numbers and refuses any below 1.0, hence 1.0.1.0. */
  readonly version: string;
}

/**
 * The add-in's manifest for one address.
 *
 * @param template - the hand-written manifest with {baseUrl}, {origin} and {version} in it
 * @throws Error when the template asks for something else
 */
export function excelManifest(template: string, { baseUrl, version }: Filling): string {
  const values: Readonly<Record<string, string>> = {
    baseUrl: escapeXml(baseUrl),
    origin: escapeXml(new URL(baseUrl).origin),
    version: `1.${version}`,
  };
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name];
    if (value === undefined) throw new Error(`the manifest asks for {${name}}, which nothing fills.`);
    return value;
  });
}
