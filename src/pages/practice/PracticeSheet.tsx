import { useEffect, useRef, useState } from "preact/hooks";
import { catalogue } from "../../../functions/catalogue.ts";
import { createEngine } from "../../hosts/headless/createEngine.ts";
import { localClock } from "../../hosts/localClock.ts";
import { followsClock } from "../../workbook/followsClock.ts";
import { openWorkbook } from "../../workbook/openWorkbook.ts";
import { recalculate } from "../../workbook/recalculate.ts";
import { words } from "../words.ts";
import { AgeLine } from "./age/AgeLine.tsx";
import { ageWords } from "./age/ageWords.ts";
import { openFresh } from "./age/openFresh.ts";
import { useDayTurn } from "./age/useDayTurn.ts";
import { FileButtons } from "./FileButtons.tsx";
import { FunctionsView } from "./FunctionsView.tsx";
import { keptUnseen } from "./grid/keptUnseen.ts";
import { type FilledTable, type PracticeGrid, practiceGrid, type Selected } from "./grid/practiceGrid.ts";
import { univerInPage } from "./grid/startUniver.ts";
import { nameControls } from "./nameControls.ts";
import { PictureView } from "./pictures/PictureView.tsx";
import { drawable } from "./pictures/pictureOf.ts";
import { StatusLine } from "./StatusLine.tsx";
import { saveFile } from "./saveFile.ts";
import { useDark } from "./useDark.ts";
import { useSheetKey } from "./useSheetKey.ts";

interface Note {
  readonly text: string;
  readonly kind: "told" | "fault" | "done";
}

const drawableNames: ReadonlySet<string> = new Set(drawable);
const engine = createEngine(catalogue, univerInPage, localClock);
type View = keyof typeof words.practice.views;
const views = Object.keys(words.practice.views) as View[];

/** A spreadsheet in the page with every worksheet function, and what helps with it beside. */
export function PracticeSheet() {
  const text = words.practice;
  const holder = useRef<HTMLDivElement>(null);
  const panel = useRef<HTMLElement>(null);
  const grid = useRef<PracticeGrid | undefined>(undefined);
  const [file, setFile] = useState<string>(text.bookName);
  const [note, setNote] = useState<Note>({ text: text.loading, kind: "told" });
  const [selected, setSelected] = useState<Selected>();
  const [calculating, setCalculating] = useState(false);
  const [opening, setOpening] = useState(true);
  const [busy, setBusy] = useState(false);
  const [tables, setTables] = useState<readonly FilledTable[]>([]);
  const [view, setView] = useState<View>("functions");
  // What was typed meanwhile would be lost.
  const [working, setWorking] = useState(false);
  const [old, setOld] = useState<keyof typeof ageWords.old>();
  const showing = useRef<Promise<void>>(Promise.resolve());
  const day = useDayTurn(localClock, () => {
    const sheet = grid.current;
    if (sheet && !sheet.isEmpty() && followsClock(openWorkbook(sheet.file()))) setOld("day");
  });
  const dark = useDark();

  /** @param made - it comes with this page, worked out when the page was built */
  const show = async (bytes: Uint8Array, name: string, made = false): Promise<void> => {
    const sheet = grid.current;
    if (!sheet) return;
    setOpening(true);
    try {
      day.current = Math.floor(localClock());
      const { workbook, age, left } = await openFresh(bytes, engine, false, () => sayWorkingOut(name));
      setWorking(false);
      const kept = [...new Set([...left, ...(await sheet.show(workbook))])];
      setFile(name);
      setOld(age === "of unknown age" && !made ? "saved" : undefined);
      const unseen = keptUnseen(workbook);
      const told = [
        text.opened(name),
        ...(age === "worked out" ? [ageWords.workedOut] : []),
        ...(unseen.length === 0 ? [] : [text.keptUnseen(unseen)]),
        ...(kept[0] === undefined ? [] : [text.kept(kept.length, kept[0])]),
      ];
      setNote({ text: told.join(" "), kind: "told" });
      setTables(sheet.tables(drawableNames));
      // Whoever has not turned to something else yet can type at once.
      if (document.activeElement === document.body) sheet.focus();
    } catch (error) {
      setNote({ text: text.notOpened(name, (error as Error).message), kind: "fault" });
    }
    setWorking(false);
    setOpening(false);
  };

  /** One after the other, since working out one workbook may take longer than opening the next. */
  const showNext = (bytes: Uint8Array, name: string): Promise<void> => {
    showing.current = showing.current.then(() => show(bytes, name));
    return showing.current;
  };

  const sayWorkingOut = async (name: string): Promise<void> => {
    setWorking(true);
    setNote({ text: ageWords.workingOut(name), kind: "told" });
    // The words must be on the screen before the work begins.
    await new Promise((resolve) => setTimeout(resolve, 50));
  };

  const workOutAll = async (): Promise<void> => {
    const sheet = grid.current;
    if (opening || !sheet) return;
    setOpening(true);
    try {
      const at = sheet.selection();
      day.current = Math.floor(localClock());
      const { workbook, left } = await openFresh(sheet.file(), engine, true, () => sayWorkingOut(file));
      setWorking(false);
      const kept = [...new Set([...left, ...(await sheet.show(workbook))])];
      sheet.goTo(at);
      setOld(undefined);
      const told = [ageWords.workedOut, ...(kept[0] === undefined ? [] : [text.kept(kept.length, kept[0])])];
      setNote({ text: told.join(" "), kind: "done" });
      setTables(sheet.tables(drawableNames));
      sheet.focus();
    } catch (error) {
      setNote({ text: text.failed((error as Error).message), kind: "fault" });
    }
    setWorking(false);
    setOpening(false);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the spreadsheet is started once
  useEffect(() => {
    if (!holder.current) return undefined;
    const stopNaming = nameControls(holder.current);
    grid.current = practiceGrid(holder.current, catalogue, engine, localClock, dark, {
      onSelected: setSelected,
      onCalculating(now) {
        setCalculating(now);
        if (!now) setTables(grid.current?.tables(drawableNames) ?? []);
      },
      onRefused: () => setNote({ text: text.refused, kind: "fault" }),
    });
    fetch(text.bookName)
      .then((answer) => (answer.ok ? answer.arrayBuffer() : Promise.reject(new Error(String(answer.status)))))
      .then(async (bytes) => {
        await showing.current;
        // On a slow line the person may have opened a workbook and typed into it meanwhile.
        if (grid.current?.isEmpty()) return show(new Uint8Array(bytes), text.bookName, true);
      })
      .catch(() => {
        if (grid.current?.isEmpty()) setNote({ text: text.notFetched, kind: "fault" });
      });
    return () => {
      stopNaming();
      grid.current?.dispose();
    };
  }, []);
  useEffect(() => grid.current?.setDark(dark), [dark]);
  useSheetKey(holder, panel, () => grid.current?.focus());

  const open = async (file: File): Promise<void> => {
    let bytes: Uint8Array;
    try {
      bytes = new Uint8Array(await file.arrayBuffer());
    } catch {
      setNote({ text: text.notOpened(file.name, text.unreadable), kind: "fault" });
      return;
    }
    await showNext(bytes, file.name);
  };

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
        <FileButtons busy={busy} onOpen={(file) => void open(file)} onDownload={() => void download()} />
      </header>
      <p class={`note ${note.kind}`} role="status">
        {note.text}
      </p>
      <AgeLine old={old} busy={opening} onWorkOut={() => void workOutAll()} />
      <div class="columns">
        <main inert={working} aria-label={text.sheetLabel} aria-busy={opening || calculating}>
          <div class="grid" ref={holder} />
          <div class="below">
            <StatusLine selected={selected} calculating={calculating} />
            <p class="hint">{text.keys}</p>
          </div>
        </main>
        <aside aria-label={text.panelLabel} ref={panel}>
          <div class="views">
            {views.map((known) => (
              <button key={known} type="button" aria-pressed={known === view} onClick={() => setView(known)}>
                {text.views[known]}
              </button>
            ))}
          </div>
          {view === "functions" ? (
            <FunctionsView grid={() => grid.current} panel={panel} />
          ) : (
            <PictureView tables={tables} dark={dark} />
          )}
        </aside>
      </div>
    </>
  );
}
