import { sheetWords } from "./sheetWords.ts";

const { grid } = sheetWords;

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
    for (const opener of holder.querySelectorAll<HTMLElement>("[aria-expanded]:not(button, [role])")) {
      // A button inside a button: the inner one stands for both.
      if (opener.querySelector("button")) opener.removeAttribute("aria-expanded");
      else opener.setAttribute("role", "button");
    }
    for (const button of holder.querySelectorAll<HTMLElement>(":is(button, [role=button]):not([aria-label])"))
      if ((button.textContent ?? "").trim() === "") button.setAttribute("aria-label", grid.control);
    // A place of its own in the order of the page would lead past everything else.
    for (const canvas of holder.querySelectorAll<HTMLElement>('canvas[tabindex="1"]'))
      canvas.setAttribute("tabindex", "-1");
  };
  name();
  const watch = new MutationObserver(name);
  watch.observe(holder, { childList: true, subtree: true, attributeFilter: ["aria-expanded"] });
  return () => watch.disconnect();
}
