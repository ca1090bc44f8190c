/** Where a command writes. Answers go to standard output, progress to the terminal only. */
export interface Terminal {
  readonly say: (text: string) => void;
  /** Shown while long work goes on, and gone afterwards; nothing when nobody is looking. */
  readonly progress: (words: string) => void;
  readonly progressDone: () => void;
}

/** One word after `soundfold`. */
export interface Command {
  readonly name: string;
  /** What follows the name, as help shows it. */
  readonly takes: string;
  readonly summary: string;
  /** What its own help adds: the options and what happens to files, in lines of at most 90 letters. */
  readonly details: string;
  /** @throws BadInput when the arguments or files cannot be worked with */
  readonly run: (given: readonly string[], terminal: Terminal) => Promise<void>;
}
