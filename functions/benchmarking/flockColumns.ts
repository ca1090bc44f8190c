import { count } from "../../src/reading/numbers.ts";
import { asNumbers, column } from "../../src/reading/parameter.ts";
import { text } from "../../src/reading/words.ts";

/** The counts of many flocks, for every function that sets flocks side by side. */
export const flockColumns = {
  flocks: column(text("the name of a flock"), "Name of the flock in each row"),
  lame: asNumbers(column(count("lame sheep"), "Lame sheep of the flock")),
  seen: asNumbers(column(count("sheep looked at"), "Sheep of the flock looked at, the same rows")),
};

/** The rules for flocks, said under every function that reads them. */
export const flockNotes = [
  "Rows of one flock are added up; names that differ only in capitals or spaces are one flock. Leave total rows out of the ranges.",
  "Rows that are blank in every column are left out. A row with a count missing is refused.",
];
