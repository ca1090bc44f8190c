import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { argumentName, interfaceName, methodName, serviceName } from "./calcNames.ts";
import { needsDateSystem } from "./needsDateSystem.ts";

const rectangle = "sequence< sequence<any> >";

/**
 * The UNO interface of the functions as plain text, which Calc reads without a compiler.
 *
 * An argument that may be left out must be an `any`, since Calc (7.4 and 25.2, seen 2026-11) takes no other type as
 * optional. A required one is a rectangle, so that blank cells of a range arrive as empty text.
 */
export function typeLibrary(definitions: readonly AnyFunction[]): string {
  const module = serviceName.slice(0, serviceName.lastIndexOf("."));
  const methods = definitions.map((definition) => `  ${method(definition)}`);
  return `module ${module} {\ninterface ${interfaceName} {\n${methods.join("\n")}\n};\n};\n`;
}

function method(definition: AnyFunction): string {
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  const taken = parameters.map(({ optional }, index) => `[in] ${optional ? "any" : rectangle} ${argumentName(index)}`);
  // Calc fills a property set with the document itself; the person who types the formula does not see it.
  if (needsDateSystem(definition)) taken.push("[in] com::sun::star::beans::XPropertySet document");
  return `${givesRectangle(definition) ? rectangle : "any"} ${methodName(definition)}(${taken.join(", ")});`;
}

/** A result of several cells must be declared as one, or Calc answers #VALUE!. */
export const givesRectangle = ({ result }: AnyFunction): boolean => result.shape !== "single";
