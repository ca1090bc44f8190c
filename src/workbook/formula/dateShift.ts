import { days1904 } from "../../cells/day.ts";
import { NotWorkedOut } from "./notWorkedOut.ts";
import type { Token } from "./tokenize.ts";

// The engine counts days in the 1900 system only.
const givesDay: ReadonlySet<string> = new Set("DATE DATEVALUE EDATE EOMONTH NOW TODAY".split(" "));
const takesDayFirst: ReadonlySet<string> = new Set(
  "DAY EDATE EOMONTH ISOWEEKNUM MONTH WEEKDAY WEEKNUM YEAR".split(" "),
);
const cannotShift: ReadonlySet<string> = new Set(
  "DATEDIF DAYS360 NETWORKDAYS NETWORKDAYS.INTL TEXT WORKDAY WORKDAY.INTL YEARFRAC".split(" "),
);

interface Frame {
  first: string;
  readonly after: string;
}

export interface DateShift {
  /** To be told of each call; returns what goes before it. */
  readonly called: (name: string) => string;
  /** A piece with what the shift puts around it. */
  readonly piece: (token: Token, text: string) => string;
}

const noShift: DateShift = { called: () => "", piece: (_, text) => text };

/**
 * For a workbook in the 1904 system: moves days on their way into and out of the engine's own date functions, so
 * that `YEAR(A1)` becomes `YEAR((A1)+1462)` and `TODAY()` becomes `(TODAY()-1462)`.
 */
export function dateShift(date1904: boolean): DateShift {
  if (!date1904) return noShift;
  const frames: Frame[] = [];
  let next: Frame = { first: "", after: "" };
  return {
    called(name) {
      if (cannotShift.has(name)) throw new NotWorkedOut(`it uses ${name} in a workbook that counts days from 1904`);
      const gives = givesDay.has(name);
      next = { first: takesDayFirst.has(name) ? `)+${days1904}` : "", after: gives ? `-${days1904})` : "" };
      return gives ? "(" : "";
    },
    piece({ kind }, text) {
      if (kind === "open") {
        const frame = next;
        frames.push(frame);
        next = { first: "", after: "" };
        return frame.first === "" ? text : `${text}(`;
      }
      const frame = frames.at(-1);
      if (kind === "separator" && frame) {
        const before = frame.first;
        frame.first = "";
        return before + text;
      }
      if (kind === "close" && frame) {
        frames.pop();
        return frame.first + text + frame.after;
      }
      return text;
    },
  };
}
