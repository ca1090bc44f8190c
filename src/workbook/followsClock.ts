import type { Workbook } from "./workbook.ts";

// Those whose answer is another the next time, without any cell having changed.
const followers = /\b(?:TODAY|NOW|RAND|RANDBETWEEN|RANDARRAY)\s*\(/i;

/** Whether anything in a workbook goes by the clock or by chance, so that its answers grow old by themselves. */
export const followsClock = ({ sheets, names }: Pick<Workbook, "sheets" | "names">): boolean =>
  names.some(({ text }) => followers.test(text)) ||
  sheets.some(({ rows }) =>
    rows.some(({ cells }) => cells.some(({ formula }) => formula !== undefined && followers.test(formula.text))),
  );
