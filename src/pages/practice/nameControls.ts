import { sheetWords } from "./sheetWords.ts";

const { grid } = sheetWords;

/**
 * Gives names to the embedded spreadsheet's own fields and buttons, which have none for a screen reader, and takes those
 * that cannot be seen out of the order of the keys.
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
      if ((button.textContent ?? "").trim() === "") button.setAttribute("aria-label", nameOf(button));
    // What is pushed out of sight is a stop that nobody sees.
    for (const stop of holder.querySelectorAll<HTMLElement>(
      "[data-u-comp=sidebar] :is(button, .univer-overflow-y-auto):not([tabindex])",
    ))
      stop.setAttribute("tabindex", "-1");
    for (const button of holder.querySelectorAll<HTMLElement>("[data-u-comp=workbench-layout] button:not([tabindex])"))
      if (button.querySelector(".univerjs-icon-close-icon")) button.setAttribute("tabindex", "-1");
    // A place of its own in the order of the page would lead past everything else.
    for (const canvas of holder.querySelectorAll<HTMLElement>('canvas[tabindex="1"]'))
      canvas.setAttribute("tabindex", "-1");
    nameList();
    leaveTips();
  };
  // What hangs over the sheet scrolls by the pointer; a stop there would end the typing.
  const leaveTips = () => {
    for (const tip of document.querySelectorAll('[data-u-comp="rect-popup"] .univer-overflow-y-auto:not([tabindex])'))
      tip.setAttribute("tabindex", "-1");
  };
  // The list of functions that is offered while a formula is typed hangs outside the sheet's element.
  const nameList = () => {
    const list = document.querySelector<HTMLElement>('ul[data-u-comp="sheets-formula-editor"]');
    if (!list) return;
    if (!list.hasAttribute("role")) {
      list.setAttribute("role", "listbox");
      list.setAttribute("aria-label", grid.offered);
    }
    for (const item of list.children) {
      const isChosen = String(/univer-bg-gray-200/.test(item.className));
      if (item.getAttribute("role") !== "option") item.setAttribute("role", "option");
      if (item.getAttribute("aria-selected") !== isChosen) item.setAttribute("aria-selected", isChosen);
    }
  };
  name();
  const watch = new MutationObserver(name);
  watch.observe(document.body, { childList: true, subtree: true, attributeFilter: ["aria-expanded", "class"] });
  return () => watch.disconnect();
}

/** What a button without words does, as its picture and its place show. */
function nameOf(button: HTMLElement): string {
  if (button.querySelector(".univerjs-icon-convert-icon")) return grid.allSheets;
  if (button.querySelector(".univerjs-icon-more-icon.univer-rotate-180")) return grid.tabsBack;
  if (button.querySelector(".univerjs-icon-more-icon")) return grid.tabsOn;
  if (button.querySelector(".univerjs-icon-more-down-icon")) return grid.names;
  if (button.querySelector(".univerjs-icon-close-icon")) return grid.close;
  return grid.control;
}
