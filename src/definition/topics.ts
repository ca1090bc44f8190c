/** The topics, in the order of the work. */
export const topics = {
  counting: "How many are lame",
  watching: "Is it getting better",
  animals: "Who, how often, how fast",
  dates: "Withdrawal, rechecks, quarantine",
  treatment: "What to do and how much",
  medicines: "How much medicine is used",
  planning: "How many to look at, what it costs",
  benchmarking: "Flock against flock",
  records: "Clean before you count",
} as const;

export type Topic = keyof typeof topics;

/** The page in docs/methods of each topic that has one. */
export const methodPages: Readonly<Partial<Record<Topic, string>>> = {
  counting: "counting.md",
  watching: "watching.md",
  planning: "planning.md",
  benchmarking: "benchmarking.md",
};
