/** Why a formula cannot be worked out here; its cell keeps the saved value. */
export class NotWorkedOut extends Error {
  override readonly name = "NotWorkedOut";
}

/** A formula whose result is this error, whatever the cells hold. */
export class CertainError extends Error {
  override readonly name = "CertainError";
}
