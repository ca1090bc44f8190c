import { FunctionType, type IFunctionInfo } from "@univerjs/engine-formula";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { namespace } from "../../../definition/formulaText.ts";
import type { Parameter } from "../../../reading/parameter.ts";

/** What the embedded spreadsheet shows while a formula is typed. */
export const functionTips = (catalogue: readonly AnyFunction[]): IFunctionInfo[] =>
  catalogue.map((definition) => ({
    functionName: `${namespace}.${definition.name}`,
    functionType: FunctionType.User,
    description: [definition.summary, definition.caution?.words ?? ""].join(" ").trim(),
    abstract: definition.summary,
    functionParameter: Object.entries(definition.parameters as Record<string, Parameter<unknown>>).map(
      ([name, { description, optional }]) => ({
        name,
        detail: description,
        example: "",
        require: optional ? 0 : 1,
        repeat: 0,
      }),
    ),
  }));
