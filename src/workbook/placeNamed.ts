import { type Place, readPlace } from "./address.ts";
import { unquoteSheet } from "./formula/structured.ts";
import type { DefinedName } from "./model.ts";

interface Named {
  readonly names: readonly DefinedName[];
  readonly sheets: readonly { readonly name: string }[];
}

/**
 * The cell that a name of the whole workbook points to, with its sheet by place; undefined where there is none.
 *
 * @param name - in small letters
 */
export function placeNamed({ names, sheets }: Named, name: string): (Place & { readonly sheet: number }) | undefined {
  const text = names.find((known) => known.name.toLowerCase() === name && known.sheet === undefined)?.text ?? "";
  const cut = text.lastIndexOf("!");
  const place = readPlace(text.slice(cut + 1).replaceAll("$", ""));
  const sheet = sheets.findIndex((known) => known.name === unquoteSheet(text.slice(0, Math.max(cut, 0))));
  return place && sheet >= 0 ? { ...place, sheet } : undefined;
}
