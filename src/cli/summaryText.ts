import { namespace } from "../definition/formulaText.ts";
import type { Summary } from "../workbook/summary.ts";
import { textColumns } from "./textColumns.ts";

/** What a recalculation did, in lines: how much, by which functions, what ended in an error, what was left alone. */
export function summaryText(summary: Summary): string {
  const { formulas, errors, left, untouched, circular } = summary;
  const lines = [
    `${counted(formulas, "formula", "formulas")} worked out${callsText(summary)}.`,
    ...(circular
      ? ["Some formulas go round in a circle: they depend on their own answer, which no program can settle."]
      : []),
  ];
  if (errors.length > 0) {
    const rows = errors.map(({ sheet, address, code, message }) => [`${sheet}!${address}`, code, message ?? ""]);
    lines.push(`${counted(errors.length, "cell ends", "cells end")} in an error:`, ...indented(rows));
  }
  if (left.length > 0) {
    const rows = left.map(({ sheet, address, reason }) => [`${sheet}!${address}`, reason]);
    lines.push(
      `${counted(left.length, "formula keeps", "formulas keep")} the value it was saved with:`,
      ...indented(rows),
    );
  }
  if (untouched.length > 0) lines.push(`Kept untouched: ${untouched.join(", ")}.`);
  return lines.join("\n");
}

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

const indented = (rows: readonly (readonly string[])[]): readonly string[] =>
  textColumns([["", "", ""], ...rows])
    .slice(1)
    .map((line) => `  ${line}`);

function callsText({ calls }: Summary): string {
  const own = calls.filter(({ name }) => name.startsWith(`${namespace}.`));
  if (own.length === 0) return "";
  return `; with ${own.map(({ name, formulas }) => `${name} ${formulas}`).join(", ")}`;
}
