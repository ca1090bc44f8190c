import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Parameter } from "../../reading/parameter.ts";

/** Whether a function reads or gives dates, so that it must know from which day the document counts. */
export const needsDateSystem = ({ parameters, result }: AnyFunction): boolean =>
  result.formats.some((format) => format === "date" || format === "date and time") ||
  (Object.values(parameters) as Parameter<unknown>[]).some(
    ({ kind, shape }) => kind.holds === "date" || shape === "block",
  );
