import { type Place, placeText, readArea } from "../address.ts";
import type { StoredFormula } from "../model.ts";
import { WorkbookProblem } from "../workbookProblem.ts";

/** A formula as its element in a sheet part holds it. */
export interface OpenFormula {
  readonly attributes: Readonly<Record<string, string>>;
  readonly start: number;
  end: number;
  text: string;
}

const longestFormula = 8192 * 8;

/**
 * Reads the formulas of a sheet part, one after the other: a shared one is written out once, and its followers take it
 * from there.
 *
 * @param shift - the formula of a follower, so many rows and columns on
 * @throws WorkbookProblem, later, when a formula is shared that is not there
 */
export function storedFormulas(
  part: string,
  shift: (formula: string, rows: number, columns: number) => string,
): (open: OpenFormula, at: Place) => StoredFormula {
  const leaders = new Map<string, { text: string; row: number; column: number; start: number }>();
  return ({ attributes, start, end, text: own }, at) => {
    const { t: type, ref, si } = attributes;
    const area = ref === undefined ? undefined : readArea(ref);
    if (type === "array" && area) return { text: own, kind: "array", area, start, end };
    if (type === "dataTable") return { text: own, kind: "data table", start, end };
    if (type !== "shared" || si === undefined) return { text: own, kind: "plain", start, end };
    if (own !== "") {
      leaders.set(si, { text: own, row: at.row, column: at.column, start });
      return { text: own, kind: "shared", leader: start, start, end };
    }
    const leader = leaders.get(si);
    if (!leader)
      throw new WorkbookProblem(
        `The workbook is damaged: cell ${placeText(at)} in ${part} shares a formula that is not there.`,
      );
    // No formula is longer; what is, is left as saved, and copies that differ would fill the memory.
    const text =
      leader.text.length > longestFormula
        ? leader.text
        : shift(leader.text, at.row - leader.row, at.column - leader.column);
    return { text, kind: "shared", leader: leader.start, start, end };
  };
}
