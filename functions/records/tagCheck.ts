import { tagChecks } from "../../src/core/records/tagChecks.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { gappedColumn } from "../../src/reading/parameter.ts";
import { anyCell } from "../../src/reading/words.ts";
import { alongside } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const tagCheckFunction = defineFunction({
  name: "TAGCHECK",
  summary: 'Whether a tag is written so that it can be told from others: "ok", or what is wrong with it.',
  questions: ["is this ear tag number right", "which tags have lost digits", "check a list of tag numbers"],
  notes: [
    "It looks at the writing only: digits lost by the sheet, a length that no electronic number has, an animal number or country code that cannot be. It does not know whether an animal wears the tag.",
    "In a column, a tag that may be the same animal as another after a slip says so with the other's row: zeros lost at the front, a letter that looks like a digit (O, I, L, Z, S, G, B), the country left out, the animal's own number alone, words before or behind the tag, a second number beside it (062, now 071), separators left out.",
    "A management tag of up to 9 digits or with letters is ok. A blank cell stays blank; a 0 counts as blank.",
    "Some digits cannot be missed by looking: a tag with a wrong digit is still a tag.",
  ],
  parameters: { tag: gappedColumn(anyCell, "The tag, or a column of tags") },
  result: alongside("tag check", "text"),
  caution: undefined,
  sources: [sources.iso11784, sources.iso3166, sources.practice],
  compute: ({ tag }, origin) => tagChecks(tag, (index) => origin.row(index)),
  examples: [
    { shows: "Printed on the tag", call: ["ZZ 0 123456 00042"], gives: "ok" },
    {
      shows: "A column, one cell blank",
      call: [["042", "99901234560004", "", "999274877906944", "ZZ012345642"]],
      gives: [
        ["ok"],
        [
          "14 digits: an electronic number has 15; look whether zeros at the front or digits at the end are lost, and enter it as text",
        ],
        [""],
        [
          "the animal number 274877906944 is above 274877906943, the highest an electronic tag holds; look at the tag again",
        ],
        [
          '"ZZ012345642" can be read as two animals; leave a space between flock mark and number, or enter all 12 digits',
        ],
      ],
    },
    {
      shows: "Tags that may be one animal",
      call: [["042", "O42", "1-12", "11-2", "ZZ 0 123456 00051", "51"]],
      gives: [
        ["it may be O42, row 2; look at both, and write one animal's tag in one way"],
        ["it may be 042, row 1; look at both, and write one animal's tag in one way"],
        ["ok"],
        ["ok"],
        ["it may be 51, row 6; look at both, and write one animal's tag in one way"],
        ["it may be ZZ 0 123456 00051, row 5; look at both, and write one animal's tag in one way"],
      ],
    },
    {
      shows: "A group in place of a tag",
      call: ["23 lambs"],
      gives:
        '"23 lambs" is a number of animals, not a tag; enter the tag of each, or leave the tag blank and name their group in a column for groups',
    },
    {
      shows: "A number that the sheet has spoiled",
      call: [1e16],
      gives:
        "10000000000000000 has more than 15 digits, and a cell that holds a number keeps only 15; enter the tag as text",
    },
    {
      call: [
        [
          ["041", "042"],
          ["043", "044"],
        ],
      ],
      gives: problem("tag: the range is 2 columns wide; give one column"),
    },
    { shows: "An electronic number kept as a number", call: [999012345600042], gives: "ok" },
  ],
});
