import { mkdir, readdir } from "node:fs/promises";
import { join, resolve } from "node:path";
import type { FlockPageContent } from "../workbooks/flockPage/flockPageContent.ts";
import { BadInput } from "./badInput.ts";
import type { Terminal } from "./command.ts";
import { withPlainFileErrors } from "./fileTrouble.ts";
import { pageNames } from "./pageNames.ts";
import { progressBar } from "./progressBar.ts";
import { writeWhole } from "./writeWhole.ts";

/**
 * Checks that pages can be written into a folder without anything being lost.
 *
 * @param records - the folders and files that are read
 * @throws BadInput when it is one of them, is no folder, or holds something
 */
export async function emptyFolder(pages: string, records: readonly string[]): Promise<void> {
  const among = records.find((path) => resolve(path) === resolve(pages));
  if (among !== undefined)
    throw new BadInput(`The pages cannot go among the books in ${among}; name another folder with --pages.`);
  const there = await withPlainFileErrors(`${pages} cannot be used for the pages`, () => entriesOf(pages), {
    ENOTDIR: "it is a file, not a folder",
  });
  if (there.length > 0)
    throw new BadInput(`${pages} is not empty, and nothing in it is replaced; name a new folder with --pages.`);
}

const entriesOf = (folder: string): Promise<readonly string[]> =>
  readdir(folder).catch((error: unknown) => {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return [];
    throw error;
  });

/** Writes each page as a workbook of its own. @returns what to say of them */
export async function writePages(
  pages: readonly FlockPageContent[],
  folder: string,
  terminal: Terminal,
): Promise<string> {
  // Writing takes half a second to load, so it is loaded only once there is something to write.
  const { flockPage } = await import("../workbooks/flockPage/flockPage.ts");
  const { authorWorkbook } = await import("../workbooks/writing/authorWorkbook.ts");
  await withPlainFileErrors(`${folder} cannot be made`, () => mkdir(folder, { recursive: true }));
  const names = pageNames(pages.map(({ flock }) => flock));
  for (const [place, page] of pages.entries()) {
    const name = names[place] as string;
    terminal.progress(progressBar(place, pages.length, name));
    await writeWhole(join(folder, name), await authorWorkbook(flockPage(page)));
  }
  terminal.progressDone();
  return `\n${pages.length} ${pages.length === 1 ? "page" : "pages"}, one a flock: ${folder}`;
}
