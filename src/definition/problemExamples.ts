import { nothingToReport, Problem } from "../cells/problem.ts";

/** In an example: bad input, with the message the user sees, `argument: sentence` or `argument, row 3: sentence`. */
export const problem = (message: string): Problem => new Problem(message);

/** In an example: sound input with nothing to report. */
export const nothing = (message: string): Problem => nothingToReport(message);
