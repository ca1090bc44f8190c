import { useId } from "preact/hooks";
import { words } from "../words.ts";
import type { FormulaSheet } from "./formulaSheet.ts";
import { useWork } from "./useWork.ts";

interface Props {
  readonly label: string;
  readonly hint: string;
  /** Words that may be picked. */
  readonly choices: readonly string[];
  readonly value: string;
  readonly fault: string | undefined;
  readonly sheet: FormulaSheet;
  readonly onChange: (value: string) => void;
}

/** One line of a form that takes what is typed, or the cells that are selected in the sheet. */
export function SelectionField({ label, hint, choices, value, fault, sheet, onChange }: Props) {
  const id = useId();
  const work = useWork(sheet.inWords);
  const said = work.fault ?? fault;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <p class="hint" id={`${id}hint`}>
        {hint}
      </p>
      <div class="beside">
        <input
          id={id}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          aria-describedby={`${id}hint ${id}fault`}
          aria-invalid={said !== undefined}
          list={choices.length > 0 ? `${id}choices` : undefined}
          value={value}
          onInput={({ currentTarget }) => onChange(currentTarget.value)}
        />
        <button
          type="button"
          aria-label={words.formula.useSelectionFor(label)}
          aria-disabled={work.busy}
          onClick={() => work.start(async () => onChange(await sheet.selected()))}
        >
          {words.formula.useSelection}
        </button>
      </div>
      {choices.length > 0 && (
        <datalist id={`${id}choices`}>
          {choices.map((choice) => (
            <option key={choice} value={choice} />
          ))}
        </datalist>
      )}
      <p id={`${id}fault`} class={said ? "fault" : "unseen"}>
        {said ?? ""}
      </p>
    </div>
  );
}
