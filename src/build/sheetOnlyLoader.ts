import type { CallExpression, Program } from "acorn";
import { type Edit, editCalls, withoutProperties } from "./editCalls.ts";

// What a definition holds for readers. Inside a spreadsheet nothing reads it, and it is most of a definition's weight.
const forReaders: ReadonlySet<string> = new Set(["summary", "questions", "notes", "caution", "sources", "examples"]);

/**
 * A webpack loader that leaves out of a definition, already turned into JavaScript, what only readers need: texts,
 * sources, examples and the descriptions of the parameters.
 *
 * @example
 * sheetOnly('defineFunction({ name: "A", summary: "…", compute })') // → 'defineFunction({ name: "A",  compute })'
 */
export default function sheetOnly(source: string): string {
  return editCalls(source, (program) => {
    const describing = importedFrom(program, "reading/parameter.ts");
    const harmless = importedFrom(program, "cells/day.ts");
    return (call) => {
      if (call.named === "defineFunction") return withoutProperties(call, forReaders, source);
      if (describing.has(call.named)) return withoutDescription(call);
      // Dates of examples that are left out are left out too, once the call is known to do nothing else.
      return harmless.has(call.named) ? [{ start: call.start, end: call.start, text: "/* @__PURE__ */ " }] : [];
    };
  });
}

const importedFrom = ({ body }: Program, file: string): ReadonlySet<string> =>
  new Set(
    body
      .flatMap((node) =>
        node.type === "ImportDeclaration" && String(node.source.value).endsWith(file) ? node.specifiers : [],
      )
      .map(({ local }) => local.name),
  );

// The description is the last text among the arguments: what may stand before it is a default.
function withoutDescription({ arguments: given }: CallExpression): readonly Edit[] {
  const description = given.findLast((argument) => argument.type === "Literal" && typeof argument.value === "string");
  return description ? [{ start: description.start, end: description.end, text: '""' }] : [];
}
