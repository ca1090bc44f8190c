const isNumeric = (text: string): boolean => /^-?[\d.]+( %)?$/.test(text);

/**
 * Rows of text lined up in columns; a column of numbers stands to the right.
 *
 * @example
 * textColumns([["group", "lame"], ["Old ewes", "9"]]) // → ["group     lame", "Old ewes     9"]
 */
export function textColumns(rows: readonly (readonly string[])[]): readonly string[] {
  const places = (rows[0] ?? []).map((_, column) => {
    const cells = rows.map((row) => row[column] ?? "");
    const body = cells.slice(1).filter((text) => text !== "");
    const width = cells.reduce((most, text) => Math.max(most, text.length), 0);
    return { width, right: body.length > 0 && body.every(isNumeric) };
  });
  return rows.map((row) =>
    places
      .map(({ width, right }, column) => {
        const text = row[column] ?? "";
        return right ? text.padStart(width) : text.padEnd(width);
      })
      .join("  ")
      .trimEnd(),
  );
}
