/** Brings a cell into view and selects it. */
export const selectCell = (sheet: string, address: string): Promise<void> =>
  Excel.run(async (context) => {
    const worksheet = context.workbook.worksheets.getItem(sheet);
    worksheet.activate();
    worksheet.getRange(address).select();
    await context.sync();
  });
