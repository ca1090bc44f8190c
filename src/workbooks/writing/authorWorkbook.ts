import { createRequire } from "node:module";
import { init, type Style } from "excelize-wasm";
import { strToU8, unzipSync } from "fflate";
import { escapeXml } from "../../workbook/xml/escapeXml.ts";
import { writeZip } from "../../workbook/zip/writeZip.ts";
import { chartKinds } from "./chartKinds.ts";
import type { Edition } from "./edition.ts";
import { type Emphasis, emphases, type Look, looks } from "./looks.ts";
import { mendParts } from "./mendParts.ts";
import { cellOn, cellsOn } from "./references.ts";
import { RowsAside } from "./rowsAside.ts";
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
  /** For Excel, when left out. */
  readonly edition?: Edition;
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
    const RefersTo =
      "formula" in target ? target.formula : "row" in target ? cellOn(sheet, target) : cellsOn(sheet, target);
    must(file.SetDefinedName({ Name: name, RefersTo }));
  };
  plan.sheets.forEach(({ name }, index) => {
    if (index === 0) must(file.SetSheetName("Sheet1", name));
    else must(file.NewSheet(name));
  });
  const asides = plan.sheets.map(({ name, write }) => {
    const aside = new RowsAside();
    write(sheetAuthor(file, name, styles, plan.edition ?? "excel", aside), nameCell);
    return aside;
  });
  must(file.SetAppProps({ Application: "Soundfold" }));
  const { buffer } = must(file.WriteToBuffer());
  // The library keeps itself, and the whole workbook in its own memory, under a name of its own.
  Reflect.deleteProperty(globalThis, "excelize");
  return steadied(buffer as Uint8Array, plan, asides);
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

// The library writes its parts in no fixed order and stamps them with the clock; and it names the document's properties
// in a way that some readers stumble over.
function steadied(bytes: Uint8Array, plan: WorkbookPlan, asides: readonly RowsAside[]): Uint8Array {
  const written: Record<string, Uint8Array> = { ...unzipSync(bytes), "docProps/core.xml": strToU8(properties(plan)) };
  asides.forEach((aside, index) => {
    const part = `xl/worksheets/sheet${index + 1}.xml`;
    written[part] = aside.writtenInto(written[part] ?? new Uint8Array());
  });
  const mend = mendParts(written);
  const parts = Object.entries(written).map(([name, content]) => ({
    name,
    bytes: mend(name, content),
    stored: false,
  }));
  const first = (name: string) => (name === "[Content_Types].xml" ? 0 : name.startsWith("_rels/") ? 1 : 2);
  return writeZip(parts.sort((one, other) => first(one.name) - first(other.name) || (one.name < other.name ? -1 : 1)));
}

function properties({ title, description, made }: WorkbookPlan): string {
  const moment = `${made}T00:00:00Z`;
  const dated = (what: string): string => `<dcterms:${what} xsi:type="dcterms:W3CDTF">${moment}</dcterms:${what}>`;
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:dcmitype="http://purl.org/dc/dcmitype/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"><dc:title>${escapeXml(title)}</dc:title><dc:creator>Soundfold</dc:creator><dc:description>${escapeXml(description)}</dc:description><cp:lastModifiedBy>Soundfold</cp:lastModifiedBy>${dated("created")}${dated("modified")}</cp:coreProperties>`;
}
