import { words } from "../words.ts";

export type ViewName = keyof typeof words.pane.views;

/** What the page shows: one of its parts, and in the first one perhaps a function. */
export interface Place {
  readonly view: ViewName;
  readonly name: string | undefined;
}

export const viewNames = Object.keys(words.pane.views) as ViewName[];

/** Where a part of the page is; the vendor's script takes other ways of keeping an address away from a page. */
export const addressOf = (view: ViewName): string => `#${view}`;

/**
 * What an address after `#` asks for. A help link from the sheet names a function.
 *
 * @example
 * placeOf("#FLOCKPREV") // → { view: "find", name: "FLOCKPREV" }
 */
export function placeOf(hash: string): Place {
  const word = hash.slice(1);
  const view = viewNames.find((known) => known === word);
  return view === undefined ? { view: "find", name: word === "" ? undefined : word } : { view, name: undefined };
}
