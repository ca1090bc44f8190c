import type { Selected } from "./grid/practiceGrid.ts";
import { sheetWords } from "./sheetWords.ts";

interface Props {
  readonly selected: Selected | undefined;
  readonly calculating: boolean;
}

/** The selected cell in words: the sheet itself is a picture that no screen reader can read. */
export const StatusLine = ({ selected, calculating }: Props) => (
  <p class="status" role="status" aria-label={sheetWords.statusLabel}>
    {selected && (
      <>
        <strong>
          {selected.sheet} {selected.address}
        </strong>{" "}
        {selected.shown === "" ? sheetWords.empty : selected.shown}
        {selected.message !== undefined && <span class="fault"> {selected.message}</span>}
        {selected.wanted !== undefined && <span class="told"> {selected.wanted}</span>}
        {selected.formula !== undefined && <code>{selected.formula}</code>}
      </>
    )}
    {calculating && <span class="told"> {sheetWords.calculating}</span>}
  </p>
);
