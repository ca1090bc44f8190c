import type { Workbook } from "../../../workbook/workbook.ts";
import { sheetWords } from "../sheetWords.ts";

/** What a workbook holds that goes back into its file untouched but is not to be seen in the grid, in words. */
export function keptUnseen({ sheets, untouched }: Workbook): readonly string[] {
  const text = sheetWords.unseen;
  const some = (element: RegExp): boolean => sheets.some((sheet) => element.test(sheet.text.slice(sheet.data.end)));
  return [
    ...(some(/<(?:\w+:)?conditionalFormatting\b/) ? [text.conditional] : []),
    ...(some(/<(?:\w+:)?sheetProtection\b/) ? [text.protection] : []),
    ...untouched,
  ];
}
