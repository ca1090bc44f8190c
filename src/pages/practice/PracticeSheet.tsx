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
import { BooksView } from "./BooksView.tsx";
import { type Book, bookToBeginWith, offeredBook } from "./books.ts";
import { useBringing } from "./bring/useBringing.ts";
import { CellSentence } from "./CellSentence.tsx";
import { Choices } from "./Choices.tsx";
import { SheetCharts } from "./charts/SheetCharts.tsx";
import { FileButtons } from "./FileButtons.tsx";
import { FunctionsView } from "./FunctionsView.tsx";
import type { DiskFile } from "./files/filePickers.ts";
import { useQuestion } from "./files/useQuestion.tsx";
import { useSaving } from "./files/useSaving.ts";
import { useUnsaved } from "./files/useUnsaved.ts";
import type { Box } from "./grid/cellBox.ts";
import type { FilledTable } from "./grid/filledTables.ts";
import type { Doubt, Pointed, Selected } from "./grid/gridEvents.ts";
import { keptUnseen } from "./grid/keptUnseen.ts";
import { type PracticeGrid, practiceGrid } from "./grid/practiceGrid.ts";
import type { ChartPlace, ShownChart } from "./grid/sheetCharts.ts";
import { univerInPage } from "./grid/startUniver.ts";
import { type ArgumentHint, argumentHint } from "./help/argumentHint.ts";
import { ExplainView } from "./help/ExplainView.tsx";
import { keepKeys } from "./keepKeys.ts";
import { nameControls } from "./nameControls.ts";
import { firstBook } from "./offeredBooks.ts";
import { PictureView } from "./pictures/PictureView.tsx";
import { drawable } from "./pictures/pictureOf.ts";
import { usePrinting } from "./printing/usePrinting.ts";
import { StatusLine } from "./StatusLine.tsx";
import { sheetWords } from "./sheetWords.ts";
import { useCellSentence } from "./useCellSentence.ts";
import { useDark } from "./useDark.ts";
import { useDrop } from "./useDrop.ts";
import { useSaveKey } from "./useSaveKey.ts";
import { useSheetKey } from "./useSheetKey.ts";
import { useUndoKey } from "./useUndoKey.ts";

interface Note {
  readonly text: string;
  readonly kind: "told" | "fault" | "done";
  /** A cell that it is about, to go to. */
  readonly go?: string;
  /** It leads to the workbooks to start from. */
  readonly begin?: boolean;
}

const sameHint = (one: ArgumentHint, other: ArgumentHint): boolean =>
  one.functionName === other.functionName && one.argument === other.argument;

/** Where a workbook that is shown comes from. */
interface ShownFrom {
  readonly disk?: DiskFile | undefined;
  readonly made?: boolean;
  /** Its records are nobody's. */
  readonly invented?: boolean;
  /** It was put together here and is in no file yet; its answers are worked out first. */
  readonly brought?: boolean;
}

const drawableNames: ReadonlySet<string> = new Set(drawable);
const engine = createEngine(catalogue, univerInPage, localClock);
type View = keyof typeof sheetWords.views;
const views = Object.keys(sheetWords.views) as View[];

/** A spreadsheet in the page with every worksheet function, and what helps with it beside. */
export function PracticeSheet() {
  const text = sheetWords;
  const holder = useRef<HTMLDivElement>(null);
  const header = useRef<HTMLElement>(null);
  const panel = useRef<HTMLElement>(null);
  const grid = useRef<PracticeGrid | undefined>(undefined);
  const saving = useSaving(firstBook);
  const unsaved = useUnsaved();
  const question = useQuestion<"save" | "discard" | "over">(text.stay);
  const [note, setNote] = useState<Note>({ text: text.loading, kind: "told" });
  const [selected, setSelected] = useState<Selected>();
  const [calculating, setCalculating] = useState(false);
  const [opening, setOpening] = useState(true);
  const [busy, setBusy] = useState(false);
  const [tables, setTables] = useState<readonly FilledTable[]>([]);
  const [view, setView] = useState<View>("functions");
  const [isPanelShown, setPanelShown] = useState(true);
  const [box, setBox] = useState<Box>();
  const [pointed, setPointed] = useState<Pointed>();
  const atCell = useCellSentence(selected, box);
  const [charts, setCharts] = useState<readonly ShownChart[]>([]);
  const [chartPlaces, setChartPlaces] = useState<readonly ChartPlace[]>([]);
  const sheetInView = useRef("");
  const cellInView = useRef("");
  const [typing, setTyping] = useState<ArgumentHint>();
  const isSaving = useRef(false);
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
  const show = async (
    { bytes, name }: Book,
    { disk, made = false, invented = false, brought = false }: ShownFrom = {},
  ): Promise<void> => {
    const sheet = grid.current;
    if (!sheet) return;
    setOpening(true);
    try {
      day.current = Math.floor(localClock());
      const { workbook, age, left } = await openFresh(bytes, engine, brought, () => sayWorkingOut(name));
      setWorking(false);
      const keptHere = await sheet.show(workbook, mayClose);
      if (!keptHere) {
        setOpening(false);
        return;
      }
      const kept = [...new Set([...left, ...keptHere])];
      showCharts();
      await saving.opened(name, disk);
      unsaved.saved(unsaved.count());
      if (brought) unsaved.changed();
      setOld(age === "of unknown age" && !made ? "saved" : undefined);
      const unseen = keptUnseen(workbook);
      const told = [
        text.opened(name),
        ...(invented ? [text.invented] : []),
        ...(age === "worked out" ? [ageWords.workedOut] : []),
        // Of a file of one's own; what the page brings is told of in its description.
        ...(unseen.length === 0 || made ? [] : [text.keptUnseen(unseen)]),
        ...(kept[0] === undefined ? [] : [text.kept(kept.length, kept[0])]),
      ];
      setNote({ text: told.join(" "), kind: "told", begin: invented });
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
  const showNext = (book: Book, from: ShownFrom): Promise<void> => {
    showing.current = showing.current.then(() => show(book, from));
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
      const { workbook, left } = await openFresh(sheet.file(), engine, true, () => sayWorkingOut(saving.nameNow()));
      setWorking(false);
      const kept = [...new Set([...left, ...((await sheet.show(workbook, async () => true)) ?? [])])];
      sheet.go(at);
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
      onSelected(now) {
        setSelected(now);
        const place = `${now.sheet} ${now.address}`;
        // Where the cell before was is no place for what is said of this one.
        if (place !== cellInView.current) setBox(undefined);
        cellInView.current = place;
        if (now.sheet === sheetInView.current) return;
        sheetInView.current = now.sheet;
        showCharts();
      },
      onCalculating(now) {
        setCalculating(now);
        if (now) return;
        setTables(grid.current?.tables(drawableNames) ?? []);
        setCharts(grid.current?.charts.shown() ?? []);
      },
      onChanged: unsaved.changed,
      onDoubts: tellDoubts,
      onMoved() {
        setBox(grid.current?.selectedBox());
        setChartPlaces(grid.current?.charts.places() ?? []);
        setPointed(undefined);
      },
      onPointed: setPointed,
      onEditing: atCell.setEditing,
      onTyping(before) {
        const hint = before === undefined ? undefined : argumentHint(before, catalogue);
        // What is said again is read out again.
        setTyping((known) => (known && hint && sameHint(known, hint) ? known : hint));
      },
      onRefused: () => setNote({ text: text.refused, kind: "fault" }),
    });
    bookToBeginWith()
      .then(async ({ made, ...book }) => {
        await showing.current;
        // On a slow line the person may have opened a workbook and typed into it meanwhile.
        if (grid.current?.isEmpty()) return show(book, { made, invented: made });
      })
      .catch(() => {
        if (grid.current?.isEmpty()) setNote({ text: text.notFetched(firstBook, pageIs()), kind: "fault" });
      });
    return () => {
      stopNaming();
      grid.current?.dispose();
    };
  }, []);
  useEffect(() => grid.current?.setDark(dark), [dark]);
  useSheetKey({
    header,
    holder,
    panel,
    intoSheet: () => grid.current?.focus(),
    toSheet: (further) => grid.current?.turn(further),
    leap: (to) => grid.current?.leap(to) ?? false,
  });
  useUndoKey({ holder, undo: () => grid.current?.undo(), redo: () => grid.current?.redo() });

  const showCharts = (): void => {
    setCharts(grid.current?.charts.shown() ?? []);
    // Once the sheet is drawn.
    setTimeout(() => setChartPlaces(grid.current?.charts.places() ?? []));
  };

  const tellDoubts = (doubts: readonly Doubt[]): void => {
    const [first] = doubts;
    if (first)
      setNote({ text: text.doubtful(doubts.length, first.address, first.sentence), kind: "fault", go: first.address });
    // What was said of cells is settled once something else is typed; the rest still holds.
    else
      setNote((before) => (before.go === undefined ? before : { text: text.opened(saving.nameNow()), kind: "told" }));
  };

  const bringing = useBringing(
    () => Math.floor(localClock()),
    (book) => showNext(book, { brought: true }),
  );

  const open = async (file: File, disk?: DiskFile): Promise<void> => {
    let bytes: Uint8Array;
    try {
      bytes = new Uint8Array(await file.arrayBuffer());
    } catch {
      setNote({ text: text.notOpened(file.name, text.unreadable), kind: "fault" });
      return;
    }
    await showNext({ bytes, name: file.name }, { disk });
  };

  const startBook = async (file: string): Promise<void> => {
    try {
      const { bytes, name } = await offeredBook(file);
      await showNext({ bytes, name: name.replace("-empty", "") }, { made: true, invented: file === firstBook });
      // Whoever starts a workbook is about to type into it.
      if (document.activeElement?.tagName !== "DIALOG") grid.current?.focus();
    } catch {
      setNote({ text: text.notFetched(file, pageIs()), kind: "fault" });
    }
  };

  /** Whether the open workbook may give its place to another. */
  const mayClose = async (): Promise<boolean> => {
    if (!unsaved.isUnsaved()) return true;
    const answer = await question.ask({
      text: text.isUnsaved(saving.nameNow()),
      answers: [
        ["save", text.saveFirst],
        ["discard", text.throwAway],
      ],
    });
    return answer === "save" ? save() : answer === "discard";
  };

  /** @returns whether the workbook is now in a file */
  const save = async (): Promise<boolean> => {
    const sheet = grid.current;
    if (isSaving.current || !sheet || sheet.isEmpty()) return false;
    isSaving.current = true;
    setBusy(true);
    let count = unsaved.count();
    try {
      const end = await saving.save({
        async bytes() {
          setNote({ text: text.saving, kind: "told" });
          // The words must be on the screen before the work begins.
          await new Promise((resolve) => setTimeout(resolve, 50));
          await sheet.endTyping();
          count = unsaved.count();
          return (await recalculate(openWorkbook(sheet.file()), engine, undefined, { all: true })).bytes;
        },
        mayWriteOver: async (name) =>
          (await question.ask({ text: text.changedElsewhere(name), answers: [["over", text.writeOver]] })) === "over",
      });
      if (end.kind === "given up") setNote({ text: text.notSaved, kind: "told" });
      else {
        unsaved.saved(count);
        setNote({ text: text[end.kind](end.name), kind: "done" });
      }
      return end.kind !== "given up";
    } catch (error) {
      setNote({ text: text.failed((error as Error).message), kind: "fault" });
      return false;
    } finally {
      isSaving.current = false;
      setBusy(false);
    }
  };
  useSaveKey(() => void save());
  usePrinting(
    () => grid.current?.toPrint(),
    () => saving.nameNow(),
    localClock,
  );
  useDrop((file, disk) => void open(file, disk));

  const showView = (wanted: View): void => {
    setPanelShown(true);
    setView(wanted);
    // Once it is there.
    setTimeout(() => panel.current?.querySelector<HTMLElement>("h2")?.focus());
  };

  const goTo = (address: string | undefined): void => {
    try {
      if (address !== undefined) grid.current?.go(address);
      grid.current?.focus();
    } catch (error) {
      setNote({ text: text.failed((error as Error).message), kind: "fault" });
    }
  };

  return (
    <>
      <header ref={header}>
        <img src={document.querySelector<HTMLLinkElement>("link[rel=icon]")?.href} alt="" width="32" height="32" />
        <div class="titles">
          <h1>
            {words.pane.name} {text.title}
          </h1>
          <p>{text.about}</p>
        </div>
        <p class="file">
          <strong>{saving.name}</strong> {unsaved.unsaved && <span class="told">{text.unsaved}</span>}
        </p>
        <FileButtons
          busy={busy}
          onOpen={(file, disk) => void open(file, disk)}
          onFault={({ message }) => setNote({ text: text.failed(message), kind: "fault" })}
          onSave={() => void save()}
        />
        <button
          type="button"
          class="link"
          aria-expanded={isPanelShown}
          aria-controls="panel"
          onMouseDown={keepKeys}
          onClick={() => setPanelShown(!isPanelShown)}
        >
          {isPanelShown ? text.hidePanel : text.showPanel}
        </button>
      </header>
      <div class="note">
        <p class={note.kind} role="status">
          {note.text}
        </p>
        {note.go !== undefined && (
          <button type="button" onClick={() => goTo(note.go)}>
            {text.go(note.go)}
          </button>
        )}
        {note.begin && (
          <button type="button" onClick={() => showView("books")}>
            {text.begin}
          </button>
        )}
      </div>
      <AgeLine old={old} busy={opening} onWorkOut={() => void workOutAll()} />
      <div class="columns">
        <main inert={working} aria-label={text.sheetLabel} aria-busy={opening || calculating}>
          <div class="grid" ref={holder} />
          {selected && selected.choices.length > 0 && (
            <Choices
              key={`${selected.sheet} ${selected.address}`}
              address={`${selected.sheet} ${selected.address}`}
              choices={selected.choices}
              box={box}
              onChoose={(choice) => grid.current?.choose(choice)}
              onClose={() => grid.current?.focus()}
            />
          )}
          <SheetCharts charts={charts} places={chartPlaces} dark={dark} />
          {pointed ? (
            <CellSentence box={pointed.cell} sentence={pointed.sentence} />
          ) : (
            atCell.shown && <CellSentence {...atCell.shown} />
          )}
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable by keyboard */}
          <section class="below" tabIndex={0} aria-label={text.statusLabel}>
            <StatusLine selected={selected} typing={typing} calculating={calculating} onGo={goTo} />
            {selected && (
              <button type="button" class="type" onMouseDown={keepKeys} onClick={() => grid.current?.type()}>
                {text.typeInto(selected.address)}
              </button>
            )}
            <p class="hint">{text.keys}</p>
          </section>
        </main>
        <aside id="panel" aria-label={text.panelLabel} ref={panel} hidden={!isPanelShown}>
          <div class="views">
            {views.map((known) => (
              <button key={known} type="button" aria-pressed={known === view} onClick={() => setView(known)}>
                {text.views[known]}
              </button>
            ))}
          </div>
          {view === "functions" && <FunctionsView grid={() => grid.current} panel={panel} />}
          {view === "explain" && selected && (
            <ExplainView
              cell={`${selected.sheet} ${selected.address}`}
              explained={grid.current?.explained()}
              onGo={goTo}
            />
          )}
          {view === "picture" && <PictureView tables={tables} dark={dark} />}
          {view === "books" && <BooksView onStart={(file) => void startBook(file)} bringing={bringing} />}
        </aside>
      </div>
      {question.box}
    </>
  );
}

/** Whether the page may fetch what lies beside it: one that was opened by a double-click may not. */
const pageIs = () => (location.protocol === "file:" ? "from the disk" : "served");
