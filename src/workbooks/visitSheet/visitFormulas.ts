/** When one of the cells is blank, as a condition. */
export const anyBlank = (cells: readonly string[]): string => `OR(${cells.map((cell) => `LEN(${cell})=0`).join(",")})`;

/** Blank where one of the cells is blank. */
export const unlessBlank = (cells: readonly string[], formula: string): string =>
  `IF(${anyBlank(cells)},"",${formula})`;

/** A cell that may be left blank, as a blank: not every spreadsheet hands one over as such. */
export const optional = (cell: string): string => `IF(LEN(${cell})=0,"",${cell})`;
