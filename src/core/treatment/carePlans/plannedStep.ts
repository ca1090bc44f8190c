/** What is known about the animal and its flock. */
export interface Findings {
  readonly flockHasFootrot: boolean;
  readonly flockHasCodd: boolean;
  readonly pusDrained: boolean;
  readonly severe: boolean;
}

export type Condition = (found: Findings) => boolean;

/** One step of a plan as it is written down once; `when` says for which animals it holds, all when left out. */
export interface PlannedStep {
  readonly what: string;
  readonly why: string;
  readonly caution?: string;
  /** A medicine is given or decided on: the step then always sends the reader to the vet and the data sheet. */
  readonly medicine?: true;
  readonly when?: Condition;
}

/**
 * The same steps, held to one more condition.
 *
 * @example
 * onlyWhen(({ severe }) => severe, [{ what: "To the vet.", why: "" }])[0].when({ severe: false }) // → false
 */
export const onlyWhen = (condition: Condition, steps: readonly PlannedStep[]): readonly PlannedStep[] =>
  steps.map((step) => ({ ...step, when: (found) => condition(found) && (step.when?.(found) ?? true) }));
