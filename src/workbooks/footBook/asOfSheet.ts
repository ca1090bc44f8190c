import type { Area } from "../../workbook/address.ts";
import { cases } from "../tables/cases.ts";
import { gathers } from "../tables/gathers.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { columnOfCells, fixedArea } from "../writing/references.ts";
import { firstRecord, sheetNames } from "./bookSheets.ts";
import { medicineColumn } from "./formulas.ts";
import { besideCases } from "./placedRecords.ts";

/** For a whole column at once; `cells` names another column, the records only. */
type Formula = (cells: (name: string) => string) => string;

/** A column of the records as they stood on the day the book is worked out for. */
interface AsOfColumn {
  readonly of: typeof cases | typeof gathers;
  readonly holds: string;
  readonly look: keyof typeof widths;
  readonly formula: Formula;
}

const widths = { worked: 20, workedDate: 13, workedMonth: 11, workedCount: 9, workedMl: 9 } as const;

const columnOf =
  (of: AsOfColumn["of"]) =>
  (holds: string, look: AsOfColumn["look"], formula: Formula): AsOfColumn => ({ of, holds, look, formula });
const ofCases = columnOf(cases);
const ofGathers = columnOf(gathers);

const later = (day: string, than: string): string => `ISNUMBER(${day})*(${day}>${than})`;

const laterOrBlank = (day: string): string => `(${later(day, "known_until")}+(LEN(${day})=0))`;

/** A column of the rows that are known; another is left blank. */
const known =
  (column: string): Formula =>
  (cells) =>
    `IF((LEN(${column})>0)*${cells("row_known")},${column},"")`;

/** A column of the treatments that are known. */
const ofTreatment =
  (column: string): Formula =>
  (cells) =>
    `IF((LEN(${column})>0)*${cells("treatment_known")},${column},"")`;

/** A day on which something was settled. One that has not come settles nothing, whatever was typed. */
const settled =
  (column: string): Formula =>
  (cells) =>
    `IF((LEN(${column})>0)*${cells("row_known")}*(1-${later(column, "as_of")}),${column},"")`;

/** What a medicine sheet counts: the courses of the year that are counted in ml. */
const counted =
  (column: string): Formula =>
  (cells) =>
    `IF(${cells("use_counted")},${column},"")`;

const inYear = (column: string): string => `(1-ISNUMBER(${column})*((${column}<year_from)+(${column}>as_of)>0))`;

/** What is known of a gather, with its day or without. */
const gathered = (column: string) => () => `IF((LEN(${column})>0)*(1-${later("Gathers[Date]", "as_of")}),${column},"")`;

/** What stands in the rows of gathers of the year looked at; a day that cannot be read may be one of them. */
const ofYear = (name: string, holds: string, look: AsOfColumn["look"]): AsOfColumn =>
  ofGathers(
    `${holds}, in the year looked at`,
    look,
    (cells) => `IF(ISNUMBER(${cells("gather_day")})*(${cells("gather_day")}<year_from),"",${cells(name)})`,
  );

/** What stands in the rows of the latest month of gathers. */
const ofMonth = (name: string, holds: string): AsOfColumn =>
  ofGathers(holds, "workedCount", (cells) => `IF(${cells("gather_month")}=latest_month,${cells(name)},"")`);

const columns: Readonly<Record<string, AsOfColumn>> = {
  // Of two days that contradict each other one is a slip, and the row is left out only if both say so.
  row_known: ofCases(
    "1 in rows that were there on that day",
    "workedCount",
    () =>
      `1-(${laterOrBlank("Cases[Seen lame]")}*${laterOrBlank("Cases[Treated]")}*(LEN(Cases[Seen lame])+LEN(Cases[Treated])>0)>0)`,
  ),
  treatment_known: ofCases(
    "1 where the treatment was",
    "workedCount",
    (cells) => `${cells("row_known")}*(1-${later("Cases[Treated]", "known_until")})`,
  ),
  case_tag: ofCases("the tag", "worked", known("Cases[Tag]")),
  case_day: ofCases(
    "the day she was seen lame, or else treated; no whole groups",
    "workedDate",
    (cells) =>
      `IF(${cells("row_known")}*(LEN(${cells("group_treated")})=0),IF((LEN(Cases[Seen lame])>0)*(1-${later("Cases[Seen lame]", "known_until")}),Cases[Seen lame],IF(LEN(Cases[Treated])>0,Cases[Treated],"")),"")`,
  ),
  group_treated: ofCases(
    "the group, where it was treated as a whole",
    "worked",
    (cells) =>
      `IF((LEN(Cases[Tag])=0)*(LEN(Cases[Animals])>0)*(LEN(Cases[Group])>0)*${cells("row_known")},Cases[Group],"")`,
  ),
  treated_on: ofCases("the day of the treatment", "workedDate", ofTreatment("Cases[Treated]")),
  withdrawal_days: ofCases("its withdrawal days", "workedCount", ofTreatment("Cases[Withdrawal days]")),
  sound_on: ofCases("the day she was found sound", "workedDate", settled("Cases[Sound on]")),
  left_on: ofCases("the day she left the flock", "workedDate", settled("Cases[Left flock]")),
  // What stands in Sound on and is no day, or one before the case, says nothing of this case.
  still_lame: ofCases("1 where no day on which she was sound again, or left, follows", "workedCount", (cells) => {
    const [seen, sound] = [cells("case_day"), cells("sound_on")];
    const before = `ISNUMBER(${sound})*ISNUMBER(${seen})*(${sound}<${seen})`;
    return `IF(LEN(${seen})>0,(LEN(${cells("left_on")})=0)*((LEN(${sound})=0)+${before}),"")`;
  }),
  case_over: ofCases("the day she was found sound, or else that of the case", "workedDate", (cells) => {
    const [seen, sound] = [cells("case_day"), cells("sound_on")];
    return `IF((LEN(${sound})>0)*ISNUMBER(${seen}),${sound},${seen})`;
  }),
  followed_on: ofCases(
    "the day of the treatment, of one animal and not of a group",
    "workedDate",
    (cells) => `IF(LEN(${cells("case_tag")})*LEN(${cells("treated_on")})>0,${cells("treated_on")},"")`,
  ),
  looked_on: ofCases("the day of the second look", "workedDate", settled("Cases[Looked again]")),
  look_due: ofCases("the day of the second look that is due, of this year", "workedDate", (cells) => {
    const due = besideCases.range("lookAgain");
    return `IF(${cells("treatment_known")}*(LEN(${cells("group_treated")})=0)*(LEN(${due})>0)*(1-ISNUMBER(${due})*(${due}<year_from)),${due},"")`;
  }),
  case_lesion: ofCases("the lesion, once for each case of the year", "worked", (cells) => {
    const key = `${cells("case_tag")}&"|"&${besideCases.range("caseNumber")}`;
    const first = `((MATCH(${key},${key},0)=ROW(${cells("case_tag")})-${firstRecord})+(LEN(${cells("case_tag")})=0)>0)`;
    return `IF((LEN(Cases[Lesion])>0)*${cells("row_known")}*(1-ISNUMBER(${cells("case_day")})*(${cells("case_day")}<year_from))*${first},Cases[Lesion],"")`;
  }),
  is_antibiotic: ofCases(
    "1 where an antibiotic was given in the year, or may have been",
    "workedCount",
    (cells) =>
      `(LEN(Cases[Medicine])>0)*(${medicineColumn("antibiotic")}<>"no")*${cells("treatment_known")}*${inYear("Cases[Treated]")}`,
  ),
  // A spray is in no ml: it cannot be added up with what is injected.
  use_counted: ofCases(
    "1 where its ml are known",
    "workedCount",
    (cells) => `${cells("is_antibiotic")}*(LEN(Cases[Dose ml])>0)`,
  ),
  used_medicine: ofCases("the medicine counted", "worked", counted("Cases[Medicine]")),
  used_ml: ofCases("its ml", "workedMl", counted("Cases[Dose ml]")),
  used_strength: ofCases("its mg per ml", "workedMl", counted(medicineColumn("mgPerMl"))),
  used_animals: ofCases(
    "how many animals were given it, where it was a whole group",
    "workedCount",
    (cells) => `IF(${cells("use_counted")}*(LEN(${cells("group_treated")})>0),Cases[Animals],"")`,
  ),
  gather_day: ofGathers("the day of each gather", "workedDate", gathered("Gathers[Date]")),
  gather_month: ofGathers(
    "its month",
    "workedMonth",
    (cells) =>
      `IF(ISNUMBER(${cells("gather_day")}),${cells("gather_day")}-DAY(${cells("gather_day")})+1,${cells("gather_day")})`,
  ),
  gather_group: ofGathers("its group", "worked", gathered("Gathers[Group]")),
  gather_looked_at: ofGathers("how many were looked at", "workedCount", gathered("Gathers[Looked at]")),
  gather_lame: ofGathers("how many were lame", "workedCount", gathered("Gathers[Lame]")),
  year_day: ofYear("gather_day", "the day of each gather", "workedDate"),
  year_group: ofYear("gather_group", "its group", "worked"),
  year_looked_at: ofYear("gather_looked_at", "how many were looked at", "workedCount"),
  year_lame: ofYear("gather_lame", "how many were lame", "workedCount"),
  month_looked_at: ofMonth("gather_looked_at", "how many were looked at in the latest month"),
  month_lame: ofMonth("gather_lame", "how many were lame then"),
};

const names = Object.keys(columns);
/** Columns that are named a second time without the rows above the records, for answers that stand beside each record. */
const beside: readonly string[] = ["row_known", "case_tag", "case_day", "looked_on", "sound_on", "left_on"];
/** The first columns say what stands in the others: a heading over them would count as a record. */
const left = 3;

const rowsOf = (name: string): Area => {
  const column = columns[name];
  if (!column) throw new RangeError(`there is no column ${name} on the sheet ${sheetNames.asOf}`);
  const at = left + names.indexOf(name);
  return { top: firstRecord, left: at, bottom: firstRecord + column.of.room - 1, right: at };
};

/**
 * The records as they stood on the day the book is worked out for: later ones are left out, so that looking back gives
 * what a book gave that ended on that day. Each record stands in the row that it has on its own sheet, and the columns
 * begin in the first row, so that the lists name rows of that sheet.
 */
export const asOfSheet: SheetPlan = {
  name: sheetNames.asOf,
  write(sheet, nameCell) {
    sheet.title("As of");
    sheet.put(
      { row: 1, column: 0 },
      "The records of Cases and Gathers as they stood on the day the book is worked out for. Nothing to type here.",
      "note",
    );
    // A record that is dated after today is a slip or a plan, and no reason to let an animal go; one that is dated after
    // the day one looks back to was not there yet.
    const until = { row: 2, column: 1 };
    sheet.put({ row: 2, column: 0 }, "Until", "label");
    sheet.put(until, { formula: "IF(as_of<TODAY(),as_of,MAX(as_of,Cases[Seen lame],Cases[Treated]))" }, "workedDate");
    nameCell("known_until", sheet.name, until);
    sheet.put({ row: 2, column: 2 }, "Records after this day are left out; none are unless one looks back.", "note");
    sheet.widths(9, 18, 62);
    names.forEach((name, step) => {
      const column = columns[name] as AsOfColumn;
      const area = rowsOf(name);
      const cells = (other: string): string => fixedArea(rowsOf(other));
      sheet.putRow({ row: firstRecord + step, column: 0 }, [columnOfCells(area), name, column.holds], "words");
      sheet.width(area.left, widths[column.look]);
      sheet.dress(area, column.look);
      sheet.put({ row: area.top, column: area.left }, { formula: column.formula(cells), array: area });
      nameCell(name, sheet.name, { ...area, top: 0 });
      if (beside.includes(name)) nameCell(`each_${name}`, sheet.name, area);
    });
    sheet.freezeAt({ row: firstRecord, column: left });
    sheet.protect();
    sheet.print({ upTo: { row: firstRecord + names.length - 1, column: left - 1 }, onOnePage: true });
  },
};
