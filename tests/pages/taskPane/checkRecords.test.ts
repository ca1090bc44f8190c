import { expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { checkRecords } from "../../../src/pages/taskPane/checkRecords.ts";

const headings = ["Ear tag", "Date treated", "Treated on", "Lesion"];
const day = dayOf("2026-02-10");
const rows = [
  ["041", day, "", "scald"],
  ["042", "12/3", "", "limping"],
  ["041", day, "", "scald"],
];

it("says in which cell of the sheet each finding is, and names rows as the sheet's edge does", () => {
  const { records, findings } = checkRecords({ top: 4, left: 27, headings, rows }, dayOf("2026-03-14"), 1900);
  expect(records).toBe(3);
  expect(findings.map(({ cell, what }) => [cell, what])).toEqual([
    ["AB6", '"12/3" is not a date'],
    ["AD6", '"limping" is not a lesion known here'],
    ["AA7", "the same record as row 5"],
  ]);
});

it("counts days as the workbook does", () => {
  const from = (dateSystem: 1900 | 1904, serial: number) =>
    checkRecords({ top: 1, left: 1, headings: ["Tag", "Treated"], rows: [["041", serial]] }, day, dateSystem).findings;
  expect(from(1900, day)).toEqual([]);
  expect(from(1904, day - 1462)).toEqual([]);
  expect(from(1904, day)).toEqual([expect.objectContaining({ cell: "B2", what: "11 Feb 2030 is in the future" })]);
});
