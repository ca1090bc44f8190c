import { useState } from "preact/hooks";
import { useWork } from "../../parts/useWork.ts";
import { type Template, templateList } from "../../templateList.ts";
import { words } from "../../words.ts";
import type { Connection } from "../connection.ts";
import { type Capabilities, capabilities } from "../excel/capabilities.ts";
import { fetchTemplate } from "../excel/fetchTemplate.ts";
import { insertSheets } from "../excel/insertSheets.ts";
import { troubleInWords } from "../excel/troubleInWords.ts";
import { NeedsExcel } from "./NeedsExcel.tsx";
import { useFromExcel } from "./useFromExcel.ts";
import { WorkNotes } from "./WorkNotes.tsx";

/** Workbooks to start from. */
export function WorkbooksView({ connection }: { readonly connection: Connection }) {
  const can = useFromExcel(connection, capabilities);
  const text = words.workbooks;
  return (
    <>
      <p>{text.intro}</p>
      {connection !== "excel" && <NeedsExcel connection={connection} />}
      {can && !can.insertsSheets && <p class="needs">{can.opensWorkbooks ? text.tooOld : text.tooOldToOpen}</p>}
      <ul class="cards">
        {templateList.map((template) => (
          <li key={template.file}>
            <TemplateCard template={template} can={can} />
          </li>
        ))}
      </ul>
      {can?.insertsSheets && <p class="hint">{text.insertNote}</p>}
    </>
  );
}

function TemplateCard({ template, can }: { readonly template: Template; readonly can: Capabilities | undefined }) {
  const { title, about } = template;
  const [done, setDone] = useState<string>();
  const work = useWork(troubleInWords);
  const address = `templates/${template.file}`;
  const text = words.workbooks;
  const open = () =>
    work.start(async () => {
      setDone(undefined);
      await Excel.createWorkbook(await fetchTemplate(address));
      setDone(text.opened(title));
    });
  const insert = () =>
    work.start(async () => {
      setDone(undefined);
      setDone(text.inserted(await insertSheets(await fetchTemplate(address))));
    });
  return (
    <>
      <h3>{title}</h3>
      <p>{about}</p>
      <p class="buttons">
        {can?.opensWorkbooks && (
          <button
            type="button"
            class="main"
            aria-label={text.openNamed(title)}
            aria-disabled={work.busy}
            onClick={open}
          >
            {text.open}
          </button>
        )}
        {can?.insertsSheets && (
          <button type="button" aria-label={text.insertNamed(title)} aria-disabled={work.busy} onClick={insert}>
            {text.insert}
          </button>
        )}
        <a href={address} download={template.file} aria-label={text.downloadNamed(title)}>
          {text.download}
        </a>
      </p>
      <WorkNotes work={work} done={done} />
    </>
  );
}
