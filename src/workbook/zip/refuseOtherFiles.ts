import { WorkbookProblem } from "../workbookProblem.ts";

// The first bytes of a compound file ([MS-CFB] 2.2) and of a zip (APPNOTE 4.3.7).
const compoundFile = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
const zip = [0x50, 0x4b, 0x03, 0x04];
// Stream names in a compound file are UTF-16; an encrypted workbook keeps its content under this one ([MS-OFFCRYPTO] 2.3.4.4).
const encrypted = [..."EncryptedPackage"].flatMap((letter) => [letter.charCodeAt(0), 0]);

// The first part of an OpenDocument file is its kind, unpacked (OpenDocument 1.3 part 2, 3.3).
const openDocument = [..."mimetypeapplication/vnd.oasis.opendocument"].map((letter) => letter.charCodeAt(0));

/** Says in one sentence what a file that is not an .xlsx is, as far as its first bytes tell. */
export function refuseOtherFiles(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new WorkbookProblem("The file is empty.");
  if (startsWith(bytes, compoundFile)) {
    throw holds(bytes, encrypted)
      ? new WorkbookProblem(
          "The workbook is protected by a password: open it in the spreadsheet, take the password off, save, and try again.",
        )
      : new WorkbookProblem("This is an old workbook (.xls): open it in the spreadsheet and save it as .xlsx.");
  }
  if (!startsWith(bytes, zip)) {
    throw new WorkbookProblem(
      isText(bytes)
        ? "This is a text file, such as a .csv: open it in the spreadsheet and save it as .xlsx."
        : "This is not an .xlsx workbook.",
    );
  }
  if (holds(bytes.subarray(0, 200), openDocument))
    throw new WorkbookProblem("This is an .ods spreadsheet: open it in the spreadsheet and save it as .xlsx.");
}

/** Nothing but signs that a text holds, as far as its beginning tells. */
const isText = (bytes: Uint8Array): boolean =>
  bytes.subarray(0, 4096).every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

function holds(bytes: Uint8Array, wanted: readonly number[]): boolean {
  const first = wanted[0] as number;
  for (let from = bytes.indexOf(first); from !== -1; from = bytes.indexOf(first, from + 1)) {
    if (wanted.every((byte, index) => bytes[from + index] === byte)) return true;
  }
  return false;
}
