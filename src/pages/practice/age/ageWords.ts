/** What the practice sheet says of the age of the answers it shows. */
export const ageWords = {
  workingOut: (file: string): string => `Working out every formula of ${file}…`,
  workedOut: "Every formula has just been worked out.",
  old: {
    saved: "The answers shown are those the file came with, and may be older than its records.",
    day: "It is another day than when this was worked out. What goes by today’s date may be of yesterday.",
  },
  workOut: "Work everything out",
} as const;
