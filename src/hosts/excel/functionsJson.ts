import type { Cell } from "../../cells/cell.ts";
import { showCell } from "../../cells/cell.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Parameter } from "../../reading/parameter.ts";

/** One function as Excel's metadata describes it. */
interface FunctionMetadata {
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
  /** The choices that are offered while it is typed; versions that do not know it pass over it. */
  readonly customEnumId?: string;
}

/** Choices that are offered while an argument is typed. */
interface EnumMetadata {
  readonly id: string;
  readonly type: "string";
  readonly values: readonly { readonly name: string; readonly stringValue: string }[];
}

/** The file that tells Excel which functions there are. */
export interface FunctionsFile {
  readonly allowCustomDataForDataTypeAny: true;
  readonly allowErrorForDataTypeAny: true;
  readonly enums: readonly EnumMetadata[];
  readonly functions: readonly FunctionMetadata[];
}

/**
 * Excel's description of the functions. A function's id is its name and never changes, since workbooks refer to it.
 *
 * @param helpPage - address of the page with one anchor a function; left out of the committed snapshot
 */
export function functionsJson(definitions: readonly AnyFunction[], helpPage?: string): FunctionsFile {
  const enums = new Map<string, EnumMetadata>();
  const functions = definitions.map((definition) => metadata(definition, helpPage, enums));
  // Errors are handed over too, so that the message can say which cell to mend.
  return { allowCustomDataForDataTypeAny: true, allowErrorForDataTypeAny: true, enums: [...enums.values()], functions };
}

type Enums = Map<string, EnumMetadata>;

const metadata = (definition: AnyFunction, helpPage: string | undefined, enums: Enums): FunctionMetadata => ({
  id: definition.name,
  name: definition.name,
  // The whole caution is on the help page and in the pane: the formula list cuts long texts.
  description: definition.caution ? `${definition.summary} ${definition.caution.brief}` : definition.summary,
  ...(helpPage === undefined ? {} : { helpUrl: `${helpPage}#${definition.name}` }),
  parameters: Object.entries(definition.parameters as Record<string, Parameter<unknown>>).map(([name, parameter]) => ({
    name,
    description: describe(parameter),
    type: "any",
    dimensionality: parameter.shape === "one" ? "scalar" : "matrix",
    ...(parameter.optional ? { optional: true } : {}),
    ...choicesOf(definition.name, name, parameter, enums),
  })),
  result: { type: "any", dimensionality: definition.result.shape === "single" ? "scalar" : "matrix" },
});

/** Parameters with the same words share one list. */
function choicesOf(
  definition: string,
  name: string,
  { shape, kind }: Parameter<unknown>,
  enums: Enums,
): Pick<ParameterMetadata, "customEnumId"> {
  if (shape !== "one" || kind.holds !== "text" || kind.words === undefined) return {};
  const key = kind.words.join("|");
  const known = enums.get(key) ?? {
    id: `${definition}.${name}`,
    type: "string",
    values: kind.words.map((word) => ({ name: word, stringValue: word })),
  };
  enums.set(key, known);
  return { customEnumId: known.id };
}

const describe = ({ description, fallback }: Parameter<unknown>): string =>
  fallback === undefined ? description : `${description}; ${showCell(fallback as Cell)} when left out`;
