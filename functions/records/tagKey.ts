import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { one } from "../../src/reading/parameter.ts";
import { tag } from "../../src/reading/words.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const tagKeyFunction = defineFunction({
  name: "TAGKEY",
  summary: "One spelling for an animal's tag, so that two ways of writing it compare as equal.",
  questions: ["are these two tags the same animal", "clean up tag numbers", "match ear tags from two lists"],
  notes: [
    "Spaces, case and separators go. A 15-digit electronic number, the same number in 16 digits with a zero before the country, and the printed form with country letters give the same 15 digits.",
    "A printed tag may leave out the zero before the flock mark and the zeros before the animal's number. Keep a space between the two: run together and beginning with 0, the digits can be read as two animals and are refused.",
    "Management tags keep their letters and digits, leading zeros too.",
    "A cell that says there is no tag (ditto, tag lost), is not sure of it (04?) or names several animals (041 and 042, all, top field) is refused.",
    "A number of more than 15 digits is refused, because the cell has already lost digits: keep such tags as text.",
  ],
  parameters: { tag: one(tag, "The tag as it was written down") },
  result: single("tag key", "text"),
  caution: undefined,
  sources: [sources.iso11784, sources.iso3166, sources.practice],
  compute: ({ tag }) => tag.key,
  examples: [
    { shows: "Printed on the tag", call: ["ZZ 0 123456 00042"], gives: "999012345600042" },
    { shows: "Read electronically", call: [999012345600042], gives: "999012345600042" },
    { shows: "Printed without its zeros", call: ["zz 123456 42"], gives: "999012345600042" },
    { shows: "A management tag", call: [" blue-42 "], gives: "BLUE42" },
    {
      call: ["ZZ012345642"],
      gives: problem(
        'tag: "ZZ012345642" can be read as two animals; leave a space between flock mark and number, or enter all 12 digits',
      ),
    },
    {
      call: [1e16],
      gives: problem(
        "tag: 10000000000000000 has more than 15 digits, and a cell that holds a number keeps only 15; enter the tag as text",
      ),
    },
    { call: ["--"], gives: problem('tag: "--" has no letter or digit; enter the tag') },
  ],
});
