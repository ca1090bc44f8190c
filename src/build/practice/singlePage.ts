import { createHash } from "node:crypto";
import { Script } from "node:vm";
import { firstBook } from "../../pages/practice/offeredBooks.ts";
import { ownBookPlace } from "../../workbooks/ownBook/ownBookPlace.ts";
import { packLike } from "./packLike.ts";

type Content = string | Uint8Array;

/**
 * The page of the sheet with everything it loads inside: one file that works from a double-click, without a server.
 *
 * It may run its own scripts, known by their hashes, and ask for nothing at all.
 *
 * @param files - the built page by file name: index.html, what it names, and the workbooks it offers
 * @throws Error when the page names a file that is not there, or a script could end its own element
 */
export function singlePage(files: ReadonlyMap<string, Content>): string {
  const content = (name: string): Content => {
    const found = files.get(name);
    if (found === undefined) throw new Error(`index.html names ${name}, which was not built`);
    return found;
  };
  const scripts: string[] = [];
  const books = [...files].filter(([name]) => name.endsWith(".xlsx"));
  // A function as the replacement: in a text, `$&` and its kind would be read as something to fill in.
  return replaceOnce(asText(content("index.html")), [
    [
      / *<script defer src="functions.js"><\/script>\n *<script defer src="practice.js"><\/script>\n/,
      () => {
        for (const name of ["functions.js", "practice.js"]) scripts.push(inScript(name, asText(content(name))));
        return "";
      },
    ],
    [/content="default-src[^"]*"/, () => `content="${policy(scripts)}"`],
    [/href="(icon-64\.png)"/, (_, name = "") => `href="${dataAddress(content(name))}"`],
    [
      /<link rel="stylesheet" href="(practice\.css)" \/>/,
      (_, name = "") => `<style>${inStyle(name, asText(content(name)))}</style>`,
    ],
    [
      /<\/body>/,
      () =>
        [
          ownBookPlace,
          ...books.map(([name, bytes]) => bookInside(name, bytes, content(firstBook))),
          ...scripts.map((script) => `<script>${script}</script>`),
          "</body>",
        ].join("\n"),
    ],
  ]);
}

function bookInside(name: string, bytes: Content, first: Content): string {
  // The same book without its records has nearly all of its formulas in common with it; of the others a quarter goes, since
  // their parts are packed as one.
  const isLike = name !== firstBook;
  const held = isLike ? packLike(asBytes(bytes), asBytes(first)) : bytes;
  return `<script type="text/plain" data-book="${name}"${isLike ? ` data-like="${firstBook}"` : ""}>${asBase64(held)}</script>`;
}

type Filling = (whole: string, name?: string) => string;

function replaceOnce(page: string, replacements: readonly (readonly [RegExp, Filling])[]): string {
  return replacements.reduce((text, [wanted, filling]) => {
    if (!wanted.test(text)) throw new Error(`index.html holds nothing that fits ${wanted}`);
    return text.replace(wanted, filling);
  }, page);
}

const policy = (scripts: readonly string[]): string => {
  const hashes = scripts.map((script) => `'sha256-${createHash("sha256").update(script).digest("base64")}'`);
  return [
    "default-src 'none'",
    `script-src ${hashes.join(" ")}`,
    "style-src 'unsafe-inline'",
    "img-src data: blob:",
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
};

/**
 * A script as it can stand inside a page. After `<!--` and `<script`, both of which stand in texts of the spreadsheet, the
 * end of its own element would be read as more script (HTML, script data double escaped state).
 */
function inScript(name: string, script: string): string {
  const text = script.trimEnd().replaceAll("<script", "\\x3cscript");
  if (/<\/script|\r|\0/i.test(text))
    throw new Error(`${name} holds what a page would read otherwise: an end of script, CR or NUL`);
  // Throws where the replacement was not inside a text.
  new Script(text, { filename: name });
  return text;
}

function inStyle(name: string, style: string): string {
  if (/<\/style/i.test(style)) throw new Error(`${name} holds the end of a style element`);
  return style;
}

const asText = (content: Content): string =>
  typeof content === "string" ? content : Buffer.from(content).toString("utf8");
const asBytes = (content: Content): Uint8Array => (typeof content === "string" ? Buffer.from(content) : content);
const asBase64 = (content: Content): string => Buffer.from(content).toString("base64");
const dataAddress = (content: Content): string => `data:image/png;base64,${asBase64(content)}`;
