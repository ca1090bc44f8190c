import { type AnyNode, type CallExpression, type Program, parse } from "acorn";

/** A stretch of the source, and what comes in its place. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A call of a function by its name. */
export interface NamedCall extends CallExpression {
  readonly named: string;
}

/**
 * Changes calls in a source that is already JavaScript.
 *
 * @param editsOf - what changes in one call
 * @example
 * editCalls("f(1)", () => ({ named, arguments: [one] }) => named === "f" ? [{ start: one.start, end: one.end, text: "2" }] : []) // → "f(2)"
 */
export function editCalls(source: string, editsOf: (program: Program) => (call: NamedCall) => readonly Edit[]): string {
  const program = parse(source, { ecmaVersion: "latest", sourceType: "module" });
  const edits = editsOf(program);
  return applied(
    callsIn(program).flatMap((call) =>
      call.callee.type === "Identifier" ? edits({ ...call, named: call.callee.name }) : [],
    ),
    source,
  );
}

/** Takes properties of the object that a call is given out of it. */
export function withoutProperties(
  { arguments: [object] }: CallExpression,
  names: ReadonlySet<string>,
  source: string,
): readonly Edit[] {
  if (object?.type !== "ObjectExpression") return [];
  return object.properties.flatMap((property) => {
    if (property.type !== "Property" || property.key.type !== "Identifier" || !names.has(property.key.name)) return [];
    const comma = /^\s*,/.exec(source.slice(property.end));
    return [{ start: property.start, end: property.end + (comma?.[0].length ?? 0), text: "" }];
  });
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
