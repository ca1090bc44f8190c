import type { PrintedCell, PrintedSheet } from "../grid/sheetToPrint.ts";

interface Props {
  readonly sheet: PrintedSheet;
  readonly file: string;
}

// A4 less a margin of a centimetre on each side, at 96 pixels an inch (ISO 216, CSS Values 4 §6.2).
const upright = 717;
const lengthwise = 1046;
// Smaller than half is not read any more; columns then become narrower and their texts run over more lines.
const smallest = 0.5;

/** A sheet as a table to print: no wider than the paper, with the headings on top of each page. */
export function SheetOnPaper({ sheet: { name, widths, headings, rows, lines }, file }: Props) {
  const wide = widths.reduce((sum, width) => sum + width, 0);
  const isLengthwise = wide > upright * 1.15;
  const room = isLengthwise ? lengthwise : upright;
  const zoom = Math.max(smallest, Math.min(1, room / Math.max(1, wide)));
  return (
    <>
      <style>{`@page { size: A4 ${isLengthwise ? "landscape" : "portrait"}; margin: 1cm; }`}</style>
      <table class={lines ? "lines" : ""} style={{ width: `${Math.min(wide, room / zoom)}px`, zoom }}>
        <caption>
          {file}, {name}
        </caption>
        <colgroup>
          {widths.map((width, index) => (
            <col key={index} style={{ width: `${(100 * width) / wide}%` }} />
          ))}
        </colgroup>
        {headings.length > 0 && (
          <thead>
            <Rows rows={headings} />
          </thead>
        )}
        <tbody>
          <Rows rows={rows} />
        </tbody>
      </table>
    </>
  );
}

const Rows = ({ rows }: { readonly rows: readonly (readonly PrintedCell[])[] }) => (
  <>
    {rows.map((cells, row) => (
      <tr key={row}>
        {cells.map(({ text, columns, rows: down, align, bold, size, ink, ground }, index) => (
          <td
            key={index}
            colSpan={columns}
            rowSpan={down}
            style={{
              textAlign: align,
              ...(bold ? { fontWeight: "bold" } : {}),
              ...(size === undefined ? {} : { fontSize: `${size}pt` }),
              ...(ink === undefined ? {} : { color: ink }),
              ...(ground === undefined ? {} : { background: ground }),
            }}
          >
            {text}
          </td>
        ))}
      </tr>
    ))}
  </>
);
