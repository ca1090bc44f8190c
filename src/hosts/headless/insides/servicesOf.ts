import type { Injector, Univer } from "@univerjs/core";

/** What gives the services of an embedded spreadsheet, and lets them be used before its plugins are there. */
export const servicesOf = (univer: Univer): Injector => univer.__getInjector();
