import { cases } from "../tables/cases.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { medicines } from "../tables/settingsTables.ts";

/** What the settings say of each case's medicine; an empty text where nothing. */
export const medicineColumn = (key: KeyOf<typeof medicines>): string =>
  `IFERROR(VLOOKUP(${cases.of("medicine")},Medicines[#Data],${medicines.placeOf(key) + 1},FALSE),"")`;

/** The days from which a book counts, as conditions on a column: before the year looked at, nothing. */
export const inYear = (column: string): string => `IF(gather_day<year_from,"",${column})`;

/** Said where the book is worked out for a day before its last records. */
export const lookingBack =
  'IF(SUM(1-each_row_known)=0,"","Looking back: "&SUM(1-each_row_known)&" rows of Cases are of later days and left out.")';
