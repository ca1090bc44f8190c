import { encode } from "fast-png";
import { answers, besideRecord, headings, records } from "./records.ts";

/** All that a writer needs, so that those in other languages write the same cells. */
export const sheetPlan = {
  headings,
  records,
  beside: records.map((_, index) => besideRecord(index + 2)),
  answers,
};

/** A small picture to put on a sheet. */
export const picture: Uint8Array = encode({
  width: 16,
  height: 16,
  channels: 4,
  data: Uint8Array.from({ length: 16 * 16 * 4 }, (_, at) => [(at / 4) % 16, at / 64, 8, 15.9][at % 4] as number).map(
    (part) => part * 16,
  ),
});
