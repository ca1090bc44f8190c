import { useEffect, useRef } from "preact/hooks";
import type { DiskFile } from "./files/filePickers.ts";

interface WithHandle {
  readonly getAsFileSystemHandle?: () => Promise<(DiskFile & { readonly kind: "file" | "directory" }) | null>;
}

/** A file that is dropped anywhere on the page is opened, and saved into where the browser gives it for that. */
export function useDrop(open: (file: File, disk?: DiskFile) => void): void {
  const now = useRef(open);
  now.current = open;
  useEffect(() => {
    const brings = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes("Files") ?? false;
    const over = (event: DragEvent) => {
      // Without this the browser would leave the page for the file.
      if (brings(event)) event.preventDefault();
    };
    const drop = async (event: DragEvent) => {
      if (!brings(event)) return;
      event.preventDefault();
      event.stopPropagation();
      const [item] = [...(event.dataTransfer?.items ?? [])].filter(({ kind }) => kind === "file");
      const file = item?.getAsFile();
      if (!item || !file) return;
      const handle = await (item as WithHandle).getAsFileSystemHandle?.().catch(() => null);
      now.current(file, handle?.kind === "file" ? handle : undefined);
    };
    addEventListener("dragover", over, { capture: true });
    addEventListener("drop", drop, { capture: true });
    return () => {
      removeEventListener("dragover", over, { capture: true });
      removeEventListener("drop", drop, { capture: true });
    };
  }, []);
}
