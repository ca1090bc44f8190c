import { createRequire } from "node:module";
import { init, type Style } from "excelize-wasm";
import { unzipSync } from "fflate";
import { fixedArea, quoteSheet } from "../../workbook/formula/structured.ts";
import { writeZip } from "../../workbook/zip/writeZip.ts";
import { chartKinds } from "./chartKinds.ts";
import { type Emphasis, emphases, type Look, looks } from "./looks.ts";
import { must, type NameCell, type SheetAuthor, type Styles, sheetAuthor } from "./sheetAuthor.ts";

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
  checkChartKinds(library as unknown as Readonly<Record<string, unknown>>);
  const file = library.NewFile();
  // The library may write into what it is given.
  const styles: Styles = {
    cell: onceEach((look: Look) => must(file.NewStyle(structuredClone<Style>(looks[look]))).style),
    emphasis: onceEach(
      (emphasis: Emphasis) => must(file.NewConditionalStyle(structuredClone<Style>(emphases[emphasis]))).style,
    ),
  };
  const nameCell: NameCell = (name, sheet, target) => {
    const RefersTo = "formula" in target ? target.formula : `${quoteSheet(sheet)}${fixedArea(target)}`;
    must(file.SetDefinedName({ Name: name, RefersTo }));
  };
  plan.sheets.forEach(({ name }, place) => {
    if (place === 0) must(file.SetSheetName("Sheet1", name));
    else must(file.NewSheet(name));
  });
  for (const { name, write } of plan.sheets) write(sheetAuthor(file, name, styles), nameCell);
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

function checkChartKinds(library: Readonly<Record<string, unknown>>): void {
  for (const [kind, number] of Object.entries(chartKinds))
    if (library[kind] !== number) throw new Error(`the library numbers ${kind} as ${library[kind]}, not as ${number}`);
}

function onceEach<K>(make: (key: K) => number): (key: K) => number {
  const made = new Map<K, number>();
  return (key) => {
    const known = made.get(key) ?? make(key);
    made.set(key, known);
    return known;
  };
}

// The library writes its parts in no fixed order and stamps them with the clock.
function inSteadyOrder(bytes: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(bytes)).map(([name, content]) => ({ name, bytes: content, stored: false }));
  const first = (name: string) => (name === "[Content_Types].xml" ? 0 : name.startsWith("_rels/") ? 1 : 2);
  return writeZip(parts.sort((one, other) => first(one.name) - first(other.name) || (one.name < other.name ? -1 : 1)));
}
