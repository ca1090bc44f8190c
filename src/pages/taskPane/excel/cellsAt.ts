/**
 * The cells that an address names, on its own sheet or on the one in view.
 *
 * @param address - `B2`, `Gathers!B2:B14` or `'My flock'!B2`
 */
export function cellsAt(context: Excel.RequestContext, address: string): Excel.Range {
  const { sheet, cells } = partsOf(address.trim());
  const { worksheets } = context.workbook;
  return (sheet === undefined ? worksheets.getActiveWorksheet() : worksheets.getItem(sheet)).getRange(cells);
}

function partsOf(address: string): { readonly sheet: string | undefined; readonly cells: string } {
  const mark = address.lastIndexOf("!");
  if (mark < 0) return { sheet: undefined, cells: address };
  const name = address.slice(0, mark);
  const quoted = /^'(.*)'$/s.exec(name)?.[1];
  return { sheet: quoted?.replaceAll("''", "'") ?? name, cells: address.slice(mark + 1) };
}
