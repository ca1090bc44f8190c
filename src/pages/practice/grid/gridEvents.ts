import type { Box } from "./cellBox.ts";
import type { Link } from "./links.ts";

/** What is to be said of the selected cell. */
export interface Selected {
  readonly sheet: string;
  readonly address: string;
  /** As the cell shows it. */
  readonly shown: string;
  readonly formula: string | undefined;
  /** What the function in it said when it refused. */
  readonly message: string | undefined;
  /** What is to be said at the cell itself: what the function said, or what is doubtful. */
  readonly sentence: string | undefined;
  /** What is wanted there: by the workbook, or instead of a date that is none for certain. */
  readonly wanted: string | undefined;
  /** What the workbook offers to pick from. */
  readonly choices: readonly string[];
  readonly link: Link | undefined;
}

/** A cell that holds something doubtful, in words. */
export interface Doubt {
  /** With its sheet, as `place` is given to `go`. */
  readonly address: string;
  readonly sentence: string;
}

/** A cell in the window of which something is to be said. */
export interface Pointed {
  readonly cell: Box;
  readonly sentence: string;
}

export interface GridEvents {
  /** Another cell is selected, or what it holds is another. */
  readonly onSelected: (selected: Selected) => void;
  readonly onCalculating: (calculating: boolean) => void;
  /** What a cell holds was changed, and not by working it out. */
  readonly onChanged: () => void;
  /** What was just typed or pasted is doubtful in some cells; none when it is doubtful in none. */
  readonly onDoubts: (doubts: readonly Doubt[]) => void;
  /** The sheet was scrolled, or lies elsewhere in the window. */
  readonly onMoved: () => void;
  /** The pointer rests on a cell of which something is to be said, or on none. */
  readonly onPointed: (pointed: Pointed | undefined) => void;
  /** Something is being typed into the selected cell, or no longer. */
  readonly onEditing: (editing: boolean) => void;
  /** A formula is being typed: what stands before the caret; undefined once that is over. */
  readonly onTyping: (before: string | undefined) => void;
  /** The person asked for something that would move cells about. */
  readonly onRefused: () => void;
}
