/** Said under every function that leaves out what it cannot read: never silently. */
export const leftOutNote =
  "A row with a cell that cannot be read, or whose cells do not fit together, is left out; the answer then says how many and which to mend first, beside its numbers or below its table.";
