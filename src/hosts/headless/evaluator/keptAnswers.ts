import type { Cell } from "../../../cells/cell.ts";

const mostKept = 100_000;

/** Answers to questions that are asked in many rows with the same words. */
export class KeptAnswers {
  readonly #known = new Map<string, Cell>();

  forget(): void {
    this.#known.clear();
  }

  of(question: string, workOut: () => Cell): Cell {
    const before = this.#known.get(question);
    if (before !== undefined) return before;
    const answer = workOut();
    if (this.#known.size >= mostKept) this.#known.clear();
    this.#known.set(question, answer);
    return answer;
  }
}
