// Signatures and places in the directory of a zip (APPNOTE 4.3.12, 4.3.14, 4.3.15, 4.3.16).
const endMark = 0x06054b50;
const longEndMark = 0x06064b50;
const locatorMark = 0x07064b50;
const endSize = 22;
const locatorSize = 20;
const longestComment = 65_535;
const headerSize = 46;

/**
 * The CRC-32 of each part as the directory of a zip states it, in the order of the directory. The library that unpacks
 * neither compares it nor hands it over.
 *
 * @throws RangeError when the file ends within its directory
 */
export function checksumsIn(bytes: Uint8Array): readonly number[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { count, start } = directoryOf(view);
  const checksums: number[] = [];
  let at = start;
  for (let entry = 0; entry < count; entry += 1) {
    checksums.push(view.getUint32(at + 16, true));
    // Name, extra field and comment follow the header.
    at += headerSize + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return checksums;
}

function directoryOf(view: DataView): { readonly count: number; readonly start: number } {
  let end = view.byteLength - endSize;
  while (view.getUint32(end, true) !== endMark) {
    end -= 1;
    if (view.byteLength - end > endSize + longestComment) throw new RangeError("the zip has no directory");
  }
  const locator = end - locatorSize;
  if (locator >= 0 && view.getUint32(locator, true) === locatorMark) {
    const long = Number(view.getBigUint64(locator + 8, true));
    if (view.getUint32(long, true) === longEndMark)
      return {
        count: Number(view.getBigUint64(long + 32, true)),
        start: Number(view.getBigUint64(long + 48, true)),
      };
  }
  return { count: view.getUint16(end + 8, true), start: view.getUint32(end + 16, true) };
}
