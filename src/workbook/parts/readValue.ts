import { type Cell, type CellError, type ErrorCode, errorCodes } from "../../cells/cell.ts";
import { momentFromText } from "../../cells/day.ts";
import { placeText } from "../address.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import { decodeText } from "../xml/escapeXml.ts";

const known: ReadonlySet<string> = new Set(errorCodes);
const asError = (code: string): CellError => ({ error: (known.has(code) ? code : "#VALUE!") as ErrorCode });

/** What a cell of a sheet part says of its value. */
interface Stored {
  readonly type: string;
  readonly value: string | undefined;
  readonly row: number;
  readonly column: number;
}

/**
 * The value of a cell as it is stored.
 *
 * @throws WorkbookProblem where it is not what its type says
 */
export function readValue(
  { type, value, row, column }: Stored,
  sharedStrings: readonly string[],
  part: string,
  dayOffset: number,
): Cell {
  if (value === undefined) return type === "str" || type === "inlineStr" ? "" : null;
  switch (type) {
    case "s": {
      const shared = sharedStrings[Number(value)];
      if (shared === undefined)
        throw new WorkbookProblem(
          `The workbook is damaged: cell ${placeText({ row, column })} in ${part} refers to a text that is not there.`,
        );
      return shared;
    }
    case "b":
      return value === "1" || value === "true";
    case "e":
      return asError(value);
    case "str":
    case "inlineStr":
      return decodeText(value);
    case "d": {
      // A date written out; one that cannot be read stays text, so that the functions refuse it by its row.
      const moment = momentFromText(value.replace(/(\.\d+)?Z?$/, ""));
      return moment === undefined ? value : moment - dayOffset;
    }
    default: {
      const number = Number(value);
      if (value.trim() === "") return null;
      if (!Number.isFinite(number))
        throw new WorkbookProblem(
          `The workbook is damaged: cell ${placeText({ row, column })} in ${part} should hold a number but holds ${value}.`,
        );
      return number;
    }
  }
}
