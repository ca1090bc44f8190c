import { type Cell, type ErrorCode, errorCodes } from "../../../cells/cell.ts";

/**
 * A cell as Excel's script hands it over.
 *
 * @param type - of its `valueTypes`: an error is told from a text that reads like one
 */
export function cellFrom(value: unknown, type: string | undefined): Cell {
  if (type === "Error") return { error: errorCodes.find((code) => code === value) ?? ("#VALUE!" satisfies ErrorCode) };
  return value === "" ? null : (value as Cell);
}
