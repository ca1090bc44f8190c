import { useEffect, useState } from "preact/hooks";
import { catalogue } from "../../../../functions/catalogue.ts";
import { isCellError } from "../../../cells/cell.ts";
import { days1904 } from "../../../cells/day.ts";
import type { Refusal } from "../../../hosts/excel/refusal.ts";
import { ExplanationView } from "../../parts/explain/ExplanationView.tsx";
import { askedOf, type Explanation, explainFormula } from "../../parts/explain/explainFormula.ts";
import { sentenceFor } from "../../parts/explain/sentenceFor.ts";
import { useWork } from "../../parts/useWork.ts";
import { words } from "../../words.ts";
import type { Connection } from "../connection.ts";
import { capabilities } from "../excel/capabilities.ts";
import { goToCell } from "../excel/goToCell.ts";
import { readFormula } from "../excel/readFormula.ts";
import { troubleInWords } from "../excel/troubleInWords.ts";
import { today } from "../today.ts";
import { typedAgain } from "../typedAgain.ts";
import { NeedsExcel } from "./NeedsExcel.tsx";
import { WorkNotes } from "./WorkNotes.tsx";

interface Explained {
  readonly cell: string;
  /** Undefined where the cell holds no formula. */
  readonly explanation: Explanation | undefined;
}

/**
 * The formula of the selected cell in words. It stays while another cell is selected, so that one thing after the other
 * can be mended from it.
 */
export function ExplainView({ connection }: { readonly connection: Connection }) {
  const [explained, setExplained] = useState<Explained>();
  const work = useWork(troubleInWords);
  const text = words.explain;
  const explain = () =>
    work.start(async () => {
      setExplained(undefined);
      setExplained(await explainActive());
    });
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is selected when the view opens is what is asked about
  useEffect(() => {
    if (connection === "excel") explain();
  }, [connection]);
  return (
    <>
      <p>{text.intro}</p>
      {connection !== "excel" ? (
        <NeedsExcel connection={connection} />
      ) : (
        <p class="buttons">
          <button type="button" class="main" aria-disabled={work.busy} onClick={explain}>
            {text.again}
          </button>
        </p>
      )}
      <WorkNotes
        work={work}
        told={explained && (explained.explanation ? text.explained : text.noFormula)(explained.cell)}
      />
      {explained?.explanation && (
        <ExplanationView
          explanation={explained.explanation}
          cell={explained.cell}
          onGo={(cell) => work.start(() => goToCell(cell))}
        />
      )}
    </>
  );
}

// The functions stand in the same page (a shared runtime), and Excel itself does not tell the sentence of an error.
const functions = globalThis as { readonly soundfoldRefusal?: Refusal };

const patience = 10_000;

/** The functions come after the pane; a page that opens with this view would be quicker than they are. */
async function refusalOnceLoaded(): Promise<Refusal | undefined> {
  if (functions.soundfoldRefusal === undefined && document.readyState !== "complete")
    await new Promise<unknown>((resolve) => {
      addEventListener("load", resolve, { once: true });
      setTimeout(resolve, patience);
    });
  return functions.soundfoldRefusal;
}

async function explainActive(): Promise<Explained> {
  const { dateSystem, tellsSpills } = await capabilities();
  const { cell, formula, answer, found } = await readFormula((typed) => askedOf(typed, catalogue), tellsSpills);
  if (formula === undefined) return { cell, explanation: undefined };
  const dayOffset = dateSystem === 1904 ? days1904 : 0;
  const first = answer[0]?.[0];
  const error = isCellError(first) ? first.error : undefined;
  const refuses = error !== undefined || /\bIF(?:ERROR|NA)\(/i.test(formula) ? await refusalOnceLoaded() : undefined;
  const message =
    refuses &&
    sentenceFor(formula, error, found, (name, given) => refuses(name, given, { dateSystem }), {
      today: today(),
      dayOffset,
    });
  const shown = typedAgain(formula) ?? formula;
  return { cell, explanation: explainFormula(shown, catalogue, found, { cells: answer, message }, dayOffset) };
}
