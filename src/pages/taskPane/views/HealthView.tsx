import { useState } from "preact/hooks";
import { version } from "../../../../functions/version.ts";
import { TextTableView } from "../../parts/TextTableView.tsx";
import { useWork } from "../../parts/useWork.ts";
import { words } from "../../words.ts";
import type { Connection } from "../connection.ts";
import { capabilities } from "../excel/capabilities.ts";
import { type EnteredAgain, enterAgain } from "../excel/enterAgain.ts";
import { troubleInWords } from "../excel/troubleInWords.ts";
import { tryHost } from "../excel/tryHost.ts";
import { NeedsExcel } from "./NeedsExcel.tsx";
import { useFromExcel } from "./useFromExcel.ts";
import { WorkNotes } from "./WorkNotes.tsx";

const text = words.health;

/** Whether the functions are there and the spreadsheet hands its cells over as they are. */
export const HealthView = ({ connection }: { readonly connection: Connection }) => (
  <>
    <Facts connection={connection} />
    {connection !== "excel" ? (
      <NeedsExcel connection={connection} />
    ) : (
      <>
        <HostTrial />
        <Again />
      </>
    )}
  </>
);

function Facts({ connection }: { readonly connection: Connection }) {
  const can = useFromExcel(connection, capabilities);
  const facts: readonly (readonly [string, string])[] = [
    [text.version, version],
    ...(can === undefined
      ? []
      : ([
          [text.dateSystem, can.dateSystem === 1900 ? text.dateSystemFine : text.dateSystemOld],
          [text.formats, can.formattedNumbers ? text.formatsYes : text.formatsNo],
          [text.insertion, can.insertsSheets ? text.yes : text.noOlder],
        ] as const)),
  ];
  return (
    <dl class="facts" aria-label={text.facts}>
      {facts.map(([what, found]) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd>{found}</dd>
        </div>
      ))}
    </dl>
  );
}

function HostTrial() {
  const [lines, setLines] = useState<readonly (readonly string[])[]>();
  const work = useWork(troubleInWords);
  const start = () =>
    work.start(async () => {
      setLines(undefined);
      setLines(await tryHost());
    });
  return (
    <section>
      <h3>{text.hostTitle}</h3>
      <p>{text.hostIntro}</p>
      <p class="buttons">
        <button type="button" aria-disabled={work.busy} onClick={start}>
          {text.hostTry}
        </button>
      </p>
      <WorkNotes work={work} />
      {lines && <TextTableView table={{ headings: text.headings, rows: lines }} label={text.hostTitle} rowHeadings />}
    </section>
  );
}

function Again() {
  const [answer, setAnswer] = useState<EnteredAgain>();
  const work = useWork(troubleInWords);
  const start = () =>
    work.start(async () => {
      setAnswer(undefined);
      setAnswer(await enterAgain());
    });
  return (
    <section>
      <h3>{text.againTitle}</h3>
      <p>{text.againIntro}</p>
      <p class="buttons">
        <button type="button" aria-disabled={work.busy} onClick={start}>
          {text.again}
        </button>
      </p>
      <WorkNotes work={work} done={answer && outcome(answer)} />
      {answer && answer.failed.length > 0 && (
        <ul class="fault">
          {answer.failed.slice(0, told).map(({ address, why }) => (
            <li key={address}>{text.againFailed(address, why)}</li>
          ))}
          {answer.failed.length > told && <li>{text.againMore(answer.failed.length - told)}</li>}
        </ul>
      )}
    </section>
  );
}

/** Cells told one by one: a locked sheet may hold hundreds. */
const told = 20;

function outcome({ unknown, asPrecaution, failed }: EnteredAgain): string {
  if (unknown + asPrecaution + failed.length === 0) return text.againNone;
  const shown = unknown + failed.length === 0 ? text.againNoneShown : text.againDone(unknown);
  return asPrecaution === 0 ? shown : `${shown} ${text.againPrecaution(asPrecaution)}`;
}
