/** Invented records that every writer puts on its sheet Records, under these headings in row 1. */
export const headings = ["Tag", "Treated", "Days", "Lesion", "Lame", "Seen"] as const;

/** Days are serials of the 1900 system: 10 February 2026 and on. */
export const records: readonly (readonly [string, number, number, string, number, number])[] = [
  ["ZZ 0 123456 00001", 46_063, 28, "footrot", 4, 20],
  ["ZZ 0 123456 00002", 46_065, 14, "shelly hoof", 1, 25],
  ["ZZ 0 123456 00003", 46_070, 7, "footrot", 0, 30],
  ["ZZ 0 123456 00001", 46_091, 28, "toe granuloma", 7, 31],
];

/** Where the records lie, below their headings. */
const lastRow = records.length + 1;

/** Formulas of the sheet Answers, by cell: functions of this project, alone and inside others, and a spreadsheet's own. */
export const answers: Readonly<Record<string, string>> = {
  A1: `FOOT.FLOCKPREV(Records!$E$2:$E$${lastRow},Records!$F$2:$F$${lastRow})`,
  A2: `IF(FOOT.FLOCKPREV(Records!E2,Records!F2)>0.1,"many","few")`,
  A3: `SUM(Records!E2:E${lastRow})/SUM(Records!F2:F${lastRow})`,
  A4: `SUMPRODUCT(Records!E2:E${lastRow},Records!F2:F${lastRow})`,
  A5: `COUNTIF(Records!D2:D${lastRow},"foot*")`,
  A6: `VLOOKUP("ZZ 0 123456 00002",Records!A2:F${lastRow},4,FALSE)`,
  A7: `INDEX(Records!C2:C${lastRow},MATCH("toe granuloma",Records!D2:D${lastRow},0))`,
  A8: "IFERROR(1/0,A5)",
  A9: `YEAR(MAX(Records!B2:B${lastRow}))*100+MONTH(MAX(Records!B2:B${lastRow}))`,
  A10: "A1*100",
  // These fill cells below and beside them.
  C1: `FOOT.PREVBY(Records!D2:D${lastRow},Records!E2:E${lastRow},Records!F2:F${lastRow})`,
  C12: `FOOT.NOTCLEAR(DATE(2026,3,1),Records!A2:A${lastRow},Records!B2:B${lastRow},Records!C2:C${lastRow})`,
};

/** The formulas beside a record: its clear date, and the same written by hand. */
export const besideRecord = (row: number): readonly [string, string] => [
  `FOOT.CLEARDATE(B${row},C${row})`,
  `IF(C${row}=0,B${row},B${row}+C${row}+1)`,
];
