import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Parameter } from "../../reading/parameter.ts";

/** The name under which the bundle stands in the script. */
export const bundleName = "soundfold";

/**
 * The script that is pasted into Google Sheets: a function with its autocomplete comment for each definition, then the
 * bundle that answers them.
 */
export const scriptFile = (definitions: readonly AnyFunction[], version: string, bundle: string): string =>
  [
    `/**\n * Soundfold ${version}: worksheet functions for sheep foot health.\n * Made by npm run build:sheets; changes here are lost with the next version.\n *\n * @OnlyCurrentDoc\n */\n`,
    ...definitions.map(stub),
    bundle,
  ].join("\n");

function stub(definition: AnyFunction): string {
  const parameters = Object.entries(definition.parameters as Record<string, Parameter<unknown>>);
  const lines = [
    definition.summary,
    ...(definition.caution === undefined ? [] : [definition.caution.words]),
    "",
    ...parameters.map(
      ([name, { optional, description }]) => `@param ${optional ? `[${name}]` : name} ${oneLine(description)}`,
    ),
    `@return ${oneLine(definition.result.headings.join(", "))}`,
    "@customfunction",
  ];
  const comment = lines.map((line) => ` * ${oneLine(line)}`.trimEnd()).join("\n");
  const names = parameters.map(([name]) => name).join(", ");
  return `/**\n${comment}\n */\nfunction FOOT_${definition.name}(${names}) {\n  return ${bundleName}.call(${JSON.stringify(definition.name)}, arguments);\n}\n`;
}

// A comment must not end early, whatever a description says.
const oneLine = (text: string): string => text.replaceAll("*/", "* /").replace(/\s+/g, " ");
