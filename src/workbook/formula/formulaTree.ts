import { movedDown } from "./movedDown.ts";
import type { FormulaNode } from "./parseFormula.ts";
import { readsOf } from "./readsOf.ts";
import type { SheetArea } from "./referencesIn.ts";

/** A formula as a tree, for itself and for all that are the same in other rows: a tree for each would fill the memory. */
export class FormulaTree {
  /** Which cells it reads shows only while it is worked out. */
  readonly dynamic: boolean;
  readonly #node: FormulaNode;
  readonly #row: number;
  /** The row it was asked for last, since a formula is mostly worked out just after its reads were looked at. */
  #last: { readonly row: number; readonly node: FormulaNode };

  /** @param row - where the formula stands that the tree was made of, from 0 */
  constructor(node: FormulaNode, row: number) {
    this.#node = node;
    this.#row = row;
    this.#last = { row, node };
    this.dynamic = readsOf(node).dynamic;
  }

  nodeIn(row: number): FormulaNode {
    if (this.#last.row !== row) this.#last = { row, node: movedDown(this.#node, row - this.#row) };
    return this.#last.node;
  }

  readsIn(row: number): readonly SheetArea[] {
    return readsOf(this.nodeIn(row)).areas;
  }
}
