/** Every text of the pages, so that they can be put into another language in one place. */
export const words = {
  search: {
    label: "What do you want to know?",
    hint: "In your own words, such as: when can she be sold",
    topic: "Topic",
    allTopics: "All topics",
    found: (count: number, query: string): string =>
      `${count} ${count === 1 ? "function answers" : "functions may answer"} “${query}”, the likeliest first`,
    nothingFound: (query: string): string =>
      `Nothing here answers “${query}”. Try fewer or other words, such as lame, sold, dose, tag, footbath.`,
    // Words that every question holds tell nothing about what is asked.
    ignored:
      "a about am an and are at be by can do does for have how i if in is it many much my of on or our she should the them they this to was we what when which who will with",
  },
  detail: {
    back: "All functions",
    give: "What to give",
    nothing: "It takes no arguments.",
    shapes: { one: "one cell", column: "a cell, a column or a row", block: "a range" },
    accepted: (shape: string, wanted: string): string => `${shape}: ${wanted}`,
    leftOut: (standsFor: string): string => `Left out, it is ${standsFor}.`,
    mayBeLeftOut: "May be left out.",
    gives: "What it gives",
    rules: "Rules",
    example: "An example",
    refusal: "What it refuses",
    moreExamples: (count: number): string => (count === 1 ? "One more example" : `${count} more examples`),
    exampleCells: "Cells of the example",
    exampleAnswer: "Answer of the example",
    answers: "gives",
    takeCare: "Take care.",
    sources: "Sources",
  },
  formula: {
    title: "Put it in the sheet",
    intro:
      "For each line select the cells in the sheet, then press “Use selection”. You may also type a value. Start with = to type a formula or the name of a range.",
    optional: "may be left out",
    useSelection: "Use selection",
    useSelectionFor: (name: string): string => `Use selection for ${name}`,
    cell: "Cell for the answer",
    cellHint: "Select an empty cell, with room below and beside it where the answer is a table.",
    write: "Write the formula",
    writeOver: "Write over it",
    keep: "Keep it",
    isFilled: (cell: string, holds: string): string => `${cell} already holds ${holds}. Write over it?`,
    written: (cell: string): string => `Written into ${cell}.`,
    preview: "The formula",
    missing: (wanted: string): string => `it must be given: ${wanted}`,
    manyParts: (typed: string): string =>
      `${typed} has a comma between its parts; write numbers with a point, such as 0.95, and give one thing here`,
    unreadable: (typed: string): string => `${typed} cannot be read; a quote mark or a bracket may be missing`,
    noRange: (typed: string): string => `${typed} is no range; give one, such as A2:F60`,
    noDate: (typed: string): string =>
      `${typed} is not taken as a date, because 03/04 means two days; enter it as 2026-03-14 or give a cell`,
    noCell: "give one cell, such as Sheet1!F2",
    faults: "Not written yet: see what is said beside the lines above.",
  },
  explain: {
    title: "Explain this cell",
    intro: "Select a cell with a formula, then press the button. Nothing is changed.",
    again: "Explain the selected cell",
    explained: (cell: string): string => `${cell} in words:`,
    noFormula: (cell: string): string => `${cell} holds no formula. Select a cell with a formula to have it explained.`,
    meant: (typed: string, meant: string): string => `There is no ${typed}. Was ${meant} meant?`,
    noSuchFunction: (typed: string): string => `There is no ${typed}. The list of functions has the names there are.`,
    comma: "Here a comma stands between what is given, not a semicolon.",
    unreadable: "The formula cannot be read; a quote mark or a bracket may be missing.",
    inside: (names: readonly string[]): string => `It stands inside ${names.join(", then ")}.`,
    surplus: (most: number, given: readonly string[]): string =>
      `It takes ${most === 1 ? "1 argument" : `${most} arguments`}; too much: ${given.join(", ")}.`,
    holds: (count: number, cells: string): string => (count === 1 ? `Holds ${cells}.` : `${count} cells: ${cells}`),
    blank: "blank",
    leftOut: "Left out.",
    gives: (shown: string): string => `It gives ${shown}.`,
    givesMany: (rows: number, first: string): string => `It fills ${rows} rows; the first: ${first}.`,
    givesTable: (rows: number, first: string): string =>
      `It gives a table of ${rows === 1 ? "1 row" : `${rows} rows`} under its headings; the first: ${first}.`,
    failed: (code: string, sentence: string): string =>
      sentence === "" ? `It gives ${code}.` : `${code}: ${sentence}`,
    caught: (sentence: string): string => `A function inside gave an error, which is kept from the cell: ${sentence}`,
    errors: {
      "#NAME?": "The spreadsheet does not know a name in the formula, or the functions are not installed here.",
      "#SPILL!": "Something stands in a cell that the answer needs; clear the cells below and beside the formula.",
      "#REF!": "A cell that the formula names is no longer there.",
      "#DIV/0!": "Something is divided by nothing.",
      "#BUSY!": "It is still being worked out.",
    } as Readonly<Partial<Record<string, string>>>,
    mend: (place: string, cell: string): string => `${place}: go to ${cell}`,
    toMend: "To mend",
  },
  pane: {
    name: "Soundfold",
    about: "Sheep foot health functions",
    views: {
      find: "Functions",
      explain: "Explain",
      records: "Check records",
      workbooks: "Workbooks",
      health: "Is it all right?",
      cautions: "Cautions",
    },
    navigation: "Parts of this page",
    status: {
      waiting: "Looking for Excel…",
      excel: "Connected to Excel",
      browser: "Open in a browser, without a spreadsheet",
      blocked: "Not connected: the script that connects this page to Excel did not load",
    },
    needs: {
      waiting: "Waiting for Excel. This part works as soon as it answers.",
      browser:
        "This part needs a spreadsheet. Open this page from the Soundfold button in Excel to use it; everything else here works in a browser.",
      blocked:
        "This part needs the script that connects the page to Excel, and it did not load: the internet may be away, or something blocks appsforoffice.microsoft.com. Everything else here works without it.",
    },
    working: "One moment…",
    notFetched:
      "This part could not be fetched. Check the connection and try again; if that does not help, close the pane and open it again.",
    fetchAgain: "Try again",
  },
  find: { title: "Find a function" },
  records: {
    title: "Check my records",
    intro:
      "Click into your treatment records, or select them with their headings, then press the button. Nothing is changed and nothing leaves the workbook.",
    check: "Check the selected records",
    looked: (address: string, records: number): string =>
      `Looked at ${records} ${records === 1 ? "record" : "records"} in ${address}.`,
    none: "Nothing was found wrong.",
    some: (count: number): string => `${count} ${count === 1 ? "thing" : "things"} to look at:`,
    go: (address: string): string => `Go to ${address}`,
    more: (count: number): string => `Show ${count} more`,
    headings: "What the headings were taken for",
    taken: (heading: string, field: string): string => `${heading}: ${field}`,
    repeated: (heading: string, other: string): string =>
      `${heading}: not checked, ${other} already stands for the same`,
    unknown: (heading: string): string => `${heading}: not checked, the heading is not known`,
    tooSmall: (address: string): string =>
      `${address} has no rows under its headings; click into the records, or select them with their headings`,
  },
  workbooks: {
    title: "New workbook",
    intro: "Forms to start from. Each works out the flock’s figures as you fill it in.",
    open: "New workbook",
    openNamed: (title: string): string => `New workbook: ${title}`,
    insert: "Insert these sheets here",
    insertNamed: (title: string): string => `Insert these sheets here: ${title}`,
    download: "Download",
    downloadNamed: (title: string): string => `Download: ${title}`,
    opened: (title: string): string => `${title} is open in a new window.`,
    inserted: (names: readonly string[]): string => `Added at the end of this workbook: ${names.join(", ")}.`,
    insertNote: "Sheets put in here keep their formulas; where a name is taken, Excel gives the new sheet another.",
    tooOld: "This Excel is too old to put sheets in from here; download the workbook and copy its sheets instead.",
    tooOldToOpen: "This Excel is too old to open a workbook from here; download it instead.",
    notFetched: (file: string, status: string): string =>
      `${file} could not be fetched (${status}); check the connection and press again.`,
  },
  health: {
    title: "Is this spreadsheet all right?",
    facts: "What was found",
    version: "Version of these functions",
    dateSystem: "Days are counted from",
    dateSystemFine: "1900",
    dateSystemOld:
      "1904: dates are read rightly by these functions, but a day pasted from another workbook is four years off",
    formats: "Dates and shares come formatted",
    formatsYes: "yes",
    formatsNo: "no: give the cells a date or per cent format yourself",
    insertion: "Sheets can be inserted from here",
    yes: "yes",
    noOlder: "no, this Excel is too old",
    hostTitle: "Blank cells and dates",
    hostIntro:
      "Some spreadsheets hand a blank cell to a function as 0, which would count as a sound sheep or as no withdrawal period. The test adds a sheet, tries it there and takes the sheet away again.",
    hostTry: "Try it in this workbook",
    missing:
      "The functions are not installed in this Excel: the test cell shows #NAME?. Insert the add-in again, and close and open the workbook.",
    silent:
      "Excel did not work the test formula out within ten seconds. Calculation may be switched to manual: switch it to automatic under Formulas, Calculation Options, and try again.",
    failed: (shown: string): string => `The test formula ended in ${shown}.`,
    headings: ["about", "arrives as", "what it means", "what to do"],
    againTitle: "Formulas that show #NAME? or hide it",
    againIntro:
      "A workbook that was opened before the functions were there may show #NAME?. A formula that hides troubles, with IFERROR say, shows its blank or its 0 instead, as if there were nothing to report. Entering the FOOT formulas again mends both. No other formula is touched.",
    again: "Enter the FOOT formulas again",
    againNone: "No FOOT formula shows #NAME?, and none could hide it.",
    againNoneShown: "No FOOT formula shows #NAME?.",
    againDone: (count: number): string => `${count} ${count === 1 ? "formula" : "formulas"} entered again.`,
    againPrecaution: (count: number): string =>
      `To be safe, ${count} that ${count === 1 ? "hides troubles was" : "hide troubles were"} entered again: it cannot be seen whether Excel knew ${count === 1 ? "it" : "them"}. What was right is unchanged.`,
    againFailed: (address: string, why: string): string => `${address} could not be entered: ${why}`,
    againMore: (count: number): string => `${count} more could not be entered.`,
    protectedSheet: "the sheet is protected with a password; lift the protection and try again",
    leftList:
      "Google Sheets left the list there as it last was, cell by cell. Empty the other cells of the list and try again",
    leftForeign:
      "Google Sheets left only its last answer there, of a formula that Excel cannot take. Write the formula anew",
  },
  cautions: {
    title: "Cautions",
    intro: "What no formula knows. The same words stand wherever a function is offered.",
    concerns: "Said with",
  },
  troubles: {
    InvalidSelection: "What is selected is not one block of cells; select one block and try again.",
    AccessDenied: "Excel does not allow it here: the sheet or the workbook is protected, or open for reading only.",
    InvalidReference: "There is no such cell in this workbook.",
    InvalidArgument: "Excel does not take it: look at the cells and the formula again.",
    ItemNotFound: "There is no such sheet in this workbook.",
    InvalidOperationInCellEditMode: "A cell is being edited. Press Enter in the sheet first, then try again.",
    other: (message: string): string => `It did not work. Excel says: ${message}`,
  },
} as const;
