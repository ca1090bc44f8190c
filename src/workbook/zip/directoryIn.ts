// Signatures and places in the directory of a zip (APPNOTE 4.3.12, 4.3.14, 4.3.15, 4.3.16).
const endMark = 0x06054b50;
const longEndMark = 0x06064b50;
const locatorMark = 0x07064b50;
const endSize = 22;
const locatorSize = 20;
const longestComment = 65_535;
const headerSize = 46;
const localHeaderSize = 30;
/** A place that is kept in the larger fields of ZIP64. */
const elsewhere = 0xffffffff;

/** What the directory of a zip says of a part. */
export interface Listed {
  /** Its CRC-32. */
  readonly checksum: number;
  /** Where its packed bytes begin; undefined where a field of ZIP64 says so, which parts below 4 GB have no need of. */
  readonly start: number | undefined;
}

/**
 * What the directory of a zip says of each part, in its order, that the library which unpacks does not hand over.
 *
 * @throws RangeError when the file ends within its directory
 */
export function directoryIn(bytes: Uint8Array): readonly Listed[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { count, start } = directoryOf(view);
  const listed: Listed[] = [];
  let at = start;
  for (let entry = 0; entry < count; entry += 1) {
    const header = view.getUint32(at + 42, true);
    listed.push({
      checksum: view.getUint32(at + 16, true),
      start: header === elsewhere ? undefined : afterLocalHeader(view, header),
    });
    // Name, extra field and comment follow the header.
    at += headerSize + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return listed;
}

/** Name and extra field follow the header of a part (APPNOTE 4.3.7), and may be longer there than in the directory. */
const afterLocalHeader = (view: DataView, header: number): number =>
  header + localHeaderSize + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);

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
