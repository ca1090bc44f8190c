import { faultInWords } from "../../cells/fault.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { Problem } from "../../cells/problem.ts";
import { fieldReader } from "../../core/records/fieldChecks.ts";
import { tagKey } from "../../core/words/tagKey.ts";
import type { CaseKey, GatherKey } from "./recordSources.ts";

/** The cells of a row, by what they are; null where one is blank or its column is not there. */
export type RowCells<K extends string> = Readonly<Partial<Record<K | "flock", string | null>>>;

/** What is wrong with a row of gathers, and how to mend it. */
export function gatherFault({ flock, date, lookedAt, lame }: RowCells<GatherKey>): string {
  const [seen, ill] = [countFault("Looked at", lookedAt), countFault("Lame", lame)];
  const many = `${lame} lame of ${lookedAt} looked at; enter the lame sheep among those looked at`;
  return (noName(flock) ?? dayFault(date) ?? seen ?? ill ?? many).trim();
}

/** The same of a row of cases. */
export const caseFault = ({ flock, tag, seen, treated }: RowCells<CaseKey>): string =>
  noName(flock) ??
  dayFault(isBlank(seen) ? treated : seen) ??
  unreadTagFault(tag) ??
  "it cannot be read; look at it again";

function unreadTagFault(tag: string | null | undefined): string | undefined {
  if (tag === null || tag === undefined || isBlank(tag)) return "no tag; enter it";
  try {
    tagKey(tag);
    return undefined;
  } catch (error) {
    if (error instanceof Problem) return faultInWords(error.fault);
    throw error;
  }
}

const isBlank = (text: string | null | undefined): boolean => (text ?? "").trim() === "";

// Undefined where the file has no such column, and is of one flock.
const noName = (flock: string | null | undefined): string | undefined =>
  flock !== undefined && isBlank(flock) ? "no flock; enter its name under Flock" : undefined;

const readDay = fieldReader("treated", { asOf: undefined, dayOffset: 0 });

function dayFault(text: string | null | undefined): string | undefined {
  if (isBlank(text)) return "no date; enter it";
  const { value, fault } = readDay(text ?? null);
  return typeof value === "number" || fault === undefined ? undefined : faultInWords(fault);
}

function countFault(heading: string, text: string | null | undefined): string | undefined {
  if (isBlank(text)) return `${heading} is blank; enter the sheep, 0 only if there were none`;
  const count = numberIn(text ?? null);
  return count !== undefined && Number.isInteger(count) && count >= 0
    ? undefined
    : `${heading} "${text}" is not a whole number of sheep; enter one, 0 or more`;
}
