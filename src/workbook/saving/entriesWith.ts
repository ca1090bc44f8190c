import type { Entry } from "../zip/readZip.ts";

/** The entries of a file with some texts changed or added, and some parts gone; names in any case. */
export function entriesWith(
  entries: readonly Entry[],
  changed: ReadonlyMap<string, string>,
  dropped: ReadonlySet<string>,
): Entry[] {
  const encoder = new TextEncoder();
  const texts = new Map([...changed].map(([part, text]) => [part.toLowerCase(), { part, text }]));
  const kept = entries.flatMap((entry): Entry[] => {
    if (dropped.has(entry.name.toLowerCase())) return [];
    const text = texts.get(entry.name.toLowerCase())?.text;
    texts.delete(entry.name.toLowerCase());
    return [text === undefined ? entry : { ...entry, bytes: encoder.encode(text) }];
  });
  const added = [...texts.values()].map(({ part, text }) => ({
    name: part,
    bytes: encoder.encode(text),
    stored: false,
  }));
  return [...kept, ...added];
}
