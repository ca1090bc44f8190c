import type { TextTable } from "../../definition/exampleInSheet.ts";

interface Props {
  readonly table: TextTable;
  readonly label: string;
  /** The first cell of each row names the row. */
  readonly rowHeadings?: boolean;
}

/** A table of texts that scrolls sideways inside its own frame when the page is narrow. */
export const TextTableView = ({ table, label, rowHeadings = false }: Props) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
  <figure class="frame" tabIndex={0} aria-label={label}>
    <table>
      <thead>
        <tr>
          {table.headings.map((heading, index) =>
            heading === "" ? (
              <td key={index} />
            ) : (
              <th key={index} scope="col">
                {heading}
              </th>
            ),
          )}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((cells, row) => (
          <tr key={row}>
            {cells.map((cell, index) =>
              rowHeadings && index === 0 ? (
                <th key={index} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={index}>{cell}</td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  </figure>
);
