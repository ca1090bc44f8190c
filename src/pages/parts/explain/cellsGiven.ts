import type { Cell, Cells } from "../../../cells/cell.ts";
import { dayOf } from "../../../cells/day.ts";
import type { Argument } from "../../../reading/readArguments.ts";

/** Cells that an argument of a formula stands for. */
export interface FoundCells {
  /** Where they are, with their sheet: `Gathers!C2:C13`. */
  readonly address: string;
  readonly cells: Cells;
}

/** Cells by the argument's text as it stands in the formula. */
export type Found = ReadonlyMap<string, FoundCells>;

/**
 * What an argument hands to its function: the cells that were found for it, or what is typed in the formula itself.
 *
 * @param typed - the argument as it stands in the formula
 * @param dayOffset - 1462 in a workbook that counts days from 1904
 * @returns `{ known: undefined }` for one that was left out; undefined where it has to be worked out first
 * @example
 * cellsGiven('"exact"', new Map()) // → { known: "exact" }
 * cellsGiven("DATE(2026,3,14)", new Map()) // → { known: 46095 }
 */
export function cellsGiven(typed: string, found: Found, dayOffset = 0): { readonly known: Argument } | undefined {
  const cells = found.get(typed)?.cells;
  if (cells) return { known: cells.length === 1 && cells[0]?.length === 1 ? (cells[0][0] as Cell) : cells };
  if (typed === "") return { known: undefined };
  if (/^"(?:[^"]|"")*"$/.test(typed)) return { known: typed.slice(1, -1).replaceAll('""', '"') };
  if (/^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?$/i.test(typed)) return { known: Number(typed) };
  if (/^(?:TRUE|FALSE)$/i.test(typed)) return { known: typed.toUpperCase() === "TRUE" };
  return dateGiven(typed, dayOffset);
}

function dateGiven(typed: string, dayOffset: number): { readonly known: number } | undefined {
  const parts = /^DATE\(\s*(\d{4})\s*[,;]\s*(\d{1,2})\s*[,;]\s*(\d{1,2})\s*\)$/i.exec(typed);
  if (!parts) return undefined;
  const [, year = "", month = "", day = ""] = parts;
  try {
    return { known: dayOf(`${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`) - dayOffset };
  } catch {
    // The spreadsheet counts DATE(2026,14,40) on into the next year.
    return undefined;
  }
}
