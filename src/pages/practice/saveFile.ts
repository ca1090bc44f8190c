const plain = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const withMacros = "application/vnd.ms-excel.sheet.macroEnabled.12";

/** Hands a file to the browser's downloads. */
export function saveFile(bytes: Uint8Array, name: string): void {
  const type = /\.xlsm$/i.test(name) ? withMacros : plain;
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the file after this turn; a minute is ample.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
