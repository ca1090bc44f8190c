/** Ten flocks for a funnel, wholly invented: one small and one large lie out of line. */
export const inventedFlocks = {
  flocks: [
    "Flock 1",
    "Flock 2",
    "Flock 3",
    "Flock 4",
    "Flock 5",
    "Flock 6",
    "Flock 7",
    "Flock 8",
    "Flock 9",
    "Flock 10",
  ],
  lame: [2, 4, 21, 9, 14, 11, 22, 17, 62, 31],
  seen: [40, 60, 90, 130, 180, 240, 300, 380, 520, 700],
} as const;
