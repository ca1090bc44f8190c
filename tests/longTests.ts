/**
 * The tests that take 15 seconds of a processor and more for what others cover nearly as well: whole packages, filled
 * books, workbooks and texts of a size that nobody has, a day in every time zone. They run in `npm run test:long`, with those of the pages.
 */
export const longTests: readonly string[] = [
  "tests/build/package.test.ts",
  "tests/cli/bring.test.ts",
  "tests/build/commandLinePackage.test.ts",
  "tests/cli/killed.test.ts",
  "tests/cli/template.test.ts",
  "tests/cli/today.test.ts",
  "tests/workbook/bounds/bounds.test.ts",
  "tests/workbook/bounds/longTexts.test.ts",
  "tests/workbook/cone/cone.test.ts",
  "tests/workbooks/bring/bringBook.test.ts",
  "tests/workbooks/lookingBack.test.ts",
  "tests/workbooks/oneSlipBooks.test.ts",
  "tests/workbooks/oneSlipVisits.test.ts",
  "tests/workbooks/readableFormulas.test.ts",
  "tests/workbooks/soundFile.test.ts",
  "tests/**/fillFlockFootBook.test.ts",
  "tests/**/flockFootBook.test.ts",
  "tests/**/fullFlockFootBook.test.ts",
];
