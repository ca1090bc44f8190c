import { mkdirSync } from "node:fs";
import { provideBrowser } from "../../../src/build/provideBrowser.ts";
import { launchAt } from "../launchAt.ts";
import { taskPanePictures } from "./taskPanePictures.ts";

// `npm run pictures`: opens every page as a person would and takes its picture into docs/pictures.
const folder = "docs/pictures";
mkdirSync(folder, { recursive: true });
const browser = await launchAt(provideBrowser());
try {
  for (const take of [taskPanePictures]) await take(browser, folder);
} finally {
  await browser.close();
}
