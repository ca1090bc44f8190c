import { strFromU8, strToU8, unzlibSync } from "fflate";
import type { Entry } from "../../../workbook/zip/readZip.ts";

/** How a text is made of pieces of another: pieces to pass over, pieces to take, and a text of its own after them. */
export type Step = readonly [pass: number, take: number, own: string];

/** A part of a workbook, told by the part of the same name in another workbook. */
export interface LikePart {
  readonly name: string;
  readonly stored: boolean;
  readonly steps: readonly Step[];
}

/** The pieces that parts are told by: each begins where an element begins or ends. */
export const piecesOf = (text: string): string[] => text.split(/(?=<)/);

/**
 * The parts of a workbook that is told by another, as `packLike` of the build packs them.
 *
 * @param packed - the parts as JSON, in zlib's format
 * @param base - the parts of the other workbook
 */
export function unpackLike(packed: Uint8Array, base: readonly Entry[]): readonly Entry[] {
  const texts = new Map(base.map(({ name, bytes }) => [name, bytes]));
  const parts = JSON.parse(strFromU8(unzlibSync(packed))) as readonly LikePart[];
  return parts.map(({ name, stored, steps }) => {
    const pieces = piecesOf(strFromU8(texts.get(name) ?? new Uint8Array()));
    let at = 0;
    const text = steps.map(([pass, take, own]) => {
      at += pass + take;
      return pieces.slice(at - take, at).join("") + own;
    });
    return { name, stored, bytes: strToU8(text.join("")) };
  });
}
