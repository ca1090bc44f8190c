/** What the person typed, or the file they gave, cannot be worked with: one sentence, exit code 2. */
export class BadInput extends Error {
  override readonly name = "BadInput";
}
