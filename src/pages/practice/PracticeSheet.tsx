import { useEffect, useRef, useState } from "preact/hooks";
import { catalogue } from "../../../functions/catalogue.ts";
import { createEngine } from "../../hosts/headless/createEngine.ts";
import { openWorkbook } from "../../workbook/openWorkbook.ts";
import { recalculate } from "../../workbook/recalculate.ts";
import { words } from "../words.ts";
import { FileButtons } from "./FileButtons.tsx";
import { FunctionsView } from "./FunctionsView.tsx";
import { type FilledTable, type PracticeGrid, practiceGrid, type Selected } from "./grid/practiceGrid.ts";
import { univerInPage } from "./grid/startUniver.ts";
import { nameControls } from "./nameControls.ts";
import { PictureView } from "./pictures/PictureView.tsx";
import { drawable } from "./pictures/pictureOf.ts";
import { StatusLine } from "./StatusLine.tsx";
import { saveFile } from "./saveFile.ts";
import { useDark } from "./useDark.ts";

interface Note {
  readonly text: string;
  readonly kind: "told" | "fault" | "done";
}

const drawableNames: ReadonlySet<string> = new Set(drawable);
const engine = createEngine(catalogue, univerInPage);
type View = keyof typeof words.practice.views;
const views = Object.keys(words.practice.views) as View[];

/** A spreadsheet in the page with every worksheet function, and what helps with it beside. */
export function PracticeSheet() {
  const text = words.practice;
  const holder = useRef<HTMLDivElement>(null);
  const grid = useRef<PracticeGrid | undefined>(undefined);
  const [file, setFile] = useState<string>(text.bookName);
  const [note, setNote] = useState<Note>({ text: text.loading, kind: "told" });
  const [selected, setSelected] = useState<Selected>();
  const [calculating, setCalculating] = useState(false);
  const [busy, setBusy] = useState(false);
  const [tables, setTables] = useState<readonly FilledTable[]>([]);
  const [view, setView] = useState<View>("functions");
  const dark = useDark();

  const show = (bytes: Uint8Array, name: string): void => {
    const sheet = grid.current;
    if (!sheet) return;
    try {
      const kept = sheet.show(openWorkbook(bytes));
      setFile(name);
      const more = kept[0] === undefined ? "" : ` ${text.kept(kept.length, kept[0])}`;
      setNote({ text: text.opened(name) + more, kind: "told" });
      setTables(sheet.tables(drawableNames));
    } catch (error) {
      setNote({ text: text.notOpened(name, (error as Error).message), kind: "fault" });
    }
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: the spreadsheet is started once
  useEffect(() => {
    if (!holder.current) return undefined;
    const stopNaming = nameControls(holder.current);
    grid.current = practiceGrid(holder.current, catalogue, engine, dark, {
      onSelected: setSelected,
      onCalculating(now) {
        setCalculating(now);
        if (!now) setTables(grid.current?.tables(drawableNames) ?? []);
      },
      onRefused: () => setNote({ text: text.refused, kind: "fault" }),
    });
    fetch(text.bookName)
      .then((answer) => (answer.ok ? answer.arrayBuffer() : Promise.reject(new Error(String(answer.status)))))
      .then((bytes) => show(new Uint8Array(bytes), text.bookName))
      .catch(() => setNote({ text: text.notFetched, kind: "fault" }));
    return () => {
      stopNaming();
      grid.current?.dispose();
    };
  }, []);
  useEffect(() => grid.current?.setDark(dark), [dark]);

  const download = async (): Promise<void> => {
    if (busy || !grid.current) return;
    setBusy(true);
    setNote({ text: text.downloading, kind: "told" });
    // The words must be on the screen before the work begins.
    await new Promise((resolve) => setTimeout(resolve, 50));
    try {
      const { bytes } = await recalculate(openWorkbook(grid.current.file()), engine);
      const name = text.workedOut(file);
      saveFile(bytes, name);
      setNote({ text: text.downloaded(name), kind: "done" });
    } catch (error) {
      setNote({ text: text.failed((error as Error).message), kind: "fault" });
    }
    setBusy(false);
  };

  return (
    <>
      <header>
        <img src="icon-64.png" alt="" width="32" height="32" />
        <div class="titles">
          <h1>
            {words.pane.name}: {text.title}
          </h1>
          <p>{text.about}</p>
        </div>
        <FileButtons busy={busy} onOpen={show} onDownload={() => void download()} />
      </header>
      <p class={`note ${note.kind}`} role="status">
        {note.text}
      </p>
      <div class="columns">
        <main aria-label={text.sheetLabel}>
          <div class="grid" ref={holder} />
          <StatusLine selected={selected} calculating={calculating} />
        </main>
        <aside aria-label={text.panelLabel}>
          <div class="views">
            {views.map((known) => (
              <button key={known} type="button" aria-pressed={known === view} onClick={() => setView(known)}>
                {text.views[known]}
              </button>
            ))}
          </div>
          {view === "functions" ? (
            <FunctionsView grid={() => grid.current} />
          ) : (
            <PictureView tables={tables} dark={dark} />
          )}
        </aside>
      </div>
    </>
  );
}
