/** A sheet on which something stands. */
export interface UsedSheet {
  readonly sheet: Excel.Worksheet;
  /** Its rows and columns are counted. */
  readonly used: Excel.Range;
  /** Names like `foot_total` that the workbook or the sheet defines itself, in small letters. */
  readonly names: ReadonlySet<string>;
}

/** The sheets of the workbook that are in use, in two round trips however many they are. Their protections are loaded too. */
export async function usedSheets(context: Excel.RequestContext): Promise<readonly UsedSheet[]> {
  const { worksheets, names } = context.workbook;
  worksheets.load("items/name");
  names.load("items/name");
  await context.sync();
  const sheets = worksheets.items.map((sheet) => ({ sheet, used: sheet.getUsedRangeOrNullObject(true) }));
  for (const { sheet, used } of sheets) {
    used.load("rowCount,columnCount");
    sheet.protection.load("protected,options");
    sheet.names.load("items/name");
  }
  await context.sync();
  return sheets
    .filter(({ used }) => !used.isNullObject)
    .map((one) => ({ ...one, names: likeOurs([...names.items, ...one.sheet.names.items]) }));
}

/** Of other spellings only what Excel itself keeps as a name for a function that it does not know could be there. */
const likeOurs = (names: readonly Excel.NamedItem[]): ReadonlySet<string> =>
  new Set(names.map(({ name }) => name.toLowerCase()).filter((name) => name.startsWith("foot_")));
