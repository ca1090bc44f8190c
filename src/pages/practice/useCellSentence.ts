import { useEffect, useState } from "preact/hooks";
import type { Box } from "./grid/cellBox.ts";
import type { Selected } from "./grid/gridEvents.ts";

interface AtCell {
  /** What is to be said at the selected cell; undefined while something is typed there, and after Escape. */
  readonly shown: { readonly box: Box; readonly sentence: string } | undefined;
  readonly setEditing: (editing: boolean) => void;
}

/** Knows what stands at the selected cell, so that whoever goes there by keyboard sees it too. Escape takes it away. */
export function useCellSentence(selected: Selected | undefined, box: Box | undefined): AtCell {
  const [editing, setEditing] = useState(false);
  const [dismissed, setDismissed] = useState("");
  const own = selected?.sentence === undefined ? "" : `${selected.sheet} ${selected.address} ${selected.sentence}`;
  // Gone elsewhere and come back, it is to be read again.
  useEffect(() => setDismissed((before) => (before === own ? before : "")), [own]);
  useEffect(() => {
    const follow = ({ key }: KeyboardEvent) => {
      // In the editor it takes back what was typed.
      if (key === "Escape" && !editing) setDismissed(own);
    };
    addEventListener("keydown", follow, { capture: true });
    return () => removeEventListener("keydown", follow, { capture: true });
  }, [own, editing]);
  const isShown = own !== "" && own !== dismissed && !editing;
  return {
    shown: isShown && box && selected?.sentence !== undefined ? { box, sentence: selected.sentence } : undefined,
    setEditing,
  };
}
