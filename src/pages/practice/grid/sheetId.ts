/** The id under which the embedded spreadsheet knows a sheet, by its place in the workbook. */
export const sheetId = (place: number): string => `sheet${place}`;

export const sheetPlace = (id: string): number => Number(id.slice("sheet".length));
