import { type Browser, chromium } from "playwright-core";
import { inject } from "vitest";

/** A browser without a window that talks to nobody of its own accord. */
export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: inject("browserPath"),
    args: [
      "--headless",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  });
