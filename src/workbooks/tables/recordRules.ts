import type { Rule } from "../writing/sheetAuthor.ts";

/** A day that has come. */
export const pastDay = (what: string): Rule => ({
  of: { date: ["DATE(1990,1,1)", "as_of"] },
  words: `Type the day ${what}, such as 2026-03-14; not a day to come.`,
});

/** What stands in a list of the settings. */
export const listed = (list: string, words: string): Rule => ({ of: { list }, words });

/** What stands in a list of the settings, or something else after a warning. */
export const usuallyListed = (list: string, what: string): Rule => ({
  of: { list },
  words: `${what} is not in the list on the sheet Settings. Use it all the same?`,
  lenient: true,
});

export const groupListed = usuallyListed("group_list", "This group");
