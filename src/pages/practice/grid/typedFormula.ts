import { ICommandService, type Injector } from "@univerjs/core";
import { IEditorBridgeService, IEditorService } from "@univerjs/preset-sheets-core";

// What is typed, and where the caret goes.
const moving: ReadonlySet<string> = new Set(["doc.mutation.rich-text-editing", "doc.operation.set-selections"]);

/**
 * Tells of a formula while it is typed: all of it up to the caret, or undefined once none is typed any more. Nothing is
 * written into the editor, so that caret and typing stay as they are.
 */
export function tellTypedFormula(injector: Injector, tell: (before: string | undefined) => void): void {
  const bridge = injector.get(IEditorBridgeService);
  const editors = injector.get(IEditorService);
  let told: string | undefined;
  let waits = false;
  const look = (): void => {
    waits = false;
    const editor = bridge.isVisible().visible ? editors.getFocusEditor() : undefined;
    const text = editor?.getDocumentData().body?.dataStream ?? "";
    const caret = editor?.getSelectionRanges().at(-1)?.endOffset ?? text.length;
    const before = text.startsWith("=") ? text.slice(0, caret).replace(/[\r\n]+$/, "") : undefined;
    if (before === told) return;
    told = before;
    tell(before);
  };
  // Once for all that one key brings about.
  const soon = (): void => {
    if (waits) return;
    waits = true;
    setTimeout(look);
  };
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (moving.has(id)) soon();
  });
  bridge.visible$.subscribe(soon);
}
