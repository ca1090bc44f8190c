import { cases } from "../tables/cases.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { medicines } from "../tables/settingsTables.ts";

/** What the settings say of each case's medicine; an empty text where nothing. */
export const medicineColumn = (key: KeyOf<typeof medicines>): string =>
  `IFERROR(VLOOKUP(${cases.of("medicine")},Medicines[#Data],${medicines.placeOf(key) + 1},FALSE),"")`;

/** Said where the book is worked out for a day before its last records. */
export const lookingBack =
  'IF(SUM(1-each_row_known)=0,"","Looking back: "&SUM(1-each_row_known)&" rows of Cases are of later days and left out.")';

/** Whoever found her sound has looked at her again, and nobody looks at one that has left. */
export const lookedOrOver = (each = ""): string =>
  `IF(LEN(${each}looked_on)>0,${each}looked_on,IF(LEN(${each}sound_on)>0,${each}sound_on,${each}left_on))`;
