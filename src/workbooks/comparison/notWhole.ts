/** Whether counts of sheep are below none, or no whole ones, as a formula of their cells. */
export const notWhole = (seen: string, lame: string): string =>
  `OR(${seen}<0,${lame}<0,INT(${seen})<>${seen},INT(${lame})<>${lame})`;
