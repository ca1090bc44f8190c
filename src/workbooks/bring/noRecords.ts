import { WorkbookProblem } from "../../workbook/workbookProblem.ts";

/** A file in which no records are found, with the headings it has, so that a person can say what they mean. */
export class NoRecords extends WorkbookProblem {
  readonly headings: readonly string[];

  constructor(file: string, found: readonly string[]) {
    const headings = found.filter((heading) => heading !== "");
    super(
      `No records were found in ${file}: it needs a heading row with a tag (or a group and how many animals) and a day, or with date, looked at and lame. ${
        headings.length === 0 ? "It has no heading row." : `It has the headings ${headings.join(", ")}.`
      }`,
    );
    this.headings = headings;
  }
}
