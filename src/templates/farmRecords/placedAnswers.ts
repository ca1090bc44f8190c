import { catalogue } from "../../../functions/catalogue.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Place } from "../../workbook/address.ts";
import type { Answer, Answers } from "./answers.ts";
import { sheetNames } from "./recordRanges.ts";

/** An answer with the cell its formula stands in. */
export interface PlacedAnswer extends Answer {
  readonly sheet: string;
  readonly question: string;
  readonly heading: Place;
  readonly at: Place;
  /** The worksheet function that gives the answer. */
  readonly gives: AnyFunction;
}

const firstRow = 3;

/** Where each answer stands on the sheets Answers and Lists. */
export function placedAnswers({ figures, tables, lists }: Answers): readonly PlacedAnswer[] {
  const placed: PlacedAnswer[] = [];
  let row = firstRow;
  for (const answer of figures) {
    placed.push(place(answer, sheetNames.answers, { row, column: 0 }, { row, column: 1 }));
    row++;
  }
  row++;
  for (const answer of tables) {
    placed.push(place(answer, sheetNames.answers, { row, column: 0 }, { row: row + 1, column: 0 }));
    row += answer.rows + 2;
  }
  let column = 0;
  for (const answer of lists) {
    const at = { row: firstRow, column };
    const list = place(answer, sheetNames.lists, { row: firstRow - 1, column }, at);
    placed.push(list);
    column += list.gives.result.headings.length + 1;
  }
  return placed;
}

function place(answer: Answer, sheet: string, heading: Place, at: Place): PlacedAnswer {
  const name = /^FOOT\.([A-Z]+)\(/.exec(answer.formula)?.[1];
  const gives = catalogue.find((definition) => definition.name === name);
  if (!gives) throw new Error(`"${answer.question}" asks for ${name}, which is not in the catalogue`);
  return { ...answer, sheet, heading, at, gives };
}
