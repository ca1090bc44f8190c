import { inGroups } from "./inGroups.ts";
import { cellsAtATime, type RowBlock, rowBlocks } from "./rowBlocks.ts";
import { rowsOf } from "./rowsOf.ts";
import type { UsedSheet } from "./usedSheets.ts";

/** Rows of a sheet with their values and formulas. */
export interface RowsRead {
  readonly of: UsedSheet;
  readonly range: Excel.Range;
}

interface Block extends RowBlock {
  readonly of: UsedSheet;
}

/** Values and formulas of all sheets: together as far as Excel hands them over at once, a large sheet in blocks. */
export async function* readUsed(
  context: Excel.RequestContext,
  sheets: readonly UsedSheet[],
): AsyncGenerator<RowsRead, void, undefined> {
  const blocks = sheets.flatMap((of) =>
    rowBlocks(of.used.rowCount, of.used.columnCount).map((block): Block => ({ of, ...block })),
  );
  const cells = ({ of, height }: Block): number => height * of.used.columnCount;
  for (const group of inGroups(blocks, cells, cellsAtATime)) yield* await read(context, group);
}

/** Long formulas take more room than most: what turns out to be too much is asked for by halves. */
async function read(context: Excel.RequestContext, blocks: readonly Block[]): Promise<readonly RowsRead[]> {
  const rows = blocks.map((block) => ({ of: block.of, range: rowsOf(block.of.used, block) }));
  try {
    for (const { range } of rows) range.load("values,formulas");
    await context.sync();
    return rows;
  } catch (error) {
    const halves = isTooMuch(error) ? halved(blocks) : undefined;
    if (!halves) throw error;
    const [first, second] = halves;
    return [...(await read(context, first)), ...(await read(context, second))];
  }
}

const isTooMuch = (error: unknown): boolean =>
  (error as { readonly code?: unknown }).code === "ResponsePayloadSizeLimitExceeded";

function halved(blocks: readonly Block[]): readonly [readonly Block[], readonly Block[]] | undefined {
  const [block] = blocks;
  if (!block) return undefined;
  const middle = Math.ceil(blocks.length / 2);
  if (blocks.length > 1) return [blocks.slice(0, middle), blocks.slice(middle)];
  const upper = Math.ceil(block.height / 2);
  if (upper === block.height) return undefined;
  return [[{ ...block, height: upper }], [{ ...block, row: block.row + upper, height: block.height - upper }]];
}
