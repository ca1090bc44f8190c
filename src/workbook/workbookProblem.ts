import { clipped } from "../cells/clipped.ts";

/** A file that cannot be worked on: one sentence for the person who opened it. */
export class WorkbookProblem extends Error {
  override readonly name = "WorkbookProblem";

  constructor(sentence: string, options?: ErrorOptions) {
    super(clipped(sentence), options);
  }
}
