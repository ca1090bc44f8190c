import { Zip, type ZipInputFile, type Zippable, zipSync } from "fflate";
import type { Packing } from "./packing.ts";
import type { Entry } from "./readZip.ts";

// Excel itself writes this moment, the first a zip can hold. The same workbook then gives the same bytes.
const firstMoment = "1980-01-01T00:00:00";

/**
 * Packs the parts in the order given; parts that were stored unpacked stay so.
 *
 * @param packing - what packs them where it is not to be the library; the bytes are others then, the parts the same
 */
export function writeZip(entries: readonly Entry[], packing?: Packing): Uint8Array {
  if (packing) return packedBy(packing, entries);
  const files: Zippable = {};
  for (const { name, bytes, stored } of entries) files[name] = [bytes, { level: stored ? 0 : 6, mtime: firstMoment }];
  return zipSync(files);
}

/**
 * Each part is followed by its lengths, as in any zip that is written in one go. Only a packed part shows where it ends
 * by itself, so that one which is to stay as it is is packed without being made smaller.
 */
function packedBy({ deflate, checksum }: Packing, entries: readonly Entry[]): Uint8Array {
  const pieces: Uint8Array[] = [];
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    pieces.push(piece);
  });
  for (const { name, bytes, stored } of entries) {
    const file: ZipInputFile = {
      filename: name,
      size: bytes.length,
      crc: checksum(bytes),
      compression: 8,
      mtime: firstMoment,
    };
    zip.add(file);
    file.ondata?.(null, deflate(bytes, stored ? 0 : 6), true);
  }
  zip.end();
  return joined(pieces);
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
