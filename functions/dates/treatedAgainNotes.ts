/** What both functions on second looks say of an animal that is treated again. */
export const treatedAgainNotes: readonly string[] = [
  "With treated, whoever treats an animal again has looked at it: a later treatment, with a second look of its own, stands for the earlier look, and two medicines of one day are one look, done when either row says so.",
  "A treatment of which tag or day cannot be read, or whose tag is only alike, stands for no look.",
];
