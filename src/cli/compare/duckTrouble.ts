import { basename } from "node:path";

/** What the database says of a file that it cannot read, in words; undefined where the trouble is not with a file. */
export function duckTrouble(error: unknown): string | undefined {
  const said = error instanceof Error ? error.message : "";
  const line = /CSV Error on Line: (\d+)/.exec(said)?.[1];
  if (/not utf-8 encoded/i.test(said))
    return `Line ${line ?? "?"} holds letters that are not kept as UTF-8; save the file again as "CSV UTF-8".`;
  if (/quoted new lines|unterminated quote|quote should be followed/i.test(said)) return runsOn(line);
  if (
    /No magic bytes|too small to be a Parquet|Could not read enough bytes|Invalid Parquet|TProtocolException/i.test(
      said,
    )
  )
    return "It is no Parquet file, or a part of it is missing; make it or copy it again.";
  if (/No files found that match/i.test(said)) return "There is no such file.";
  if (/Out of Memory Error|No space left/i.test(said))
    return "There is not enough room in memory or in the folder for temporary files; make room, or compare fewer records at once.";
  if (line !== undefined) return `Line ${line} cannot be read as csv; look at its commas and quotes.`;
  return undefined;
}

/** A quote that is opened and never closed takes the rows after it into one cell. */
export const runsOn = (line: string | number | undefined): string =>
  `${line === undefined ? "Somewhere" : `In line ${line}`} a cell runs over several lines, as after a quote that is opened and not closed; mend it there, since rows after it would be lost.`;

/** The name of the file that the database speaks of. */
export function fileInTrouble(error: unknown): string | undefined {
  const said = error instanceof Error ? error.message : "";
  const path = /^\s*file = (.+)$/m.exec(said)?.[1] ?? /(?:file|pattern) ["']([^"']+)["']/.exec(said)?.[1];
  return path === undefined ? undefined : basename(path);
}
