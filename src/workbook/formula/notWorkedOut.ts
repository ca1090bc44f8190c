import { clipped } from "../../cells/clipped.ts";

/** Why a formula cannot be worked out here; its cell keeps the saved value. */
export class NotWorkedOut extends Error {
  override readonly name = "NotWorkedOut";

  constructor(reason: string) {
    super(clipped(reason));
  }
}

/** A formula whose result is this error, whatever the cells hold. */
export class CertainError extends Error {
  override readonly name = "CertainError";

  constructor(reason: string) {
    super(clipped(reason));
  }
}
