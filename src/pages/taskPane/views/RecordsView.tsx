import { useState } from "preact/hooks";
import { cautions } from "../../../../functions/cautions.ts";
import { CautionBox } from "../../parts/CautionBox.tsx";
import { useWork } from "../../parts/useWork.ts";
import { words } from "../../words.ts";
import { type CheckedRecords, checkRecords } from "../checkRecords.ts";
import type { Connection } from "../connection.ts";
import { capabilities } from "../excel/capabilities.ts";
import { readRecords } from "../excel/readRecords.ts";
import { selectCell } from "../excel/selectCell.ts";
import { troubleInWords } from "../excel/troubleInWords.ts";
import { today } from "../today.ts";
import { NeedsExcel } from "./NeedsExcel.tsx";
import { WorkNotes } from "./WorkNotes.tsx";

interface Checked extends CheckedRecords {
  readonly sheet: string;
  readonly address: string;
}

const atATime = 100;

/** Looks through the selected records and leads to each cell that needs a look. */
export function RecordsView({ connection }: { readonly connection: Connection }) {
  const [checked, setChecked] = useState<Checked>();
  const [shown, setShown] = useState(atATime);
  const work = useWork(troubleInWords);
  const text = words.records;
  const check = () =>
    work.start(async () => {
      setChecked(undefined);
      setShown(atATime);
      const records = await readRecords();
      const { dateSystem } = await capabilities();
      setChecked({ ...checkRecords(records, today(), dateSystem), sheet: records.sheet, address: records.address });
    });
  return (
    <>
      <p>{text.intro}</p>
      {connection !== "excel" ? (
        <NeedsExcel connection={connection} />
      ) : (
        <p class="buttons">
          <button type="button" class="main" aria-disabled={work.busy} onClick={check}>
            {text.check}
          </button>
        </p>
      )}
      {checked && <CautionBox>{cautions.recordCheck.words}</CautionBox>}
      <WorkNotes
        work={work}
        {...(checked && { [checked.findings.length === 0 ? "done" : "told"]: summary(checked) })}
      />
      {checked && (
        <>
          <ul class="findings">
            {checked.findings.slice(0, shown).map(({ cell, heading, what, mend }, index) => (
              <li key={index}>
                <button
                  type="button"
                  class="link"
                  aria-label={text.go(`${checked.sheet}, ${cell}`)}
                  onClick={() => work.start(() => selectCell(checked.sheet, cell))}
                >
                  {cell}
                </button>
                <div>
                  <p>
                    <strong>{heading}</strong>: {what}
                  </p>
                  <p class="mend">{mend}</p>
                </div>
              </li>
            ))}
          </ul>
          {checked.findings.length > shown && (
            <p class="buttons">
              <button type="button" onClick={() => setShown(shown + atATime)}>
                {text.more(Math.min(atATime, checked.findings.length - shown))}
              </button>
            </p>
          )}
          <details>
            <summary>{text.headings}</summary>
            <ul>
              {checked.columns.map(({ heading, field, repeats, place }) => (
                <li key={place}>
                  {field !== undefined
                    ? text.taken(heading, field)
                    : repeats !== undefined
                      ? text.repeated(heading, repeats)
                      : text.unknown(heading)}
                </li>
              ))}
            </ul>
          </details>
        </>
      )}
    </>
  );
}

const summary = ({ address, records, findings }: Checked): string => {
  const { looked, none, some } = words.records;
  return `${looked(address, records)} ${findings.length === 0 ? none : some(findings.length)}`;
};
