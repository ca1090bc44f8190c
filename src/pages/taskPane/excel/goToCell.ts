import { cellsAt } from "./cellsAt.ts";

/**
 * Brings cells into view and selects them.
 *
 * @param address - `Gathers!B4` or `'My flock'!B4:F4`
 */
export const goToCell = (address: string): Promise<void> =>
  Excel.run(async (context) => {
    const range = cellsAt(context, address);
    range.worksheet.activate();
    range.select();
    await context.sync();
  });
