import { developmentUrl } from "../baseUrl.ts";

/** The page that a release begins with, as Markdown: what is in it, for whom. */
export const frontPage = (version: string, baseUrl: string): string => `# Soundfold ${version}

Worksheet functions for sheep foot health: how many sheep are lame, who may go for food and when, whom to look at again, and whether it gets better.

**[Open the sheet](soundfold.html)**: a spreadsheet with all functions and workbooks in one file. Nothing is installed, nothing is sent, and it works without a network. [How it is used](install/page.html).

If the links here lead nowhere, this page was opened inside the zip: take everything out of the zip first (on Windows: right click on it, **Extract All**), and open \`index.html\` in the new folder.

## For the program you use

| you use | what to take | how |
| --- | --- | --- |
| a browser | [soundfold.html](soundfold.html) | [the sheet in one file](install/page.html) |
| Excel | the folder \`excel\`${excelFolder(baseUrl)} | [Excel](install/excel.html), and [the first page of that folder](excel/index.html) |
| LibreOffice Calc | [soundfold.oxt](libreoffice/soundfold.oxt), and the workbooks in \`libreoffice/workbooks\` | [LibreOffice](install/libreoffice.html) |
| Google Sheets | [Code.gs](google-sheets/Code.gs) | [Google Sheets](install/google-sheets.html) |
| the command line | [the soundfold command](command/soundfold-${version}.tgz) | [the command](install/command-line.html) |

Workbooks to start from, and the same filled in with invented records, are in the folder \`workbooks\`.

## To read

- [Which program to take](install/index.html), and how each is put in, updated and removed
- [Every function](functions/index.html), with examples to copy
- [What could do harm](safety.html), and what guards against it
- [The methods](methods/index.html) and their limits
- [What the functions cost in time](benchmarks.html), and [thousands of flocks](scale.html)
- [What changed](changelog.html) from version to version
- [Licences](licences/bundled.txt) of what is inside

## Take care

Soundfold counts and calculates; it never prescribes. Withdrawal periods, doses and footbath strengths come from the product's data sheet, your local rules and the prescribing vet, and those stand above any answer here. When in doubt, hold the animal and ask.
`;

/** An address in a table is read by people who would press it; it is of use to the person who serves the folder. */
const excelFolder = (baseUrl: string): string =>
  baseUrl === developmentUrl
    ? ": somebody puts it at an https address, and its first page there does the rest"
    : `, made for \`${baseUrl}\``;
