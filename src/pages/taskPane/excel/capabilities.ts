import { type ExcelHost, type ExcelScript, excelHost } from "../../../hosts/excel/excelHost.ts";
import { tellsSpills } from "./tellsSpills.ts";

/** What this Excel can do for the pane. */
export interface Capabilities extends ExcelHost {
  readonly opensWorkbooks: boolean;
  readonly insertsSheets: boolean;
  /** The cells that an answer fills can be asked for. */
  readonly tellsSpills: boolean;
}

// Records read by the wrong date system would be wrong without a word, so the pane rather waits.
const patience = 30_000;

/** Asks Excel what it can do. */
export async function capabilities(): Promise<Capabilities> {
  const { requirements } = Office.context;
  return {
    ...(await excelHost(Office, () => Excel as unknown as ExcelScript, patience)),
    // The vendor's reference: Excel.createWorkbook from ExcelApi 1.8, insertWorksheetsFromBase64 from 1.13 (from memory; @types/office-js says the same).
    opensWorkbooks: requirements.isSetSupported("ExcelApi", "1.8"),
    insertsSheets: requirements.isSetSupported("ExcelApi", "1.13"),
    tellsSpills: tellsSpills(),
  };
}
