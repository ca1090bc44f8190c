import { Problem } from "../../../cells/problem.ts";
import { words } from "../../words.ts";

/**
 * A workbook of the page's own, in the form that Excel takes it in.
 *
 * @returns base64
 * @throws Problem when it cannot be had
 */
export async function fetchTemplate(address: string): Promise<string> {
  const answer = await fetch(address).catch((error: unknown) => ({
    ok: false as const,
    status: (error as Error).message,
  }));
  if (!answer.ok) throw new Problem(words.workbooks.notFetched(address, String(answer.status)));
  const bytes = new Uint8Array(await answer.arrayBuffer());
  let text = "";
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
}
