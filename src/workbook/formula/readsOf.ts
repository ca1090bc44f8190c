import { lastColumn, lastRow } from "../limits.ts";
import type { AreaNode, FormulaNode } from "./parseFormula.ts";
import type { SheetArea } from "./referencesIn.ts";

export interface Reads {
  /** The cells the formula names and whose values it may read. */
  readonly areas: readonly SheetArea[];
  /** Which cells it reads shows only while it is worked out. */
  readonly dynamic: boolean;
}

// Where a reference stands for its place, not for what is in it.
const placeOnly: ReadonlySet<string> = new Set(
  "ROW ROWS COLUMN COLUMNS SHEET SHEETS AREAS ISREF ISFORMULA OFFSET".split(" "),
);
const dynamic: ReadonlySet<string> = new Set(["OFFSET", "INDIRECT", "ANCHORARRAY"]);

// Their third range is read as far as the first goes, however few cells it names (ECMA-376 part 1, 18.17.7.323 SUMIF).
const summedLikeFirst: ReadonlySet<string> = new Set(["SUMIF", "AVERAGEIF"]);

function reachedIn({ sheet, area: { top, left, bottom, right } }: AreaNode, { area }: AreaNode): SheetArea {
  const wholeBottom = Math.min(lastRow - 1, top + area.bottom - area.top);
  const wholeRight = Math.min(lastColumn - 1, left + area.right - area.left);
  return { sheet, area: { top, left, bottom: Math.max(bottom, wholeBottom), right: Math.max(right, wholeRight) } };
}

/** The cells that a formula reads. */
export function readsOf(node: FormulaNode): Reads {
  const areas: SheetArea[] = [];
  let isDynamic = false;
  const go = (at: FormulaNode | undefined): void => {
    if (at === undefined) return;
    switch (at.kind) {
      case "area":
        areas.push(at);
        return;
      case "sign":
      case "percent":
        go(at.of);
        return;
      case "operation":
        go(at.left);
        go(at.right);
        return;
      case "references":
        isDynamic ||= at.by === "range";
        go(at.left);
        go(at.right);
        return;
      case "call": {
        isDynamic ||= dynamic.has(at.name);
        if (summedLikeFirst.has(at.name)) {
          const [range, , summed] = at.given;
          if (range?.kind === "area" && summed?.kind === "area") areas.push(reachedIn(summed, range));
          else if (summed) isDynamic = true;
        }
        const [first, ...others] = at.given;
        if (!(placeOnly.has(at.name) && first?.kind === "area")) go(first);
        for (const one of others) go(one);
        return;
      }
      case "invoke":
        go(at.of);
        for (const one of at.given) go(one);
        return;
      default:
    }
  };
  go(node);
  return { areas, dynamic: isDynamic };
}
