/** Where a workbook of one's own is put into the page that is one file. */
export const ownBookPlace = "<!-- own workbook -->";
