import type { Sheet } from "../workbook/model.ts";
import { cellValue, type Workbook } from "../workbook/workbook.ts";
import type { PlacedAnswer } from "../workbooks/farmRecords/placedAnswers.ts";
import { shownCell } from "./shownCell.ts";
import { textColumns } from "./textColumns.ts";

const longest = 12;

/** The answers of a worked-out workbook, question by question, for a person to read. */
export function answersText(workbook: Workbook, answers: readonly PlacedAnswer[]): string {
  const texts = answers.map((answer) => {
    const sheet = workbook.sheets.find(({ name }) => name === answer.sheet);
    if (!sheet) throw new Error(`the workbook has no sheet ${answer.sheet}`);
    return answer.names ? tableText(sheet, answer, answer.names.row) : lineText(sheet, answer);
  });
  // Figures stand together, tables stand apart.
  return texts.map((text) => (text.includes("\n") ? `\n${text}` : text)).join("\n");
}

function lineText(sheet: Sheet, { question, at, gives }: PlacedAnswer): string {
  const { formats } = gives.result;
  const cells = formats.map((format, step) => shownCell(cellValue(sheet, at.row, at.column + step), format));
  return `${question}: ${cells.join(" to ")}`;
}

function tableText(sheet: Sheet, { question, at, gives, sheet: name }: PlacedAnswer, first: number): string {
  const rows: (readonly string[])[] = [];
  for (let row = first; ; row++) {
    const shown = gives.result.formats.map((format, step) =>
      shownCell(cellValue(sheet, row, at.column + step), format),
    );
    if (shown.every((text) => text === "")) break;
    rows.push(shown);
  }
  const [headings, ...lines] = rows;
  if (!headings) throw new Error(`${question} has no answer in the sheet ${name}`);
  // A line whose first cell is blank is about the columns, not about a record; the sheet has it.
  const records = lines.filter(([first]) => first !== "").slice(0, longest);
  const left = lines.length - records.length;
  return [
    question,
    ...textColumns([headings, ...records]),
    ...(left > 0 ? [`… and ${left} more in the sheet ${name}`] : []),
  ]
    .map((line, index) => (index === 0 ? line : `  ${line}`))
    .join("\n");
}
