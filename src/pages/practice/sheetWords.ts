/** Every text of the sheet in the browser that is not said in the task pane too. */
export const sheetWords = {
  title: "sheet",
  loading: "Opening the workbook…",
  about: "A spreadsheet in this page. What you type stays on this machine; save it to keep it.",
  invented: "Its flock is invented, to look around in.",
  begin: "Start your own",
  showPanel: "Show panel",
  hidePanel: "Hide panel",
  open: "Open a workbook",
  save: "Save",
  saving: "Working the workbook out before it is saved…",
  written: (file: string): string => `Saved in ${file}.`,
  downloaded: (file: string): string => `${file} is saved among your downloads.`,
  notSaved: "Nothing was saved.",
  unsaved: "not saved yet",
  isUnsaved: (file: string): string => `What you typed into ${file} is not saved. Save it before it is closed?`,
  saveFirst: "Save it",
  throwAway: "Close without saving",
  stay: "Go back",
  changedElsewhere: (file: string): string =>
    `${file} was changed by another program since it was opened here. Writing over it loses those changes.`,
  writeOver: "Write over it",
  books: {
    title: "Start a workbook",
    intro: "Each works out the flock’s figures as you fill it in. Save it under a name of your own.",
    start: "Start",
    startNamed: (title: string): string => `Start: ${title}`,
  },
  opened: (file: string): string => `${file} is open.`,
  keptUnseen: (things: readonly string[]): string => `Kept in the file, not shown here: ${things.join(", ")}.`,
  unseen: {
    conditional: "colours that follow the values",
    protection: "locks on cells",
  },
  kept: (count: number, first: string): string =>
    `${count} ${count === 1 ? "cell keeps the value it was saved with" : "cells keep the values they were saved with"}; the first: ${first}.`,
  from1904:
    "It counts days from 1904, so its dates would show four years too early here. Work it out with the soundfold command, which handles it; or switch off the 1904 date system in Excel’s options, add 1,462 to each date, and save it.",
  unreadable: "The browser could not read it; it may have been moved or changed after it was chosen.",
  notOpened: (file: string, why: string): string => `${file} was not opened. ${why}`,
  notFetched: (file: string, page: "from the disk" | "served"): string =>
    page === "from the disk"
      ? `${file} could not be fetched: a page of this folder needs a web server. Open soundfold.html instead, which has everything in it; or open a workbook of your own here.`
      : `${file} could not be fetched; load the page again, or open a workbook of your own.`,
  failed: (message: string): string => `It did not work: ${message}`,
  refused:
    "Rows, columns and sheets stay where they are here, so that your file can be put together again. Cells can be changed as you like.",
  partOf: (part: number, parts: number): string => `columns, part ${part} of ${parts}`,
  sheetLabel: "Spreadsheet",
  panelLabel: "Beside the sheet",
  statusLabel: "The selected cell",
  calculating: "Working out…",
  chooseOne: (choices: readonly string[]): string => `Choose one of: ${choices.join(", ")}.`,
  nothingToChoose: (sheet: string): string =>
    `There is nothing to choose from yet: the list for this cell is on the sheet ${sheet}. What you type is taken as it is.`,
  notChosen: (typed: string, choices: readonly string[]): string =>
    `“${typed}” is none of the choices here: ${choices.join(", ")}.`,
  doubtful: (count: number, address: string, sentence: string): string =>
    count === 1
      ? `${address}: ${sentence}`
      : `${count} of the cells are doubtful, each with a mark in its corner. The first, ${address}: ${sentence}`,
  choicesFor: (address: string): string => `Choices for ${address}`,
  choicesKey: "Alt+Down opens the list.",
  typeInto: (address: string): string => `Type into ${address}`,
  follow: "Open",
  go: (address: string): string => `Go to ${address}`,
  noDate: "This is text, not a date: 03/04 means two days, and 3 Apr is in no year. Type a date as 2026-03-14.",
  keys: "Keys: F6 leads out of the sheet and round. Ctrl+Page Down: the next sheet. Home: the first column.",
  empty: "empty",
  argument: (name: string, argument: string): string => `${name}, ${argument}:`,
  noMore: (most: number): string => `It takes no more than ${most === 1 ? "1 argument" : `${most} arguments`}.`,
  mayBeLeftOut: (standsFor: string): string =>
    standsFor === "" ? "It may be left out." : `Left out, it is ${standsFor}.`,
  example: (typed: string): string => `For example ${typed}.`,
  exampleCells: (cells: string): string => `For example cells that hold ${cells}.`,
  views: { functions: "Functions", explain: "Explain", picture: "Picture", books: "Workbooks" },
  grid: {
    cellName: "Cell",
    editor: "Cell editor; F6 leaves the sheet",
    control: "Spreadsheet control",
    allSheets: "All sheets",
    tabsBack: "Tabs to the left",
    tabsOn: "Tabs to the right",
    names: "Names in this workbook",
    close: "Close",
    offered: "Functions that begin so",
  },
  filledFrom: (cell: string, from: string): string => `${cell} is filled by the formula in ${from}.`,
  badCell: "There is no such cell in this workbook.",
} as const;
