import type { Workbook } from "../../../workbook/workbook.ts";
import { readCharts } from "../charts/readCharts.ts";
import { sheetWords } from "../sheetWords.ts";

/** What a workbook holds that goes back into its file untouched but is not to be seen in the grid, in words. */
export function keptUnseen(workbook: Workbook): readonly string[] {
  const { sheets, untouched } = workbook;
  const text = sheetWords.unseen;
  const allDrawn = sheets.every((_, index) => readCharts(workbook, index).others === 0);
  const some = (element: RegExp): boolean => sheets.some((sheet) => element.test(sheet.text.slice(sheet.data.end)));
  return [
    ...(some(/<(?:\w+:)?conditionalFormatting\b/) ? [text.conditional] : []),
    ...(some(/<(?:\w+:)?sheetProtection\b/) ? [text.protection] : []),
    ...untouched.filter((thing) => thing !== "charts" || !allDrawn),
  ];
}
