import { strFromU8, strToU8, unzipSync } from "fflate";
import { calcFootName, storedFootName } from "../../workbook/formula/functionName.ts";
import { writeZip } from "../../workbook/zip/writeZip.ts";
import { cases } from "../tables/cases.ts";
import { gathers } from "../tables/gathers.ts";
import { medicines } from "../tables/settingsTables.ts";

/**
 * A workbook whose formulas name functions and whole tables as every version of LibreOffice finds them; older ones know
 * nothing of Excel's names for them.
 */
export function spelledForCalc(workbook: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(workbook)).map(([name, bytes]) => ({
    name,
    bytes: name.endsWith(".xml") ? respelled(bytes) : bytes,
    stored: false,
  }));
  return writeZip(parts);
}

const spellings: readonly (readonly [inExcel: string, inCalc: string])[] = [
  [storedFootName(""), calcFootName("")],
  ...[cases, gathers, medicines].flatMap(({ name, headingCells, records }) => [
    [`${name}[#Headers]`, headingCells] as const,
    [`${name}[#Data]`, records] as const,
  ]),
];

function respelled(part: Uint8Array): Uint8Array {
  const text = strFromU8(part);
  const made = spellings.reduce((spelled, [inExcel, inCalc]) => spelled.replaceAll(inExcel, inCalc), text);
  return made === text ? part : strToU8(made);
}
