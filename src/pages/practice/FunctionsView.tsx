import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { catalogue } from "../../../functions/catalogue.ts";
import { FormulaForm } from "../parts/FormulaForm.tsx";
import { FunctionDetail } from "../parts/FunctionDetail.tsx";
import { FunctionFinder, nothingAsked } from "../parts/FunctionFinder.tsx";
import { words } from "../words.ts";
import type { PracticeGrid } from "./grid/practiceGrid.ts";

interface Props {
  readonly grid: () => PracticeGrid | undefined;
  /** What the functions are shown in. */
  readonly panel: RefObject<HTMLElement | null>;
}

/** The functions: found by plain words, read about, and put into the sheet. */
export function FunctionsView({ grid, panel }: Props) {
  const [asked, setAsked] = useState(nothingAsked);
  const name = useHash();

  // The link that was followed is gone; the reader is led to what has come in its place. At first nothing is taken away.
  const before = useRef(name);
  useEffect(() => {
    if (before.current === name) return;
    before.current = name;
    panel.current?.scrollTo(0, 0);
    panel.current?.querySelector<HTMLElement>("h2")?.focus();
  }, [name, panel]);

  const definition = catalogue.find((known) => known.name === name);
  if (!definition)
    return (
      <>
        <h2 tabIndex={-1}>{words.find.title}</h2>
        <FunctionFinder definitions={catalogue} asked={asked} onAsk={setAsked} address={(found) => `#${found}`} />
      </>
    );
  const sheet = {
    selected: async () => grid()?.selection() ?? "",
    shown: async (cell: string) => grid()?.shownAt(cell) ?? "",
    write: async (cell: string, formula: string) => grid()?.write(cell, formula),
    inWords: (error: unknown) => (error as Error).message,
  };
  return (
    <FunctionDetail key={definition.name} definition={definition} back="#">
      <FormulaForm definition={definition} sheet={sheet} />
    </FunctionDetail>
  );
}

function useHash(): string {
  const [hash, setHash] = useState(location.hash);
  useEffect(() => {
    const follow = () => setHash(location.hash);
    addEventListener("hashchange", follow);
    return () => removeEventListener("hashchange", follow);
  }, []);
  return hash.slice(1);
}
