import { useRef } from "preact/hooks";
import { words } from "../words.ts";

interface Props {
  readonly busy: boolean;
  readonly onOpen: (file: File) => void;
  readonly onDownload: () => void;
}

/** A workbook in, a workbook out; both stay on this machine. */
export function FileButtons({ busy, onOpen, onDownload }: Props) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class="buttons">
      <button type="button" onClick={() => input.current?.click()}>
        {words.practice.open}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".xlsx,.xlsm"
        aria-label={words.practice.open}
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0];
          if (file) onOpen(file);
          // The same file can then be opened again.
          currentTarget.value = "";
        }}
      />
      <button type="button" class="main" aria-disabled={busy} onClick={onDownload}>
        {words.practice.download}
      </button>
    </div>
  );
}
