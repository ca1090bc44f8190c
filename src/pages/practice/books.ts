import { usualLimits } from "../../workbook/limits.ts";
import { readZip } from "../../workbook/zip/readZip.ts";
import { writeZip } from "../../workbook/zip/writeZip.ts";
import { unpackLike } from "./files/likeBook.ts";
import { firstBook } from "./offeredBooks.ts";

/** A workbook as a file. */
export interface Book {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * The workbook the page begins with: one's own where there is one inside it.
 *
 * @returns with `made`: whether it was worked out when the page was built
 */
export async function bookToBeginWith(): Promise<Book & { readonly made: boolean }> {
  const own = document.querySelector<HTMLElement>("script[data-own]");
  return own
    ? { name: own.dataset.book ?? firstBook, bytes: bytesIn(own), made: false }
    : { ...(await offeredBook(firstBook)), made: true };
}

/**
 * One of the workbooks that the page offers: from inside the page, or else from the place it came from.
 *
 * @throws Error when it is in neither
 */
export async function offeredBook(name: string): Promise<Book> {
  const inside = [...document.querySelectorAll<HTMLElement>("script[data-book]:not([data-own])")];
  const found = inside.find(({ dataset }) => dataset.book === name);
  if (found) return { name, bytes: await bytesOf(found) };
  const answer = await fetch(name);
  if (!answer.ok) throw new Error(String(answer.status));
  return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
}

/** A book that is told by another comes together from both. */
async function bytesOf(inside: HTMLElement): Promise<Uint8Array> {
  const { like } = inside.dataset;
  if (like === undefined) return bytesIn(inside);
  const base = await offeredBook(like);
  return writeZip(unpackLike(bytesIn(inside), readZip(base.bytes, usualLimits)));
}

const bytesIn = ({ textContent }: HTMLElement): Uint8Array =>
  Uint8Array.from(atob(textContent?.trim() ?? ""), (letter) => letter.charCodeAt(0));
