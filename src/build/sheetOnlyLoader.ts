import { type AnyNode, type CallExpression, type Program, parse } from "acorn";

// What a definition holds for readers. Inside a spreadsheet nothing reads it, and it is most of a definition's weight.
const forReaders: ReadonlySet<string> = new Set([
  "topic",
  "summary",
  "questions",
  "notes",
  "caution",
  "sources",
  "examples",
]);

/** A stretch of the source, and what comes in its place. */
interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * A webpack loader that leaves out of a definition, already turned into JavaScript, what only readers need: texts,
 * sources, examples and the descriptions of the parameters.
 *
 * @example
 * sheetOnly('defineFunction({ name: "A", summary: "…", compute })') // → 'defineFunction({ name: "A",  compute })'
 */
export default function sheetOnly(source: string): string {
  const program = parse(source, { ecmaVersion: "latest", sourceType: "module" });
  const describing = importedFrom(program, "reading/parameter.ts");
  const harmless = importedFrom(program, "cells/day.ts");
  const edits = callsIn(program).flatMap((call) => {
    if (call.callee.type !== "Identifier") return [];
    const { name } = call.callee;
    if (name === "defineFunction") return withoutReaders(call, source);
    if (describing.has(name)) return withoutDescription(call);
    // Dates of examples that are left out are left out too, once the call is known to do nothing else.
    return harmless.has(name) ? [{ start: call.start, end: call.start, text: "/* @__PURE__ */ " }] : [];
  });
  return applied(edits, source);
}

const importedFrom = ({ body }: Program, file: string): ReadonlySet<string> =>
  new Set(
    body
      .flatMap((node) =>
        node.type === "ImportDeclaration" && String(node.source.value).endsWith(file) ? node.specifiers : [],
      )
      .map(({ local }) => local.name),
  );

function withoutReaders({ arguments: [definition] }: CallExpression, source: string): readonly Edit[] {
  if (definition?.type !== "ObjectExpression") return [];
  return definition.properties.flatMap((property) => {
    if (property.type !== "Property" || property.key.type !== "Identifier" || !forReaders.has(property.key.name))
      return [];
    const comma = /^\s*,/.exec(source.slice(property.end));
    return [{ start: property.start, end: property.end + (comma?.[0].length ?? 0), text: "" }];
  });
}

// The description is the last text among the arguments: what may stand before it is a default.
function withoutDescription({ arguments: given }: CallExpression): readonly Edit[] {
  const description = given.findLast((argument) => argument.type === "Literal" && typeof argument.value === "string");
  return description ? [{ start: description.start, end: description.end, text: '""' }] : [];
}

function callsIn(node: AnyNode): readonly CallExpression[] {
  const inside = Object.values(node)
    .flat()
    .filter((part): part is AnyNode => typeof part === "object" && part !== null && "type" in part)
    .flatMap(callsIn);
  return node.type === "CallExpression" ? [node, ...inside] : inside;
}

// From the end, so that the places of what comes before stay right; what lies inside a stretch that goes is not touched.
function applied(edits: readonly Edit[], source: string): string {
  const outer = edits.filter(
    (edit) =>
      !edits.some(
        (other) => other !== edit && other.start <= edit.start && other.end >= edit.end && other.end > other.start,
      ),
  );
  return [...outer]
    .sort((a, b) => b.start - a.start)
    .reduce((text, edit) => text.slice(0, edit.start) + edit.text + text.slice(edit.end), source);
}
