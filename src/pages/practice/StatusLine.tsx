import { words } from "../words.ts";
import type { Selected } from "./grid/practiceGrid.ts";

interface Props {
  readonly selected: Selected | undefined;
  readonly calculating: boolean;
}

/** The selected cell in words: the sheet itself is a picture that no screen reader can read. */
export const StatusLine = ({ selected, calculating }: Props) => (
  <p class="status" role="status" aria-label={words.practice.statusLabel}>
    {selected && (
      <>
        <strong>
          {selected.sheet} {selected.address}
        </strong>{" "}
        {selected.shown === "" ? words.practice.empty : selected.shown}
        {selected.message !== undefined && <span class="fault"> {selected.message}</span>}
        {selected.wanted !== undefined && <span class="told"> {selected.wanted}</span>}
        {selected.formula !== undefined && <code>{selected.formula}</code>}
      </>
    )}
    {calculating && <span class="told"> {words.practice.calculating}</span>}
  </p>
);
