import type { StandInBook } from "../excelStandIn.ts";

/** Serial of 10 Feb 2026. */
const treated = 46063;

/** A small workbook of an invented flock, in an Excel that can do all the pane asks for. */
export const flock: StandInBook = {
  selected: "Gathers!A1",
  sets: ["ExcelApi 1.8", "ExcelApi 1.12", "ExcelApi 1.13", "CustomFunctionsRuntime 1.4"],
  sheets: [
    {
      name: "Gathers",
      rows: [
        ["Date", "Lame", "Seen", "Note"],
        [treated, 6, 100, "wet"],
        [treated + 30, 4, 120, '=""'],
      ],
    },
    {
      name: "My cases",
      tables: ["B3:F7"],
      rows: [
        ["Cases of an invented flock"],
        [],
        ["", "Ear tag", "Date treated", "Lesion", "Dose (ml)", "Withdrawal days"],
        ["", "041", treated, "scald", 6, 28],
        ["", "042", "12/3", "limping", 7, 28],
        ["", "", treated, "footrot", 7, "#N/A"],
        ["", "041", treated, "ID", 6, 28],
      ],
    },
  ],
  answers: { '=""': [[""]] },
};
