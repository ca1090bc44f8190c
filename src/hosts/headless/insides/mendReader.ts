import type { LexerTreeBuilder } from "@univerjs/engine-formula";

interface State {
  _resetTemp: () => void;
  _squareBracketState: number;
  _tableBracketState: boolean;
}

const namesValues = /\b(?:LET|LAMBDA)\s*\(/i;

/**
 * Mends how the embedded spreadsheet reads formulas; look at it again when its version changes, since this wraps a
 * private method.
 *
 * - It leaves square brackets open that were open in a formula half typed, `=SUM(Gathers[`, and from then on reads
 *   every other formula wrongly.
 * - It keeps what it has read, also for another workbook or another engine in the page. Working out a LET changes what
 *   was kept of it, and the second answer is another one.
 */
export function mendReader(reader: LexerTreeBuilder): void {
  const state = reader as unknown as State;
  const reset = state._resetTemp.bind(reader);
  state._resetTemp = () => {
    reset();
    state._squareBracketState = 0;
    state._tableBracketState = false;
  };
  const read = reader.treeBuilder.bind(reader);
  reader.treeBuilder = (formula, ...others) => {
    const tree = read(formula, ...others);
    // This lets go of everything kept, and of nothing else.
    if (namesValues.test(formula)) reader.dispose();
    return tree;
  };
}
