import { type Browser, chromium } from "playwright-core";

/** A browser without a window that talks to nobody of its own accord. */
export const launchAt = (executablePath: string): Promise<Browser> =>
  chromium.launch({
    executablePath,
    args: [
      "--headless",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  });
