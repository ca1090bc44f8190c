/** Bounds on what a file may unpack to, so that a small file cannot exhaust the machine. */
export interface Limits {
  /** Parts inside the file. */
  readonly parts: number;
  /** Bytes of all parts together, unpacked. */
  readonly bytes: number;
  /** Unpacked bytes for one packed byte, looked at only above `ratioFrom`. */
  readonly ratio: number;
  /** Unpacked bytes of one part below which its ratio does not matter: small parts of blanks pack very well. */
  readonly ratioFrom: number;
}

// Measured: a sheet of 100,000 records unpacks to about 40 MB at a ratio of 8 to 15; a column filled with one
// number reaches about 60. Deflate cannot pass 1032. The figures leave room above what real sheets do.
export const usualLimits: Limits = { parts: 10_000, bytes: 1_000_000_000, ratio: 200, ratioFrom: 10_000_000 };

/** The last row and column of a sheet (ECMA-376 leaves it open; the spreadsheets served all stop here). */
export const lastRow = 1_048_576;
export const lastColumn = 16_384;
