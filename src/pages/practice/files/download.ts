import { mediaType } from "./filePickers.ts";

/** Hands a file to the browser's downloads. */
export function download(bytes: Uint8Array, name: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mediaType(name) }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the file after this turn; a minute is ample.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
