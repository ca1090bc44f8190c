/**
 * For which spreadsheet a workbook is written. In Excel and the practice sheet a list grows by itself; LibreOffice keeps
 * an array as long as it was saved, so there each list has all its room from the start.
 */
export type Edition = "excel" | "libreoffice";
