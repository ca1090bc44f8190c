/** The id under which the embedded spreadsheet knows a sheet, by its place in the workbook. */
export const sheetId = (index: number): string => `sheet${index}`;

export const sheetPlace = (id: string): number => Number(id.slice("sheet".length));
