/**
 * Raised whenever a foot book of before could not be read as one of now: a heading, a name or a table is called
 * otherwise. Books of before 2 do not say theirs.
 */
export const bookVersion = 2;
