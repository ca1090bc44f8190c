import { useRef, useState } from "preact/hooks";
import { download } from "./download.ts";
import { type DiskFile, fileToSave, writeFile } from "./filePickers.ts";

/** Where the open workbook is kept. */
interface Kept {
  readonly name: string;
  readonly disk: DiskFile | undefined;
  /** When the file on the disk was last written, as far as is known here. */
  readonly written: number | undefined;
}

type SaveEnd =
  | { readonly kind: "written" | "downloaded"; readonly name: string }
  /** Nothing was saved: the person thought better of it. */
  | { readonly kind: "given up" };

interface Work {
  /** The workbook's file, worked out. */
  readonly bytes: () => Promise<Uint8Array>;
  /** Whether to write over a file that another program has changed meanwhile. */
  readonly mayWriteOver: (name: string) => Promise<boolean>;
}

export interface Saving {
  readonly name: string;
  /** The same, for what was set up when another workbook was open. */
  readonly nameNow: () => string;
  /** Another workbook has been opened. */
  readonly opened: (name: string, disk?: DiskFile) => Promise<void>;
  readonly save: (work: Work) => Promise<SaveEnd>;
}

/** Keeps to the file that the open workbook came from, and saves into it where the browser may write it. */
export function useSaving(firstName: string): Saving {
  const [name, setName] = useState(firstName);
  const kept = useRef<Kept>({ name: firstName, disk: undefined, written: undefined });
  const keep = async (fileName: string, disk: DiskFile | undefined): Promise<void> => {
    kept.current = { name: fileName, disk, written: (await disk?.getFile())?.lastModified };
    setName(fileName);
  };
  return {
    name,
    nameNow: () => kept.current.name,
    opened: (fileName, disk) => keep(fileName, disk),
    async save({ bytes, mayWriteOver }) {
      const { name: fileName, disk, written } = kept.current;
      // The browser lets a page ask for a file only just after a key or a click, so this comes before the work.
      const place = await fileToSave(fileName, disk);
      if (place === undefined) return { kind: "given up" };
      if (place === "download") {
        download(await bytes(), fileName);
        return { kind: "downloaded", name: fileName };
      }
      if (place === disk && written !== undefined && (await place.getFile()).lastModified !== written)
        if (!(await mayWriteOver(place.name))) return { kind: "given up" };
      await writeFile(place, await bytes());
      await keep(place.name, place);
      return { kind: "written", name: place.name };
    },
  };
}
