/** Milliseconds of a day of 24 hours, as every day of UTC has. */
export const msPerDay = 86_400_000;
