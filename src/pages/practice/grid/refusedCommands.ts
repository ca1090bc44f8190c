// Rows, columns and sheets stay where they are, so that what was typed can be put back into the file it came from.
const moving =
  /^sheet\.command\.(?:insert-(?:sheet|row|col|range|multi)|append-row|remove-(?:sheet|row|col)|delete-range|copy-(?:sheet|worksheet)|set-worksheet-(?:name|order|hide|show|color)|set-tab-color|move-(?:rows|cols|range)|add-worksheet-merge|remove-worksheet-merge|reorder-range|set-worksheet-row-height|insert-defined-name)/;

/** Whether a command would move cells or sheets about. */
export const isRefused = (command: string): boolean => moving.test(command);
