import type { IEditorBridgeService } from "@univerjs/preset-sheets-core";

/**
 * Keeps answers that arrive from taking away what is being typed: the embedded spreadsheet reads the cell into its editor
 * anew, also into one that is open. Look at it again when its version changes.
 */
export function keepWhatIsTyped(editor: IEditorBridgeService): void {
  const refresh = editor.refreshEditCellState.bind(editor);
  editor.refreshEditCellState = () => {
    if (!editor.isVisible().visible) refresh();
  };
}
