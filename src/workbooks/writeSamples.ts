import { writeFile } from "node:fs/promises";
import { isoText } from "../cells/day.ts";
import { emptyComparison } from "./comparison/emptyComparison.ts";
import { flockComparison } from "./comparison/flockComparison.ts";
import { inventedComparison } from "./comparison/inventedComparison.ts";
import { farmRecords } from "./farmRecords/farmRecords.ts";
import { emptyBook } from "./footBook/emptyBook.ts";
import { flockFootBook } from "./footBook/flockFootBook.ts";
import { inventedBook } from "./footBook/inventedBook.ts";
import { year } from "./inventedFlock/flockYear.ts";
import { sampleSeed } from "./inventedFlock/inventedFlock.ts";
import { onDay } from "./onDay.ts";
import { emptyVisit } from "./visitSheet/emptyVisit.ts";
import { inventedVisit } from "./visitSheet/inventedVisit.ts";
import { visitSheet } from "./visitSheet/visitSheet.ts";
import { workedOut } from "./workedOut.ts";
import type { WorkbookPlan } from "./writing/authorWorkbook.ts";

const samples: Readonly<Record<string, () => WorkbookPlan>> = {
  "farm-records": () => farmRecords(sampleSeed).plan,
  "flock-foot-book": () => flockFootBook(inventedBook(sampleSeed)),
  "flock-foot-book-empty": () => flockFootBook(emptyBook({ made: isoText(year.last) })),
  "flock-comparison": () => flockComparison(inventedComparison(sampleSeed)),
  "flock-comparison-empty": () => flockComparison(emptyComparison({ made: isoText(year.last) })),
  "visit-sheet": () => visitSheet(inventedVisit(sampleSeed)),
  "visit-sheet-empty": () => visitSheet(emptyVisit({ made: isoText(year.last) })),
};

/**
 * `npm run samples`: makes the workbooks in samples/ again, values and all, or those named. The same seed gives the
 * same bytes, on any day.
 */
const wanted = process.argv.slice(2);
for (const [name, plan] of Object.entries(samples)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const { bytes, summary } = await onDay(year.last, () => workedOut(plan()));
  await writeFile(new URL(`../../samples/${name}.xlsx`, import.meta.url), bytes);
  process.stdout.write(
    `samples/${name}.xlsx: ${summary.formulas} formulas, ${summary.errors.length} cells end in an error\n`,
  );
}
