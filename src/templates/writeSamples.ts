import { writeFile } from "node:fs/promises";
import { engineInNode } from "../hosts/headless/engineInNode.ts";
import { openWorkbook } from "../workbook/openWorkbook.ts";
import { recalculate } from "../workbook/recalculate.ts";
import { authorWorkbook } from "./authoring/authorWorkbook.ts";
import { farmRecords } from "./farmRecords/farmRecords.ts";
import { sampleSeed } from "./inventedFlock/inventedFlock.ts";

/** `npm run samples`: makes the workbooks in samples/ again, values and all. The same seed gives the same bytes. */
const authored = await authorWorkbook(farmRecords(sampleSeed).plan);
const { bytes, summary } = await recalculate(openWorkbook(authored), engineInNode());
await writeFile(new URL("../../samples/farm-records.xlsx", import.meta.url), bytes);
process.stdout.write(
  `samples/farm-records.xlsx: ${summary.formulas} formulas, ${summary.errors.length} cells to mend\n`,
);
