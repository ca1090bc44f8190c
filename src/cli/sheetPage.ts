import { readFile } from "node:fs/promises";
import { BadInput } from "./badInput.ts";

// Beside the installed command; in a checkout where it is built.
const places = [
  new URL("soundfold.html", import.meta.url),
  new URL("../../dist/practice/soundfold.html", import.meta.url),
];

/** The page that is one file, which a workbook can be put into. */
export async function sheetPage(): Promise<string> {
  for (const place of places) {
    try {
      return await readFile(place, "utf8");
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
    }
  }
  throw new BadInput("The page is not built yet; run npm run build:practice in this checkout, then try again.");
}
