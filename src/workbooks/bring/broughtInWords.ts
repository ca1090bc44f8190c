import type { Brought, LeftBehind } from "./bringRecords.ts";
import { plainHeading } from "./matchHeadings.ts";

/** What became of the records that were brought, for a person to read. */
export interface BroughtInWords {
  /** @example "118 of 120 rows brought." */
  readonly total: string;
  /** A line for each place: where from, where to, rows there, rows brought; headings first. */
  readonly places: readonly (readonly string[])[];
  /** What the headings were taken for that are not called as in the book: where, what, and for what. */
  readonly headings: readonly (readonly string[])[];
  /** What else there is to tell, each list only where there is something in it. */
  readonly lists: readonly { readonly title: string; readonly lines: readonly (readonly string[])[] }[];
}

/** Says what was brought, what each heading was taken for, and names every row and cell that asks for a person. */
export function broughtInWords({ places, leftBehind, toMend, notes }: Brought): BroughtInWords {
  const total = (key: "rowsIn" | "rowsOut"): number => places.reduce((sum, place) => sum + place[key], 0);
  const lists = [
    {
      title: "Not brought",
      lines: leftBehind.map((behind) => [`${behind.place}, ${rowsInWords(behind)}`, behind.why]),
    },
    {
      title: "Brought as they stand, to be mended in the new book",
      lines: toMend.map(({ place, row, what }) => [`${place}, row ${row}`, what]),
    },
    { title: "To know", lines: notes.map((note) => [note]) },
  ];
  return {
    total: `${total("rowsOut")} of ${total("rowsIn")} rows brought.`,
    places: [
      ["from", "into", "rows there", "brought"],
      ...places.map(({ place, into, rowsIn, rowsOut }) => [place, into, String(rowsIn), String(rowsOut)]),
    ],
    headings: places.flatMap(({ place, headings }) =>
      headings.flatMap(([heading, as]) =>
        plainHeading(heading) === plainHeading(as) ? [] : [[place, heading, `taken for ${as}`]],
      ),
    ),
    lists: lists.filter(({ lines }) => lines.length > 0),
  };
}

/** @example rowsInWords({ rows: [5, 6, 7, 9], … }) // → "rows 5 to 7, 9" */
function rowsInWords({ rows }: LeftBehind): string {
  const runs: [first: number, last: number][] = [];
  for (const row of rows) {
    const run = runs.at(-1);
    if (run && run[1] === row - 1) run[1] = row;
    else runs.push([row, row]);
  }
  const words = runs.map(([first, last]) => (first === last ? `${first}` : `${first} to ${last}`)).join(", ");
  return `${rows.length === 1 ? "row" : "rows"} ${words}`;
}
