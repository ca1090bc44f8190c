import { clipped } from "../cells/clipped.ts";
import { namespace } from "../definition/formulaText.ts";
import type { Summary } from "../workbook/summary.ts";
import { textColumns } from "./textColumns.ts";

/** What a recalculation did, in lines: how much, by which functions, what ended in an error, what was left alone. */
export function summaryText(summary: Summary): string {
  const { formulas, kept, errors, left, untouched, circular } = summary;
  const lines = [
    `${counted(formulas, "formula", "formulas")} worked out${callsText(summary)}.`,
    ...(kept > 0
      ? [
          `${counted(kept, "formula keeps", "formulas keep")} what the spreadsheet had worked out; --all works out these too.`,
        ]
      : []),
    ...(circular
      ? ["Some formulas go round in a circle: they depend on their own answer, which no program can settle."]
      : []),
  ];
  if (errors.length > 0) {
    lines.push(
      `${counted(errors.length, "cell ends", "cells end")} in an error:`,
      ...listing(
        together(errors, ({ code, message }) => [code, clipped(message ?? "")]),
        "cell",
      ),
    );
  }
  if (left.length > 0) {
    lines.push(
      `${counted(left.length, "formula keeps its saved value", "formulas keep their saved values")}:`,
      ...listing(
        together(left, ({ reason }) => [reason]),
        "formula",
      ),
    );
  }
  if (untouched.length > 0) lines.push(`Kept untouched: ${untouched.join(", ")}.`);
  return lines.join("\n");
}

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

interface Cell {
  readonly sheet: string;
  readonly address: string;
}

/** So many cells of one kind are named; more would only push the other kinds off the screen. */
const named = 3;

/** So many kinds are listed: a file may hold a message of its own for each of its cells. */
const mostListed = 40;

interface Alike {
  readonly row: readonly string[];
  readonly cells: number;
}

/** All cells of a sheet of which the same is said, in the order of the first ones. */
function together<C extends Cell>(cells: readonly C[], said: (cell: C) => readonly string[]): readonly Alike[] {
  const groups = new Map<string, C[]>();
  for (const cell of cells) {
    const key = JSON.stringify([cell.sheet, ...said(cell)]);
    const group = groups.get(key);
    if (group) group.push(cell);
    else groups.set(key, [cell]);
  }
  return [...groups.values()].map((group) => {
    const [first] = group as [C, ...C[]];
    const addresses = group.slice(0, named).map(({ address }) => address);
    const more = group.length > named ? ` and ${group.length - named} more` : "";
    return { row: [`${clipped(first.sheet)}!${addresses.join(", ")}${more}`, ...said(first)], cells: group.length };
  });
}

function listing(kinds: readonly Alike[], what: string): readonly string[] {
  const rows = kinds.slice(0, mostListed).map(({ row }) => row);
  const rest = kinds.slice(mostListed).reduce((sum, { cells }) => sum + cells, 0);
  return [...indented(rows), ...(rest > 0 ? [`  and ${counted(rest, `more ${what}`, `more ${what}s`)}`] : [])];
}

const indented = (rows: readonly (readonly string[])[]): readonly string[] =>
  textColumns([["", "", ""], ...rows])
    .slice(1)
    .map((line) => `  ${line}`);

function callsText({ calls }: Summary): string {
  const own = calls.filter(({ name }) => name.startsWith(`${namespace}.`));
  if (own.length === 0) return "";
  return `; with ${own.map(({ name, formulas }) => `${name} ${formulas}`).join(", ")}`;
}
