import { useId, useState } from "preact/hooks";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { literal } from "../../definition/exampleInSheet.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { words } from "../words.ts";
import { buildFormula } from "./buildFormula.ts";
import type { FormulaSheet } from "./formulaSheet.ts";
import { isOneCell } from "./isOneCell.ts";
import { SelectionField } from "./SelectionField.tsx";
import { useWork } from "./useWork.ts";

interface Props {
  readonly definition: AnyFunction;
  readonly sheet: FormulaSheet;
}

/** Asks for each argument and writes the formula into a cell. */
export function FormulaForm({ definition, sheet }: Props) {
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [cell, setCell] = useState("");
  const [asked, setAsked] = useState(false);
  const [filled, setFilled] = useState<string>();
  const [written, setWritten] = useState<string>();
  const work = useWork(sheet.inWords);
  const id = useId();
  const text = words.formula;
  const { formula, faults } = buildFormula(definition, typed, cell.trim());
  const cellFault = isOneCell(cell) ? undefined : text.noCell;
  const parameters = Object.entries(definition.parameters as Record<string, Parameter<unknown>>);

  const change = (act: () => void) => {
    setWritten(undefined);
    setFilled(undefined);
    act();
  };
  const write = (over: boolean) => {
    setAsked(true);
    setWritten(undefined);
    setFilled(undefined);
    if (formula === undefined || cellFault !== undefined) return;
    work.start(async () => {
      const holds = over ? "" : await sheet.shown(cell);
      if (holds !== "") return setFilled(text.isFilled(cell, holds));
      await sheet.write(cell, formula);
      setWritten(text.written(cell));
    });
  };

  return (
    <form
      class="formula"
      aria-labelledby={`${id}title`}
      onSubmit={(event) => {
        event.preventDefault();
        write(false);
      }}
    >
      <h3 id={`${id}title`}>{text.title}</h3>
      {parameters.length > 0 && <p>{text.intro}</p>}
      {parameters.map(([name, parameter]) => (
        <SelectionField
          key={name}
          label={name}
          hint={hintOf(parameter)}
          choices={parameter.kind.words ?? []}
          value={typed[name] ?? ""}
          fault={asked || (typed[name] ?? "") !== "" ? faults.get(name) : undefined}
          sheet={sheet}
          onChange={(value) => change(() => setTyped((before) => ({ ...before, [name]: value })))}
        />
      ))}
      <SelectionField
        label={text.cell}
        hint={text.cellHint}
        choices={[]}
        value={cell}
        fault={asked ? cellFault : undefined}
        sheet={sheet}
        onChange={(value) => change(() => setCell(value))}
      />
      {formula !== undefined && (
        <p class="preview">
          {text.preview}: <code>{formula}</code>
        </p>
      )}
      <p class="buttons">
        <button type="submit" class="main" aria-disabled={work.busy}>
          {text.write}
        </button>
      </p>
      {filled && (
        <div class="question" role="alert">
          <p>{filled}</p>
          <p class="buttons">
            <button type="button" onClick={() => write(true)}>
              {text.writeOver}
            </button>
            <button type="button" onClick={() => setFilled(undefined)}>
              {text.keep}
            </button>
          </p>
        </div>
      )}
      <p role="status" class={written ? "done" : "unseen"}>
        {written ?? ""}
      </p>
      {work.fault && (
        <p role="alert" class="fault">
          {work.fault}
        </p>
      )}
      {asked && (formula === undefined || cellFault) && (
        <p role="alert" class="fault">
          {text.faults}
        </p>
      )}
    </form>
  );
}

const hintOf = ({ description, optional, fallback }: Parameter<unknown>): string => {
  if (fallback !== undefined) return `${description}. ${words.detail.leftOut(literal(fallback))}`;
  return optional ? `${description} (${words.formula.optional})` : description;
};
