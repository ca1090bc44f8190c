import { strFromU8, strToU8, unzipSync } from "fflate";
import { calcFootName, storedFootName } from "../../workbook/formula/functionName.ts";
import { writeZip } from "../../workbook/zip/writeZip.ts";

/**
 * A workbook whose formulas name the functions as every version of LibreOffice finds them; older ones know nothing of
 * Excel's names for them.
 */
export function spelledForCalc(workbook: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(workbook)).map(([name, bytes]) => ({
    name,
    bytes: name.endsWith(".xml") ? respelled(bytes) : bytes,
    stored: false,
  }));
  return writeZip(parts);
}

const respelled = (part: Uint8Array): Uint8Array => {
  const text = strFromU8(part);
  return text.includes(storedFootName("")) ? strToU8(text.replaceAll(storedFootName(""), calcFootName(""))) : part;
};
