import type { Browser } from "playwright-core";
import { afterAll, beforeAll, inject } from "vitest";
import { type Serving, serveFolder } from "../../../src/build/practice/serveFolder.ts";
import { launch } from "../launch.ts";
import { type Meeting, type OpenedPage, openPractice, startPractice } from "./practicePage.ts";

interface ServedPractice {
  /** Opens the page and waits until the flock foot book can be typed into. */
  readonly open: (meeting?: Meeting) => Promise<OpenedPage>;
  /** Opens the page and waits for nothing. */
  readonly start: (meeting?: Meeting) => Promise<OpenedPage>;
}

/** The practice sheet for the tests of one file: a server and a browser, put away after the last. */
export function servedPractice(): ServedPractice {
  let serving: Serving;
  let browser: Browser;
  beforeAll(async () => {
    serving = await serveFolder(inject("practiceFolder"), [0]);
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    serving?.close();
  });
  return {
    open: (meeting) => openPractice(browser, serving.address, meeting),
    start: (meeting) => startPractice(browser, serving.address, meeting),
  };
}
