import type { AreaNode, FormulaNode } from "./parseFormula.ts";

/** The tree of a formula as it reads so many rows further down, with its relative references moved along. */
export function movedDown(node: FormulaNode, rows: number): FormulaNode {
  if (rows === 0) return node;
  switch (node.kind) {
    case "area":
      return node.moving ? areaDown(node, node.moving, rows) : node;
    case "sign":
    case "percent":
      return { ...node, of: movedDown(node.of, rows) };
    case "operation":
    case "references":
      return { ...node, left: movedDown(node.left, rows), right: movedDown(node.right, rows) };
    case "call":
      // Written out: nearly every formula is one, and it is made anew for each cell that holds it.
      return { kind: "call", name: node.name, given: allDown(node.given, rows) };
    case "invoke":
      return { kind: "invoke", of: movedDown(node.of, rows), given: allDown(node.given, rows) };
    default:
      return node;
  }
}

function areaDown({ sheet, area }: AreaNode, moving: NonNullable<AreaNode["moving"]>, rows: number): AreaNode {
  const { left, right } = area;
  const top = moving.top ? area.top + rows : area.top;
  const bottom = moving.bottom ? area.bottom + rows : area.bottom;
  // An end that moves may pass one that stays.
  if (top <= bottom) return { kind: "area", sheet, area: { top, left, bottom, right }, moving };
  const turned = { top: moving.bottom, bottom: moving.top };
  return { kind: "area", sheet, area: { top: bottom, left, bottom: top, right }, moving: turned };
}

function allDown(given: readonly (FormulaNode | undefined)[], rows: number): readonly (FormulaNode | undefined)[] {
  const moved = new Array<FormulaNode | undefined>(given.length);
  for (let at = 0; at < given.length; at += 1) {
    const node = given[at];
    moved[at] = node && movedDown(node, rows);
  }
  return moved;
}
