/** Blank where one of the cells is blank. */
export const unlessBlank = (cells: readonly string[], formula: string): string =>
  `IF(OR(${cells.map((cell) => `LEN(${cell})=0`).join(",")}),"",${formula})`;

/** A cell that may be left blank, as a blank: not every spreadsheet hands one over as such. */
export const optional = (cell: string): string => `IF(LEN(${cell})=0,"",${cell})`;
