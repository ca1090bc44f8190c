import type { Cell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { alikeIndex } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";
import { alikeFault } from "./tagChecks.ts";

/**
 * Finds tags that may be one animal: each pair once, in the first row of the one that comes later.
 *
 * @returns asked for each row in turn, with its tag as read and its cell: what to say of it
 * @example
 * alikeTags()("042", "042", 0) // → undefined
 */
export function alikeTags(): (key: string, cell: Cell, index: number) => Fault | undefined {
  const met = new Set<string>();
  const animals = alikeIndex<{ readonly tag: Tag; readonly index: number }>();
  return (key, cell, index) => {
    if (met.has(key)) return undefined;
    met.add(key);
    const tag = { key, shown: String(cell).trim() };
    const [other] = animals.meet({ tag, index });
    return other && alikeFault(other.tag, other.index + 1);
  };
}
