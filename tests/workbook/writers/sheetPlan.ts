import { png } from "../../../src/build/png.ts";
import { answers, besideRecord, headings, records } from "./records.ts";

/** All that a writer needs, so that those in other languages write the same cells. */
export const sheetPlan = {
  headings,
  records,
  beside: records.map((_, place) => besideRecord(place + 2)),
  answers,
};

/** A small picture to put on a sheet. */
export const picture: Uint8Array = png(16, (column, row) => [column / 16, row / 16, 0.5, 1]);
