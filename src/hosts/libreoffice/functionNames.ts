import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { argumentName, methodName, serviceName, storedName } from "./calcNames.ts";
import { element, xmlFile } from "./xml.ts";

/** CalcAddIns.xcu: the names and texts that Calc shows, and the name under which Excel files keep each function. */
export function functionNames(definitions: readonly AnyFunction[]): string {
  return xmlFile(
    element(
      "oor:component-data",
      {
        "xmlns:oor": "http://openoffice.org/2001/registry",
        "xmlns:xs": "http://www.w3.org/2001/XMLSchema",
        "oor:name": "CalcAddIns",
        "oor:package": "org.openoffice.Office",
      },
      [node("AddInInfo", [node(serviceName, [node("AddInFunctions", definitions.map(named))], "replace")])],
    ),
  );
}

const named = (definition: AnyFunction): string =>
  node(
    methodName(definition),
    [
      shown("DisplayName", `FOOT.${definition.name}`),
      shown("Description", [definition.summary, definition.caution?.words].filter(Boolean).join(" ")),
      // Calc has a fixed list of categories; in this one all the functions stand together.
      element("prop", { "oor:name": "Category" }, [element("value", {}, "Add-In")]),
      shown("CompatibilityName", storedName(definition)),
      node(
        "Parameters",
        Object.entries(definition.parameters as Record<string, Parameter<unknown>>).map(([name, parameter], index) =>
          node(
            argumentName(index),
            [shown("DisplayName", name), shown("Description", parameter.description)],
            "replace",
          ),
        ),
      ),
    ],
    "replace",
  );

const node = (name: string, children: readonly string[], op?: string): string =>
  element("node", { "oor:name": name, ...(op === undefined ? {} : { "oor:op": op }) }, children);

// Calc falls back to the texts of "en-US" in every other language.
const shown = (name: string, text: string): string =>
  element("prop", { "oor:name": name }, [element("value", { "xml:lang": "en-US" }, text)]);
