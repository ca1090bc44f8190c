import type { AnyFunction } from "../src/definition/defineFunction.ts";

import { clearDateFunction } from "./dates/clearDate.ts";
import { tagKeyFunction } from "./records/tagKey.ts";

/** Every worksheet function, in the order in which lists show them. */
export const catalogue: readonly AnyFunction[] = [clearDateFunction, tagKeyFunction];
