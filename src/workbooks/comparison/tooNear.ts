/** What TARGETCHECK says of a share that lies too near the target, and the same for a column of a table. */
export const tooNear = [
  "the share seen is so near the target that 1000 more gathers like these would not tell the two apart",
  "too near the target to tell",
] as const;
