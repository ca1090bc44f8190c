import { createRequire } from "node:module";
import { init } from "excelize-wasm";
import { unzipSync } from "fflate";
import { fixedArea, quoteSheet } from "../../workbook/formula/structured.ts";
import { writeZip } from "../../workbook/zip/writeZip.ts";
import { type Look, looks } from "./looks.ts";
import { must, type NameCell, type SheetAuthor, sheetAuthor } from "./sheetAuthor.ts";

/** One sheet of a workbook to be: its name and what writes it. */
export interface SheetPlan {
  readonly name: string;
  readonly write: (sheet: SheetAuthor, nameCell: NameCell) => void;
}

export interface WorkbookPlan {
  readonly title: string;
  readonly description: string;
  /** The day the file says it was made, as 2026-10-31: a plan gives the same bytes whenever it is carried out. */
  readonly made: string;
  readonly sheets: readonly SheetPlan[];
}

/**
 * Carries out a plan.
 *
 * @returns the bytes of an .xlsx file whose formulas hold no values yet; `recalculate` works them out and stores the
 * FOOT functions as Excel stores them
 */
export async function authorWorkbook(plan: WorkbookPlan): Promise<Uint8Array> {
  const require = createRequire(import.meta.url);
  const library = await init(require.resolve("excelize-wasm/excelize.wasm.gz"));
  const file = library.NewFile();
  const styles = new Map<Look, number>();
  const styleOf = (look: Look): number => {
    const known = styles.get(look);
    if (known !== undefined) return known;
    const { style } = must(file.NewStyle(structuredClone(looks[look])));
    styles.set(look, style);
    return style;
  };
  const nameCell: NameCell = (name, sheet, area) =>
    void must(file.SetDefinedName({ Name: name, RefersTo: `${quoteSheet(sheet)}${fixedArea(area)}` }));
  plan.sheets.forEach(({ name }, place) => {
    if (place === 0) must(file.SetSheetName("Sheet1", name));
    else must(file.NewSheet(name));
  });
  for (const { name, write } of plan.sheets) write(sheetAuthor(file, name, styleOf), nameCell);
  const moment = `${plan.made}T00:00:00Z`;
  must(
    file.SetDocProps({
      Title: plan.title,
      Description: plan.description,
      Creator: "Soundfold",
      LastModifiedBy: "Soundfold",
      Created: moment,
      Modified: moment,
    }),
  );
  must(file.SetAppProps({ Application: "Soundfold" }));
  const { buffer } = must(file.WriteToBuffer());
  return inSteadyOrder(buffer as Uint8Array);
}

// The library writes its parts in no fixed order and stamps them with the clock.
function inSteadyOrder(bytes: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(bytes)).map(([name, content]) => ({ name, bytes: content, stored: false }));
  const first = (name: string) => (name === "[Content_Types].xml" ? 0 : name.startsWith("_rels/") ? 1 : 2);
  return writeZip(parts.sort((one, other) => first(one.name) - first(other.name) || (one.name < other.name ? -1 : 1)));
}
