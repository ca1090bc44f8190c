import { isoText } from "../../cells/day.ts";
import { emptyComparison } from "../../workbooks/comparison/emptyComparison.ts";
import { flockComparison } from "../../workbooks/comparison/flockComparison.ts";
import { emptyBook } from "../../workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../workbooks/footBook/flockFootBook.ts";
import { year } from "../../workbooks/inventedFlock/flockYear.ts";
import { onDay } from "../../workbooks/onDay.ts";
import { emptyVisit } from "../../workbooks/visitSheet/emptyVisit.ts";
import { visitSheet } from "../../workbooks/visitSheet/visitSheet.ts";
import { workedOut } from "../../workbooks/workedOut.ts";

/** The empty workbooks in their edition for LibreOffice, by file name. */
export async function calcWorkbooks(): Promise<ReadonlyMap<string, Uint8Array>> {
  const made = isoText(year.last);
  const plans = {
    "flock-comparison-empty.xlsx": flockComparison(emptyComparison({ made }), "libreoffice"),
    "flock-foot-book-empty.xlsx": flockFootBook(emptyBook({ made }), "libreoffice"),
    "visit-sheet-empty.xlsx": visitSheet(emptyVisit({ made }), "libreoffice"),
  };
  const files = new Map<string, Uint8Array>();
  for (const [name, plan] of Object.entries(plans))
    files.set(name, (await onDay(year.last, () => workedOut(plan))).bytes);
  return files;
}
