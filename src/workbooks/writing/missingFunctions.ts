import type { Place } from "../../workbook/address.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** One line at the top of a sheet, for those who open it where the functions are not. */
export const sayWhenMissing = (sheet: SheetAuthor, at: Place): void =>
  sheet.put(
    at,
    { formula: 'IF(ISERROR(FOOT.ABOUT()),"The functions are not installed here: see Start.","")' },
    "careHeading",
  );
