import { ExplanationView } from "../../parts/explain/ExplanationView.tsx";
import type { Explanation } from "../../parts/explain/explainFormula.ts";
import { words } from "../../words.ts";

interface Props {
  readonly cell: string;
  /** Undefined where the cell holds no formula. */
  readonly explanation: Explanation | undefined;
  readonly onGo: (cell: string) => void;
}

/** The formula of the selected cell in words. It follows the selection. */
export const ExplainView = ({ cell, explanation, onGo }: Props) => (
  <>
    <h2 tabIndex={-1}>{words.explain.title}</h2>
    {explanation ? (
      <ExplanationView explanation={explanation} cell={cell} onGo={onGo} />
    ) : (
      <p>{words.explain.noFormula(cell)}</p>
    )}
  </>
);
