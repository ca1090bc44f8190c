/** A Markdown table. */
export const markdownRows = (headings: readonly string[], rows: readonly (readonly string[])[]): string =>
  [headings, headings.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
