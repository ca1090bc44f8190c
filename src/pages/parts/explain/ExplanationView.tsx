import { words } from "../../words.ts";
import { CautionBox } from "../CautionBox.tsx";
import type { ExplainedCall, Explanation } from "./explainFormula.ts";

interface Props {
  readonly explanation: Explanation;
  /** Where the formula stands. */
  readonly cell: string;
  readonly onGo: (cell: string) => void;
}

/** A formula in words, with a step to each cell that is to be mended. */
export function ExplanationView({ explanation, cell, onGo }: Props) {
  const { formula, hint, calls, answer, caught, failed, mends } = explanation;
  const text = words.explain;
  return (
    <article class="explanation">
      <p>
        <strong>{cell}</strong> <code class="signature">{formula}</code>
      </p>
      {hint && <p class="fault">{hint}</p>}
      <p class={failed ? "fault" : "answer"}>{answer}</p>
      {caught && <p class="fault">{caught}</p>}
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
        <CallInWords key={index} call={call} />
      ))}
    </article>
  );
}

const CallInWords = ({ call }: { readonly call: ExplainedCall }) => (
  <section>
    <h3>{call.name}</h3>
    <p>{[call.answers, call.gives, call.inside ?? ""].join(" ").trim()}</p>
    {call.surplus && <p class="fault">{call.surplus}</p>}
    {call.caution && <CautionBox>{call.caution}</CautionBox>}
    <dl class="arguments">
      {call.arguments.map(({ name, meaning, given, holds, calls }) => (
        <div key={name}>
          <dt>
            <code>{name}</code>
          </dt>
          <dd>
            {meaning}
            <span class="accepted">
              {given !== undefined && <code>{given}</code>} {holds}
            </span>
            {calls.map((inner, index) => (
              <CallInWords key={index} call={inner} />
            ))}
          </dd>
        </div>
      ))}
    </dl>
  </section>
);
