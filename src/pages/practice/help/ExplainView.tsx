import { ExplanationView } from "../../parts/explain/ExplanationView.tsx";
import { words } from "../../words.ts";
import type { CellExplained } from "../grid/explainCell.ts";
import { sheetWords } from "../sheetWords.ts";

interface Props {
  readonly cell: string;
  /** Undefined where the cell holds no formula, and none fills it. */
  readonly explained: CellExplained | undefined;
  readonly onGo: (cell: string) => void;
}

/** The formula of the selected cell in words. It follows the selection. */
export const ExplainView = ({ cell, explained, onGo }: Props) => (
  <>
    <h2 tabIndex={-1}>{words.explain.title}</h2>
    {explained ? (
      <>
        {explained.from !== undefined && <p>{sheetWords.filledFrom(cell, explained.from)}</p>}
        <ExplanationView explanation={explained.explanation} cell={explained.from ?? cell} onGo={onGo} />
      </>
    ) : (
      <p>{words.explain.noFormula(cell)}</p>
    )}
  </>
);
