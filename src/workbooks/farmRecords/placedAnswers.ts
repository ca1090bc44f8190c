import { catalogue } from "../../../functions/catalogue.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Place } from "../../workbook/address.ts";
import type { Answer, Answers } from "./answers.ts";
import { sheetNames } from "./placedRecords.ts";

/** An answer with the cell its formula stands in. */
export interface PlacedAnswer extends Answer {
  readonly sheet: string;
  /** Where the question stands. */
  readonly heading: Place;
  /** Where the formula stands. */
  readonly at: Place;
  /** Where the names of its parts stand, if it has a row of them: spilled by a table, typed above the parts of a row. */
  readonly names: Place | undefined;
  /** The worksheet function that gives the answer. */
  readonly gives: AnyFunction;
}

const firstRow = 3;
const firstListRow = 4;

/** Where each answer stands on the sheets Answers, Lists and Record check. */
export function placedAnswers({ figures, tables, lists, check }: Answers): readonly PlacedAnswer[] {
  const placed: PlacedAnswer[] = [];
  let row = firstRow;
  for (const answer of figures) {
    const gives = functionIn(answer);
    const at = { row, column: 1 };
    placed.push({ ...answer, gives, sheet: sheetNames.answers, heading: { row, column: 0 }, at, names: undefined });
    row++;
  }
  row++;
  for (const answer of tables) {
    const gives = functionIn(answer);
    const names = { row: row + 1, column: 0 };
    const at = gives.result.shape === "table" ? names : { row: row + 2, column: 0 };
    placed.push({ ...answer, gives, sheet: sheetNames.answers, heading: { row, column: 0 }, at, names });
    row += answer.rows + 2;
  }
  let column = 0;
  for (const answer of lists) {
    const gives = functionIn(answer);
    const at = { row: firstListRow, column };
    placed.push({ ...answer, gives, sheet: sheetNames.lists, heading: { row: at.row - 1, column }, at, names: at });
    column += gives.result.headings.length + 1;
  }
  const at = { row: firstListRow, column: 0 };
  const heading = { row: at.row - 1, column: 0 };
  placed.push({ ...check, gives: functionIn(check), sheet: sheetNames.check, heading, at, names: at });
  return placed;
}

function functionIn({ question, formula }: Answer): AnyFunction {
  const name = /^FOOT\.([A-Z]+)\(/.exec(formula)?.[1];
  const gives = catalogue.find((definition) => definition.name === name);
  if (!gives) throw new Error(`"${question}" asks for ${name}, which is not in the catalogue`);
  return gives;
}
