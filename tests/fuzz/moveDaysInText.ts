import { momentFromText, showDay } from "../../src/cells/day.ts";

const monthNames = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const dayInText = new RegExp(`\\b(\\d{1,2}) (${monthNames.join("|")}) (\\d{4})\\b`, "g");

/** A text in which every day, written as 14 Mar 2026, stands so many days later. */
export const moveDaysInText = (text: string, days: number): string =>
  text.replace(dayInText, (_, date: string, month: string, year: string) => {
    const number = String(monthNames.indexOf(month) + 1).padStart(2, "0");
    return showDay((momentFromText(`${year}-${number}-${date.padStart(2, "0")}`) as number) + days);
  });
