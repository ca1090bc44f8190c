import { copyFileSync, existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { provideBrowser } from "../../../src/build/provideBrowser.ts";
import { launchAt } from "../launchAt.ts";
import { footBookPicture } from "./footBookPicture.ts";
import { practicePictures } from "./practicePictures.ts";
import { taskPanePictures } from "./taskPanePictures.ts";

// `npm run pictures`: opens every page as a person would and takes its picture into dist/pictures, to be looked at.
// The two that the README shows go into docs/pictures.
// `npm run pictures -- practice` takes those of the practice sheet only, `-- taskPane` those of the task pane,
// `-- footBook` that of the foot book, which needs LibreOffice.
const wanted = process.argv.slice(2);
const folder = join("dist", "pictures");
const shown = { "foot-book.png": "foot-book.png", "practice-sheet-light.png": "practice-sheet.png" };
mkdirSync(folder, { recursive: true });
const browser = await launchAt(provideBrowser());
try {
  for (const take of [taskPanePictures, practicePictures, footBookPicture])
    if (wanted.length === 0 || wanted.some((part) => take.name.includes(part))) await take(browser, folder);
  for (const [taken, kept] of Object.entries(shown))
    if (existsSync(join(folder, taken))) copyFileSync(join(folder, taken), join("docs", "pictures", kept));
} finally {
  await browser.close();
}
