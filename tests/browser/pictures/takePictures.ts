import { mkdirSync } from "node:fs";
import process from "node:process";
import { provideBrowser } from "../../../src/build/provideBrowser.ts";
import { launchAt } from "../launchAt.ts";
import { practicePictures } from "./practicePictures.ts";
import { taskPanePictures } from "./taskPanePictures.ts";

// `npm run pictures`: opens every page as a person would and takes its picture into docs/pictures.
// `npm run pictures -- practice` takes those of the practice sheet only, `-- taskPane` those of the task pane.
const wanted = process.argv.slice(2);
const folder = "docs/pictures";
mkdirSync(folder, { recursive: true });
const browser = await launchAt(provideBrowser());
try {
  for (const take of [taskPanePictures, practicePictures])
    if (wanted.length === 0 || wanted.some((part) => take.name.includes(part))) await take(browser, folder);
} finally {
  await browser.close();
}
