import { useId } from "preact/hooks";
import type { DateOrder } from "../../../workbooks/bring/dateIn.ts";
import { plainHeading } from "../../../workbooks/bring/matchHeadings.ts";
import { TextTableView } from "../../parts/TextTableView.tsx";
import { bringWords } from "./bringWords.ts";
import { Field, hintId } from "./Field.tsx";
import type { Bringing } from "./useBringing.ts";

/** Lines of a list that are shown; a farm with thousands of rows to mend begins with the first. */
const mostLines = 200;

/** Records of older books and other files into a new foot book. */
export function BringView({ form, change, fault, report, headings, bring }: Bringing) {
  const id = useId();
  const asked = report === undefined && headings.length > 0;
  return (
    <section class="bringing" aria-labelledby={`${id}title`}>
      <h2 id={`${id}title`}>{bringWords.title}</h2>
      <p>{bringWords.intro}</p>
      <Field id={`${id}files`} label={bringWords.files}>
        <input
          id={`${id}files`}
          type="file"
          multiple
          accept=".xlsx,.xlsm,.csv,.tsv,.txt"
          onChange={({ currentTarget }) => change({ files: [...(currentTarget.files ?? [])] })}
        />
      </Field>
      <Field id={`${id}farm`} label={bringWords.farm} hint={bringWords.farmHint}>
        <input
          id={`${id}farm`}
          value={form.farm}
          autocomplete="off"
          aria-describedby={hintId(`${id}farm`)}
          onInput={({ currentTarget }) => change({ farm: currentTarget.value })}
        />
      </Field>
      <Field id={`${id}order`} label={bringWords.order}>
        <select
          id={`${id}order`}
          value={form.order}
          onChange={({ currentTarget }) => change({ order: currentTarget.value as DateOrder | "" })}
        >
          {Object.entries(bringWords.orders).map(([order, words]) => (
            <option key={order} value={order}>
              {words}
            </option>
          ))}
        </select>
      </Field>
      <Field id={`${id}from`} label={bringWords.from} hint={bringWords.fromHint}>
        <input
          id={`${id}from`}
          type="date"
          value={form.from}
          aria-describedby={hintId(`${id}from`)}
          onInput={({ currentTarget }) => change({ from: currentTarget.value })}
        />
      </Field>
      {headings.length > 0 && (
        <fieldset>
          <legend>{asked ? bringWords.headingsAsked : bringWords.headings}</legend>
          <p class="hint">{bringWords.headingsHint}</p>
          {headings.map(({ heading, taken, choices }) => (
            <Field key={heading} id={`${id}${heading}`} label={heading}>
              <select
                id={`${id}${heading}`}
                value={form.meanings.get(plainHeading(heading)) ?? taken}
                onChange={({ currentTarget }) => {
                  const meanings = new Map(form.meanings);
                  if (currentTarget.value === "") meanings.delete(plainHeading(heading));
                  else meanings.set(plainHeading(heading), currentTarget.value);
                  change({ meanings });
                }}
              >
                {taken === "" && <option value="">{bringWords.unknown}</option>}
                {choices.map((choice) => (
                  <option key={choice} value={choice}>
                    {choice}
                  </option>
                ))}
                <option value="-">{bringWords.leaveOut}</option>
              </select>
            </Field>
          ))}
        </fieldset>
      )}
      {fault !== undefined && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <div class="buttons">
        <button type="button" class="main" onClick={() => void bring()}>
          {headings.length > 0 ? bringWords.again : bringWords.bring}
        </button>
      </div>
      {report && (
        <section aria-label={bringWords.report}>
          <h3>{bringWords.report}</h3>
          <p role="status">{report.total}</p>
          <TextTableView
            label={bringWords.report}
            table={{ headings: report.places[0] ?? [], rows: report.places.slice(1) }}
          />
          {report.lists.map(({ title, lines }) => (
            <details key={title} open>
              <summary>
                {title} ({lines.length})
              </summary>
              <ul>
                {lines.slice(0, mostLines).map((line) => (
                  <li key={line.join()}>{line.join(": ")}</li>
                ))}
                {lines.length > mostLines && <li>{bringWords.more(lines.length - mostLines)}</li>}
              </ul>
            </details>
          ))}
        </section>
      )}
    </section>
  );
}
