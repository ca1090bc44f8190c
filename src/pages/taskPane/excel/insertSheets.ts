/**
 * Puts the sheets of another workbook after those of this one.
 *
 * @param workbook - base64
 * @returns the names that the sheets got
 */
export const insertSheets = (workbook: string): Promise<readonly string[]> =>
  Excel.run(async (context) => {
    const ids = context.workbook.insertWorksheetsFromBase64(workbook, { positionType: "End" });
    await context.sync();
    const sheets = ids.value.map((id) => context.workbook.worksheets.getItem(id));
    for (const sheet of sheets) sheet.load("name");
    sheets[0]?.activate();
    await context.sync();
    return sheets.map(({ name }) => name);
  });
