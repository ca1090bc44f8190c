import { numfmt } from "@univerjs/core";

/** Whether a number format shows a day. */
export const showsDay = (pattern: string): boolean => ["date", "datetime"].includes(numfmt.getFormatInfo(pattern).type);
