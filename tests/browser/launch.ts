import type { Browser } from "playwright-core";
import { inject } from "vitest";
import { launchAt } from "./launchAt.ts";

/** The browser of the tests. */
export const launch = (): Promise<Browser> => launchAt(inject("browserPath"));
