import type * as core from "@univerjs/core";
import type * as formula from "@univerjs/engine-formula";

/**
 * The engine's packages, handed in: in Node they must be required, in a page they are imported.
 */
export interface UniverParts {
  readonly core: typeof core;
  readonly formula: typeof formula;
}
