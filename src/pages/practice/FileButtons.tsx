import { useRef } from "preact/hooks";
import { canOpenFromDisk, type DiskFile, fileToOpen } from "./files/filePickers.ts";
import { keepKeys } from "./keepKeys.ts";
import { sheetWords } from "./sheetWords.ts";

interface Props {
  readonly busy: boolean;
  readonly onOpen: (file: File, disk?: DiskFile) => void;
  readonly onFault: (error: Error) => void;
  readonly onSave: () => void;
}

/** A workbook in, a workbook out; both stay on this machine. */
export function FileButtons({ busy, onOpen, onFault, onSave }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const choose = async (): Promise<void> => {
    if (!canOpenFromDisk()) return input.current?.click();
    try {
      const disk = await fileToOpen();
      if (disk) onOpen(await disk.getFile(), disk);
    } catch (error) {
      // Where the browser allows no file to be kept, one may still be read.
      if ((error as Error).name === "SecurityError") input.current?.click();
      else onFault(error as Error);
    }
  };
  return (
    <div class="buttons">
      <button type="button" onClick={() => void choose()}>
        {sheetWords.open}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".xlsx,.xlsm"
        aria-label={sheetWords.open}
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0];
          if (file) onOpen(file);
          // The same file can then be opened again.
          currentTarget.value = "";
        }}
      />
      <button
        type="button"
        class="main"
        aria-disabled={busy}
        aria-keyshortcuts="Control+S"
        onMouseDown={keepKeys}
        onClick={onSave}
      >
        {sheetWords.save}
      </button>
    </div>
  );
}
