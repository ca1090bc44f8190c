import type { ComponentChildren } from "preact";
import { Problem } from "../../cells/problem.ts";
import type { AnyFunction, Example } from "../../definition/defineFunction.ts";
import { exampleInSheet, literal } from "../../definition/exampleInSheet.ts";
import { namespace, signature } from "../../definition/formulaText.ts";
import { resultInWords } from "../../definition/resultInWords.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { words } from "../words.ts";
import { CautionBox } from "./CautionBox.tsx";
import { TextTableView } from "./TextTableView.tsx";

interface Props {
  readonly definition: AnyFunction;
  /** Where the list is. */
  readonly back: string;
  /** Stands under the caution: how to put the function into the sheet. */
  readonly children?: ComponentChildren;
}

/** All there is to know of one function. */
export function FunctionDetail({ definition, back, children }: Props) {
  const [first, ...others] = definition.examples as readonly Example[];
  const text = words.detail;
  return (
    <article class="function" id={definition.name}>
      <p>
        <a class="back" href={back}>
          {text.back}
        </a>
      </p>
      <h2 tabIndex={-1}>
        {namespace}.{definition.name}
      </h2>
      <p class="lead">{definition.summary}</p>
      <p>
        <code class="signature">={signature(definition)}</code>
      </p>
      {definition.caution && <CautionBox>{definition.caution.words}</CautionBox>}
      {children}
      <h3>{text.give}</h3>
      <Arguments definition={definition} />
      <h3>{text.gives}</h3>
      <p>{resultInWords(definition.result)}</p>
      {definition.notes.length > 0 && <Lines title={text.rules} lines={definition.notes} />}
      {first && (
        <>
          <h3>{text.example}</h3>
          <ExampleView definition={definition} example={first} />
        </>
      )}
      {others.length > 0 && (
        <details>
          <summary>{text.moreExamples(others.length)}</summary>
          {others.map((example, index) => (
            <ExampleView key={index} definition={definition} example={example} />
          ))}
        </details>
      )}
      {definition.sources.length > 0 && (
        <Lines title={text.sources} lines={definition.sources.map(({ cite, checked }) => `${cite} (${checked})`)} />
      )}
    </article>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

function Arguments({ definition }: { readonly definition: AnyFunction }) {
  const parameters = Object.entries(definition.parameters as Record<string, Parameter<unknown>>);
  if (parameters.length === 0) return <p>{words.detail.nothing}</p>;
  return (
    <dl class="arguments">
      {parameters.map(([name, parameter]) => (
        <div key={name}>
          <dt>
            <code>{name}</code>
          </dt>
          <dd>
            {parameter.description}
            <span class="accepted">
              {words.detail.accepted(words.detail.shapes[parameter.shape], parameter.kind.wanted)}. {leftOut(parameter)}
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

const leftOut = ({ optional, fallback }: Parameter<unknown>): string => {
  if (fallback !== undefined) return words.detail.leftOut(literal(fallback));
  return optional ? words.detail.mayBeLeftOut : "";
};

function ExampleView({ definition, example }: { readonly definition: AnyFunction; readonly example: Example }) {
  const { sheet, formula, answer } = exampleInSheet(definition, example);
  const shows = example.shows ?? (example.gives instanceof Problem ? words.detail.refusal : undefined);
  return (
    <figure class="example">
      {shows && <figcaption>{shows}</figcaption>}
      {sheet && <TextTableView table={sheet} label={words.detail.exampleCells} rowHeadings />}
      <p>
        <code>{formula}</code> {words.detail.answers}
      </p>
      {"table" in answer ? (
        <TextTableView table={answer.table} label={words.detail.exampleAnswer} />
      ) : (
        <p class="answer">{"one" in answer ? answer.one : `${answer.refused} ${answer.message}`}</p>
      )}
    </figure>
  );
}
