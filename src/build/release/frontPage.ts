/** The page that a release begins with, as Markdown: what is in it, for whom. */
export const frontPage = (version: string, baseUrl: string): string => `# Soundfold ${version}

Worksheet functions for sheep foot health: how many sheep are lame, who may go for food and when, whom to look at again, and whether it gets better.

**[Open the sheet](soundfold.html)**: a spreadsheet with all functions and workbooks in one file. Nothing is installed, nothing is sent, and it works without a network. [How it is used](install/page.html).

## For the program you use

| you use | what to take | how |
| --- | --- | --- |
| a browser | [soundfold.html](soundfold.html) | [the sheet in one file](install/page.html) |
| Excel | the folder \`excel\`, made for ${baseUrl} | [Excel](install/excel.html); [its own first page](excel/index.html) |
| LibreOffice Calc | [soundfold.oxt](libreoffice/soundfold.oxt) | [LibreOffice](install/libreoffice.html) |
| Google Sheets | [Code.gs](google-sheets/Code.gs) | [Google Sheets](install/google-sheets.html) |
| the command line | [the soundfold command](command/soundfold-${version}.tgz) | [the command](install/command-line.html) |

## To read

- [Every function](functions/index.html), with examples to copy
- [The methods](methods/index.html) and their limits
- [What the functions cost in time](benchmarks.html), and [thousands of flocks](scale.html)
- [Licences](licences/bundled.txt) of what is inside

## Take care

Soundfold counts and calculates; it never prescribes. Withdrawal periods, doses and footbath strengths come from the product's data sheet, your local rules and the prescribing vet, and those stand above any answer here. When in doubt, hold the animal and ask.
`;
