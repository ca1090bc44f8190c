import type { Cell } from "../../cells/cell.ts";
import { showCell } from "../../cells/cell.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Parameter } from "../../reading/parameter.ts";

/** One function as Excel's metadata describes it. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl?: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly type: "any"; readonly dimensionality: "scalar" | "matrix" };
}

interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: "any";
  readonly dimensionality: "scalar" | "matrix";
  readonly optional?: true;
}

/** The file that tells Excel which functions there are. */
export interface FunctionsFile {
  readonly allowCustomDataForDataTypeAny: true;
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
}

/**
 * Excel's description of the functions. A function's id is its name and never changes, since workbooks refer to it.
 *
 * @param helpPage - address of the page with one anchor a function; left out of the committed snapshot
 */
export const functionsJson = (definitions: readonly AnyFunction[], helpPage?: string): FunctionsFile => ({
  // Errors are handed over too, so that the message can say which cell to mend.
  allowCustomDataForDataTypeAny: true,
  allowErrorForDataTypeAny: true,
  functions: definitions.map((definition) => metadata(definition, helpPage)),
});

const metadata = (definition: AnyFunction, helpPage: string | undefined): FunctionMetadata => ({
  id: definition.name,
  name: definition.name,
  description: definition.caution ? `${definition.summary} ${definition.caution.words}` : definition.summary,
  ...(helpPage === undefined ? {} : { helpUrl: `${helpPage}#${definition.name}` }),
  parameters: Object.entries(definition.parameters as Record<string, Parameter<unknown>>).map(parameterMetadata),
  result: { type: "any", dimensionality: definition.result.shape === "single" ? "scalar" : "matrix" },
});

const parameterMetadata = ([name, parameter]: [string, Parameter<unknown>]): ParameterMetadata => ({
  name,
  description: describe(parameter),
  type: "any",
  dimensionality: parameter.shape === "one" ? "scalar" : "matrix",
  ...(parameter.optional ? { optional: true } : {}),
});

const describe = ({ description, fallback }: Parameter<unknown>): string =>
  fallback === undefined ? description : `${description}; ${showCell(fallback as Cell)} when left out`;
