import { words } from "../../words.ts";
import { CautionBox } from "../CautionBox.tsx";
import type { Explanation } from "./explainFormula.ts";

interface Props {
  readonly explanation: Explanation;
  /** Where the formula stands. */
  readonly cell: string;
  readonly onGo: (cell: string) => void;
}

/** A formula in words, with a step to each cell that is to be mended. */
export function ExplanationView({ explanation, cell, onGo }: Props) {
  const { formula, hint, calls, answer, mends } = explanation;
  const text = words.explain;
  return (
    <article class="explanation">
      <p>
        <strong>{cell}</strong> <code class="signature">{formula}</code>
      </p>
      {hint && <p class="fault">{hint}</p>}
      <p class="answer">{answer}</p>
      {mends.length > 0 && (
        <ul aria-label={text.toMend}>
          {mends.map((mend) => (
            <li key={mend.cell}>
              <button type="button" class="link" onClick={() => onGo(mend.cell)}>
                {text.mend(mend.place, mend.cell)}
              </button>
            </li>
          ))}
        </ul>
      )}
      {calls.map((call, index) => (
        <section key={index}>
          <h3>{call.name}</h3>
          <p>{[call.answers, call.gives, call.inside ?? ""].join(" ").trim()}</p>
          {call.surplus && <p class="fault">{call.surplus}</p>}
          {call.caution && <CautionBox>{call.caution}</CautionBox>}
          <dl class="arguments">
            {call.arguments.map(({ name, meaning, given, holds }) => (
              <div key={name}>
                <dt>
                  <code>{name}</code>
                </dt>
                <dd>
                  {meaning}
                  <span class="accepted">
                    {given !== undefined && <code>{given}</code>} {holds}
                  </span>
                </dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </article>
  );
}
