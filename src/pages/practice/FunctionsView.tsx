import { useEffect, useState } from "preact/hooks";
import { catalogue } from "../../../functions/catalogue.ts";
import { FormulaForm } from "../parts/FormulaForm.tsx";
import { FunctionDetail } from "../parts/FunctionDetail.tsx";
import { FunctionFinder, nothingAsked } from "../parts/FunctionFinder.tsx";
import { words } from "../words.ts";
import type { PracticeGrid } from "./grid/practiceGrid.ts";

/** The functions: found by plain words, read about, and put into the sheet. */
export function FunctionsView({ grid }: { readonly grid: () => PracticeGrid | undefined }) {
  const [asked, setAsked] = useState(nothingAsked);
  const name = useHash();
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
