import type { RecordColumn, RecordReport } from "./recordCheck.ts";
import type { RecordField } from "./recordFields.ts";

/** One line of a report: about a row, about a column, or about the whole. */
export interface ReportLine {
  /** As the findings count them; undefined when the line is about no single row. */
  readonly row: number | undefined;
  readonly column: string;
  readonly what: string;
  readonly mend: string;
}

// Without these columns the checks that matter most cannot be made.
const wanted: Readonly<Partial<Record<RecordField, string>>> = {
  tag: "so tags are not checked",
  "withdrawal days": "so missing ones are not found",
};

/**
 * A report as lines: what each heading was taken for, what could not be checked, then the findings.
 *
 * @param asOfGiven - whether the check knew which dates lie in the future
 */
export function reportLines({ columns, findings, records }: RecordReport, asOfGiven: boolean): readonly ReportLine[] {
  const about = (what: string, mend: string): ReportLine => ({ row: undefined, column: "", what, mend });
  const fields = new Set(columns.map(({ field }) => field));
  return [
    ...columns.map(columnLine),
    ...Object.entries(wanted)
      .filter(([field]) => !fields.has(field as RecordField))
      .map(([field, then]) =>
        about(`there is no column for ${field}, ${then}`, `give that column the heading "${field}"`),
      ),
    ...(fields.has("treated") || fields.has("seen lame")
      ? []
      : [
          about(
            "there is no column for dates, so their order is not checked",
            'give a column the heading "date treated"',
          ),
        ]),
    ...(asOfGiven ? [] : [about("dates in the future are not looked for", "give as_of, usually TODAY()")]),
    ...findings.map(({ row, heading, what, mend }) => ({ row, column: heading, what, mend })),
    ...(findings.length === 0
      ? [about(`nothing found wrong in ${records} ${records === 1 ? "record" : "records"}`, "")]
      : []),
  ];
}

const columnLine = ({ heading, field, repeats }: RecordColumn): ReportLine => ({
  row: undefined,
  column: heading,
  what:
    field !== undefined
      ? `checked as: ${field}`
      : repeats !== undefined
        ? `not checked: ${repeats} already stands for the same`
        : "not checked: the heading is not known",
  mend: "",
});
