/** A file on the person's disk that the page may be allowed to write (File System Access, in Chromium). */
export interface DiskFile {
  readonly name: string;
  readonly getFile: () => Promise<File>;
  readonly createWritable: () => Promise<{
    write: (content: Blob) => Promise<void>;
    close: () => Promise<void>;
    abort: () => Promise<void>;
  }>;
  readonly queryPermission?: (wanted: { mode: "readwrite" }) => Promise<PermissionState>;
  readonly requestPermission?: (wanted: { mode: "readwrite" }) => Promise<PermissionState>;
}

interface Kind {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}

/** What the browser offers for it; the names are those of the standard. */
interface Pickers {
  readonly showOpenFilePicker?: (wanted: { types: readonly Kind[] }) => Promise<readonly DiskFile[]>;
  readonly showSaveFilePicker?: (wanted: { types: readonly Kind[]; suggestedName: string }) => Promise<DiskFile>;
}

const pickers = (): Pickers => globalThis as unknown as Pickers;

const plain = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const withMacros = "application/vnd.ms-excel.sheet.macroEnabled.12";

/** The kind of a workbook's file, by its name. */
export const mediaType = (name: string): string => (/\.xlsm$/i.test(name) ? withMacros : plain);

const kindOf = (name: string): Kind =>
  /\.xlsm$/i.test(name)
    ? { description: "Excel", accept: { [withMacros]: [".xlsm"] } }
    : { description: "Excel", accept: { [plain]: [".xlsx"] } };

export const canOpenFromDisk = (): boolean => pickers().showOpenFilePicker !== undefined;

/** @returns the file that was chosen; undefined when the person thought better of it */
export async function fileToOpen(): Promise<DiskFile | undefined> {
  const types = [{ description: "Excel", accept: { [plain]: [".xlsx"], [withMacros]: [".xlsm"] } }];
  return unlessGivenUp(async () => (await pickers().showOpenFilePicker?.({ types }))?.[0]);
}

/**
 * The file that a workbook is to be saved in: the one it was opened from where it may be written, else one to choose.
 *
 * @returns "download" where the browser writes no files, undefined when the person thought better of it
 */
export async function fileToSave(
  name: string,
  known: DiskFile | undefined,
): Promise<DiskFile | "download" | undefined> {
  if (known && (await mayBeWritten(known))) return known;
  if (!pickers().showSaveFilePicker) return "download";
  try {
    return await unlessGivenUp(
      async () => await pickers().showSaveFilePicker?.({ types: [kindOf(name)], suggestedName: name }),
    );
  } catch {
    // A page inside another, or one whose owner forbids it, may choose no files.
    return "download";
  }
}

async function mayBeWritten(file: DiskFile): Promise<boolean> {
  const wanted = { mode: "readwrite" } as const;
  if ((await file.queryPermission?.(wanted)) === "granted") return true;
  return (await file.requestPermission?.(wanted)) === "granted";
}

async function unlessGivenUp<T>(choose: () => Promise<T>): Promise<T | undefined> {
  try {
    return await choose();
  } catch (error) {
    if ((error as Error).name === "AbortError") return undefined;
    throw error;
  }
}

/** Writes a file whole: until it is closed the one on the disk stays as it was. */
export async function writeFile(file: DiskFile, bytes: Uint8Array): Promise<void> {
  const writing = await file.createWritable();
  try {
    await writing.write(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mediaType(file.name) }));
    await writing.close();
  } catch (error) {
    await writing.abort().catch(() => undefined);
    throw error;
  }
}
