import { isCellError } from "../../../cells/cell.ts";
import type { Library, WorksheetFunction } from "./evaluateFormula.ts";
import { textOf } from "./operators.ts";
import { lift } from "./values.ts";

/** Functions that show a number as a text, where the library's answer is mended. */
export function formatted({ find }: Pick<Library, "find">): ReadonlyMap<string, WorksheetFunction> {
  const [text, dollar] = [find("TEXT"), find("DOLLAR")];
  if (!text || !dollar) throw new Error("the library has no TEXT or DOLLAR");
  return new Map<string, WorksheetFunction>([
    [
      "TEXT",
      ([value, format], calling) => {
        const pattern = calling.content(format);
        if (pattern === "") return "";
        const content = calling.content(value);
        if (typeof content === "boolean") return textOf(content);
        return text([content, pattern], calling);
      },
    ],
    [
      "DOLLAR",
      (given, calling) =>
        lift([calling.content(dollar(given, calling) ?? null)], (cell) =>
          isCellError(cell) ? cell : textOf(cell).trimEnd(),
        ),
    ],
  ]);
}
