import { Marked } from "marked";

/**
 * A page of the documentation as a browser shows it: who takes the release has no reader of Markdown. It asks for nothing
 * beside the pictures that it names.
 *
 * @param markdown - its text, which begins with its title
 * @param up - from its folder to the top of the release: "" or "../"
 */
export function pageOf(markdown: string, up = "../"): string {
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? "Soundfold";
  const front = up === "" ? "" : `<p><a href="${up}index.html">Soundfold</a></p>\n`;
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src 'self' file:; base-uri 'none'; form-action 'none'">
<meta name="color-scheme" content="light dark">
<title>${plain(title)}</title>
<style>${look}</style>
</head>
<body>
${front}${reader.parse(markdown, { async: false })}</body>
</html>
`;
}

/** Where a page stands in the release: a browser opens index.html of a folder. */
export const pageName = (name: string): string => name.replace(/README\.md$/, "index.html").replace(/\.md$/, ".html");

const plain = (markdown: string): string =>
  markdown.replace(/[`*]/g, "").replaceAll("&", "&amp;").replaceAll("<", "&lt;");

const reader = new Marked({
  gfm: true,
  walkTokens(token) {
    if (token.type !== "link" || /^[a-z]+:/.test(token.href)) return;
    const [path = "", anchor] = token.href.split("#");
    token.href = anchor === undefined ? pageName(path) : `${pageName(path)}#${anchor}`;
  },
  renderer: {
    heading({ tokens, depth, text }) {
      return `<h${depth} id="${anchorOf(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
    },
    // Wide tables scroll by themselves.
    table(token) {
      const cells = (row: typeof token.header, tag: string): string =>
        row.map((cell) => `<${tag}>${this.parser.parseInline(cell.tokens)}</${tag}>`).join("");
      const rows = token.rows.map((row) => `<tr>${cells(row, "td")}</tr>`).join("\n");
      return `<div class="wide" tabindex="0"><table>\n<thead><tr>${cells(token.header, "th")}</tr></thead>\n<tbody>\n${rows}\n</tbody>\n</table></div>\n`;
    },
  },
});

/** As code hosts have it: small letters, lines for blanks, no other signs. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, "")
    .replaceAll(" ", "-");

const look =
  ":root{color-scheme:light dark;--ground:#fff;--ink:#1c2620;--quiet:#526057;--line:#d8dad0;--leaf:#1f5c39;--soft:#f3f5ef}" +
  "@media(prefers-color-scheme:dark){:root{--ground:#141a16;--ink:#e8eee9;--quiet:#a8b6ac;--line:#344039;--leaf:#8fd3a6;--soft:#1d2520}}" +
  "body{background:var(--ground);color:var(--ink);font:1rem/1.55 system-ui,'Segoe UI',Roboto,sans-serif;margin:0 auto;max-width:48rem;overflow-wrap:break-word;padding:1rem 1rem 4rem}" +
  "h1,h2,h3{line-height:1.25}h2{border-top:1px solid var(--line);margin-top:2rem;padding-top:1rem}a{color:var(--leaf)}" +
  "code{background:var(--soft);border-radius:.25rem;padding:.1em .25em}pre{background:var(--soft);border-radius:.375rem;overflow-x:auto;padding:.75rem}pre code{padding:0}" +
  ".wide{overflow-x:auto}table{border-collapse:collapse}th,td{border:1px solid var(--line);padding:.25rem .5rem;text-align:start;vertical-align:top}th{background:var(--soft)}img{max-width:100%}" +
  "blockquote{border-inline-start:.25rem solid var(--line);margin-inline:0;padding-inline-start:1rem}";
