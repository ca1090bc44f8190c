import { words } from "../words.ts";

const { grid } = words.practice;

/**
 * Gives names to the embedded spreadsheet's own fields and buttons, which have none for a screen reader.
 *
 * @returns stops doing so
 */
export function nameControls(holder: HTMLElement): () => void {
  const name = () => {
    for (const field of holder.querySelectorAll<HTMLElement>("input:not([aria-label])"))
      field.setAttribute("aria-label", grid.cellName);
    for (const editor of holder.querySelectorAll<HTMLElement>("[contenteditable]:not([aria-label])")) {
      editor.setAttribute("role", "textbox");
      editor.setAttribute("aria-label", grid.editor);
    }
    for (const button of holder.querySelectorAll<HTMLElement>(
      "button:not([aria-label]), [role=button]:not([aria-label])",
    ))
      if ((button.textContent ?? "").trim() === "") button.setAttribute("aria-label", grid.control);
  };
  name();
  const watch = new MutationObserver(name);
  watch.observe(holder, { childList: true, subtree: true });
  return () => watch.disconnect();
}
