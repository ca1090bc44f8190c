import { type Expression, type Node, type Property, parse } from "acorn";

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

/**
 * A webpack loader that leaves out of a definition, already turned into JavaScript, what only readers need.
 *
 * @example
 * sheetOnly('defineFunction({ name: "A", summary: "…", compute })') // → 'defineFunction({ name: "A",  compute })'
 */
export default function sheetOnly(source: string): string {
  let kept = source;
  // From the end, so that the places of what comes before stay right.
  for (const { start, end } of propertiesForReaders(source).toReversed()) {
    const comma = /^\s*,/.exec(kept.slice(end));
    kept = kept.slice(0, start) + kept.slice(end + (comma?.[0].length ?? 0));
  }
  return kept;
}

function propertiesForReaders(source: string): readonly Property[] {
  const { body } = parse(source, { ecmaVersion: "latest", sourceType: "module" });
  return body
    .flatMap((statement) =>
      statement.type === "ExportNamedDeclaration" && statement.declaration ? statement.declaration : statement,
    )
    .flatMap((statement) => (statement.type === "VariableDeclaration" ? statement.declarations : []))
    .flatMap(({ init }) => (init ? definitionIn(init) : []))
    .filter(({ key }) => key.type === "Identifier" && forReaders.has(key.name));
}

function definitionIn(expression: Expression): readonly Property[] {
  if (expression.type !== "CallExpression") return [];
  const { callee, arguments: given } = expression;
  const [definition] = given;
  if (!(callee.type === "Identifier" && callee.name === "defineFunction") || definition?.type !== "ObjectExpression")
    return [];
  return definition.properties.filter((property: Node): property is Property => property.type === "Property");
}
