import type { ComponentChildren } from "preact";
import type { Moment } from "../../../cells/day.ts";
import { ChartFigure } from "../charts/ChartFigure.tsx";
import type { PrintedChart, PrintedRow, PrintedSheet } from "../grid/sheetToPrint.ts";
import { cellsIn, filledRows, isBlank, layPages, type PaperPart, smallestLetters } from "./layPages.ts";

interface Props {
  readonly sheet: PrintedSheet;
  readonly file: string;
  /** When it is printed. */
  readonly now: Moment;
  readonly partOf: (part: number, parts: number) => string;
  /** How high its rows are on paper, from one that begins a page to the next; guessed where they were not measured. */
  readonly heights?: readonly number[] | undefined;
}

/** A sheet as tables to print: none wider than the paper, with the headings on top of each page and the charts in place. */
export function SheetOnPaper({ sheet, file, now, partOf, heights }: Props) {
  const { headings, lines } = sheet;
  const { orientation, zoom, squeeze, repeated, parts } = layPages(sheet, heights);
  const first = headings.slice(0, headings.length - repeated);
  const each = headings.slice(headings.length - repeated);
  const rows = sheet.rows.map((row) => (isBlank(row) ? { ...row, height: row.height * squeeze } : row));
  return (
    <>
      <style>{`@page { size: A4 ${orientation}; margin: 1cm; }\n${sheet.wish.lines({ file, sheet: sheet.name, now })}`}</style>
      {parts.map((part, index) => {
        const name = `${file}, ${sheet.name}${parts.length > 1 ? ` (${partOf(index + 1, parts.length)})` : ""}`;
        const given = { part, zoom, lines };
        const charts = chartsOn(sheet, part);
        const last = Math.max(filledRows(rows, part), ...charts.map((chart) => lastRowOf(chart, rows) + 1));
        return (
          <section key={index}>
            {first.length > 0 && (
              <PaperTable {...given} name={name}>
                <tbody>
                  {first.map((row, at) => (
                    <Row key={at} row={row} part={part} charts={[]} zoom={zoom} />
                  ))}
                </tbody>
              </PaperTable>
            )}
            <PaperTable {...given} name={first.length > 0 ? undefined : name}>
              {each.length > 0 && (
                <thead>
                  {each.map((row, at) => (
                    <Row key={at} row={row} part={part} charts={[]} zoom={zoom} />
                  ))}
                </thead>
              )}
              {bandsOf(rows.slice(0, last), charts).map(({ rows: own, charts: over, first: place }) => (
                <tbody key={place} class={over.length > 0 ? "whole" : ""}>
                  {own.map((row, at) => (
                    <Row
                      key={at}
                      row={row}
                      part={part}
                      charts={over.filter((chart) => chart.row === place + at)}
                      zoom={zoom}
                    />
                  ))}
                </tbody>
              ))}
            </PaperTable>
          </section>
        );
      })}
    </>
  );
}

interface TableProps {
  readonly part: PaperPart;
  readonly zoom: number;
  readonly lines: boolean;
  readonly name: string | undefined;
  readonly children: ComponentChildren;
}

const PaperTable = ({ part, zoom, lines, name, children }: TableProps) => (
  <table class={lines ? "lines" : ""} style={{ width: `${whole(part)}px`, zoom }}>
    {name !== undefined && <caption style={{ fontSize: `${captionLetters / zoom}pt` }}>{name}</caption>}
    <colgroup>
      {part.widths.map((width, column) => (
        <col key={column} style={{ width: `${width}px` }} />
      ))}
    </colgroup>
    {children}
  </table>
);

/** In points. */
const captionLetters = 9;

// The axes and names of a chart have letters of 9 points on the screen.
const lettersOfCharts = (zoom: number): number => Math.max(1, smallestLetters / (9 * zoom));

const whole = ({ widths }: PaperPart): number => widths.reduce((sum, width) => sum + width, 0);

interface RowProps {
  readonly row: PrintedRow;
  readonly part: PaperPart;
  readonly charts: readonly PrintedChart[];
  readonly zoom: number;
}

function Row({ row, part, charts, zoom }: RowProps) {
  const cells = cellsIn(row, part);
  const begin = cells[0] ? edgeOf(part, part.columns.indexOf(cells[0].column)) : 0;
  return (
    <tr class={row.isPageBegin ? "begins" : ""} style={{ height: `${row.height}px` }}>
      {cells.map(({ text, columns, rows: down, align, isNumber, edges, bold, size, ink, ground }, index) => (
        <td
          key={index}
          colSpan={columns}
          rowSpan={down}
          style={{
            textAlign: align,
            ...(isNumber ? { whiteSpace: "nowrap" } : {}),
            ...Object.fromEntries(sides.flatMap((side, at) => (edges[at] === undefined ? [] : [[side, edges[at]]]))),
            ...(bold ? { fontWeight: "bold" } : {}),
            ...(size === undefined ? {} : { fontSize: `${size}pt` }),
            ...(ink === undefined ? {} : { color: ink }),
            ...(ground === undefined ? {} : { background: ground }),
          }}
        >
          {text}
          {index === 0 &&
            charts.map(({ picture, left, down: below, width, height }, at) => (
              <ChartFigure
                key={at}
                picture={picture}
                box={{ left: left - begin, top: below, width, height }}
                dark={false}
                printed={lettersOfCharts(zoom)}
              />
            ))}
        </td>
      ))}
    </tr>
  );
}

const sides = ["borderTop", "borderRight", "borderBottom", "borderLeft"] as const;

const edgeOf = ({ widths }: Pick<PaperPart, "widths">, column: number): number =>
  widths.slice(0, column).reduce((sum, width) => sum + width, 0);

/** The charts that begin in a part, from its own left edge, each in a row of which a cell stands there. */
function chartsOn(sheet: PrintedSheet, part: PaperPart): readonly PrintedChart[] {
  return sheet.charts.flatMap((chart) => {
    const column = sheet.widths.findIndex((width, at) => chart.left < edgeOf(sheet, at) + width);
    const place = part.columns.indexOf(column, part.again);
    if (place < 0) return [];
    let { row, down } = chart;
    while (row > 0 && cellsIn(sheet.rows[row] as PrintedRow, part).length === 0) {
      row -= 1;
      down += sheet.rows[row]?.height ?? 0;
    }
    const left = edgeOf(part, place) + chart.left - edgeOf(sheet, column);
    return [{ ...chart, row, down, left, width: Math.min(chart.width, part.room - left) }];
  });
}

interface Band {
  /** The place of its first row. */
  readonly first: number;
  readonly rows: readonly PrintedRow[];
  readonly charts: readonly PrintedChart[];
}

/** Rows that charts lie over stay together, so that no page ends within a chart. */
function bandsOf(rows: readonly PrintedRow[], charts: readonly PrintedChart[]): readonly Band[] {
  const begin = (row: number) => charts.filter((chart) => chart.row === row);
  const bands: Band[] = [];
  for (let first = 0; first < rows.length; ) {
    let to = first;
    if (begin(first).length === 0) while (to < rows.length && begin(to).length === 0) to += 1;
    else
      for (let last = first; to <= last && to < rows.length; to += 1)
        for (const chart of begin(to)) last = Math.max(last, lastRowOf(chart, rows));
    bands.push({ first, rows: rows.slice(first, to), charts: charts.filter(({ row }) => row >= first && row < to) });
    first = to;
  }
  return bands;
}

function lastRowOf({ row, down, height }: PrintedChart, rows: readonly PrintedRow[]): number {
  let left = down + height;
  let at = row;
  while (at < rows.length - 1 && left > (rows[at]?.height ?? 0)) {
    left -= rows[at]?.height ?? 0;
    at += 1;
  }
  return at;
}
