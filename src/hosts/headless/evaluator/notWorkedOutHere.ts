/** Functions whose answer here is known to be another than a spreadsheet's, or that ask for what is not there. */
export const notWorkedOutHere: ReadonlySet<string> = new Set("CELL INFO FORMULATEXT IMAGE CUBE ENCODEURL".split(" "));
