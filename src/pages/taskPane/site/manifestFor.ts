import { escapeXml } from "../../../workbook/xml/escapeXml.ts";

/**
 * The manifest of the add-in for another address than the one it was built for.
 *
 * @param manifest - as it was built
 * @param servedFrom - where its files are now, without a slash at the end
 * @returns undefined where Excel would not take the address, or the text is no manifest of ours
 * @example
 * manifestFor(built, "https://farm.example.org/feet") // with every address in it under that one
 */
export function manifestFor(manifest: string, servedFrom: string): string | undefined {
  const builtFor = /<SourceLocation DefaultValue="([^"]+)\/taskpane\.html"/.exec(manifest)?.[1];
  if (builtFor === undefined || !URL.canParse(servedFrom)) return undefined;
  const { protocol, origin } = new URL(servedFrom);
  if (protocol !== "https:") return undefined;
  return manifest
    .replaceAll(`"${builtFor}/`, () => `"${escapeXml(servedFrom)}/`)
    .replace(/<AppDomain>[^<]*<\/AppDomain>/g, () => `<AppDomain>${escapeXml(origin)}</AppDomain>`);
}
