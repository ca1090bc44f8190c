/** Whether an attribute says yes, in any of the words of the format (ECMA-376 Part 1 §22.9.2.7, ST_OnOff); undefined is no. */
export const isYes = (value: string | undefined): boolean => value === "1" || value === "true" || value === "on";
