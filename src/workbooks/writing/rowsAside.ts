import { strFromU8, strToU8 } from "fflate";
import { type Area, areaText, type Place, placeText, readArea } from "../../workbook/address.ts";
import { encodeText, escapeXml } from "../../workbook/xml/escapeXml.ts";

/** What stands in a cell that is kept aside. */
export type AsideContent = string | number | boolean | null | { readonly formula: string };

interface AsideCell {
  content: AsideContent;
  style: number;
}

interface AsideRow {
  readonly cells: AsideCell[];
  height: number | undefined;
}

/**
 * The lower rows of a long sheet. The library needs a thousand bytes for a cell and gives none back; these rows are
 * written into its sheet when it is done.
 */
export class RowsAside {
  private readonly rows = new Map<number, AsideRow>();
  /** The first row that is kept aside; none before it is said. */
  from = Number.POSITIVE_INFINITY;

  put({ row, column }: Place, content: AsideContent, style: number | undefined): void {
    const cell = this.cellAt(row, column);
    if (content !== null) cell.content = content;
    if (style !== undefined) cell.style = style;
  }

  dress({ top, left, bottom, right }: Area, style: number): void {
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) this.cellAt(row, column).style = style;
  }

  setHeight(row: number, points: number): void {
    this.rowAt(row).height = points;
  }

  /**
   * The sheet with its lower rows.
   *
   * @throws Error when the library wrote into one of them
   */
  writtenInto(sheet: Uint8Array): Uint8Array {
    if (this.rows.size === 0) return sheet;
    const text = strFromU8(sheet);
    const last = [...text.matchAll(/<row r="(\d+)"/g)].reduce((most, [, row]) => Math.max(most, Number(row)), 0);
    if (last > this.from)
      throw new Error(`row ${last} was written while the rows from ${this.from + 1} on are kept aside`);
    const parts: string[] = [];
    for (const [row, { cells, height }] of [...this.rows].sort(([one], [other]) => one - other)) {
      const high = height === undefined ? "" : ` ht="${height}" customHeight="1"`;
      parts.push(`<row r="${row + 1}"${high}>`);
      cells.forEach((cell, column) => {
        parts.push(cellXml(placeText({ row, column }), cell));
      });
      parts.push("</row>");
    }
    const filled = text
      .replace("<sheetData/>", "<sheetData></sheetData>")
      .replace("</sheetData>", () => `${parts.join("")}</sheetData>`);
    return strToU8(
      filled.replace(/<dimension ref="([^"]*)"/, (_, area: string) => `<dimension ref="${this.widened(area)}"`),
    );
  }

  private widened(known: string): string {
    const area = readArea(known) ?? { top: 0, left: 0, bottom: 0, right: 0 };
    let { bottom, right } = area;
    for (const [row, { cells }] of this.rows) {
      bottom = Math.max(bottom, row);
      right = Math.max(right, cells.length - 1);
    }
    return areaText({ ...area, bottom, right });
  }

  private rowAt(row: number): AsideRow {
    let found = this.rows.get(row);
    if (found === undefined) {
      found = { cells: [], height: undefined };
      this.rows.set(row, found);
    }
    return found;
  }

  private cellAt(row: number, column: number): AsideCell {
    const { cells } = this.rowAt(row);
    let cell = cells[column];
    if (cell === undefined) {
      cell = { content: null, style: 0 };
      cells[column] = cell;
    }
    return cell;
  }
}

function cellXml(address: string, { content, style }: AsideCell): string {
  const start = `<c r="${address}"${style === 0 ? "" : ` s="${style}"`}`;
  if (content === null) return `${start}/>`;
  if (typeof content === "number") return `${start}><v>${content}</v></c>`;
  if (typeof content === "boolean") return `${start} t="b"><v>${content ? 1 : 0}</v></c>`;
  if (typeof content === "string")
    return `${start} t="inlineStr"><is><t xml:space="preserve">${escapeXml(encodeText(content))}</t></is></c>`;
  return `${start}><f>${escapeXml(content.formula)}</f></c>`;
}
