const escapes: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "\r": "&#13;",
};

/** Text as it stands in an element or a quoted attribute. */
export const escapeXml = (text: string): string => text.replace(/[&<>"\r]/g, (sign) => escapes[sign] as string);

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters XML cannot hold
const unwritable = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)/g;

/**
 * Cell text as a workbook stores it: characters that XML cannot hold become `_x0007_`, and text that looks
 * like such a mark is marked itself (ECMA-376 Part 1 §22.9.2.19, ST_Xstring).
 *
 * @example
 * encodeText("bell \u0007") // → "bell _x0007_"
 */
export const encodeText = (text: string): string =>
  text.replace(unwritable, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`);

/** The other way: stored cell text as it is shown. */
export const decodeText = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text;
