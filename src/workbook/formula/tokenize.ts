type TokenKind =
  | "text"
  | "number"
  | "error"
  | "name"
  | "quoted"
  | "bracket"
  | "open"
  | "close"
  | "separator"
  | "operator"
  | "space";

export interface Token {
  readonly kind: TokenKind;
  /** As it stands in the formula, quotes and brackets included: the tokens joined are the formula. */
  readonly text: string;
}

const starts: readonly (readonly [TokenKind, RegExp])[] = [
  ["space", /[ \t\r\n\u00a0]+/y],
  ["text", /"[^"]*(?:""[^"]*)*"/y],
  ["quoted", /'[^']*(?:''[^']*)*'/y],
  [
    "error",
    /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA|FIELD!|BLOCKED!|UNKNOWN!|CONNECT!|BUSY!)/iy,
  ],
  // A row on its own (`1:3`, `$1:$3`) is a number here; the colon tells.
  ["number", /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y],
  ["name", /[\p{L}_\\$][\p{L}\p{N}\p{M}_.\\$?]*/uy],
  ["open", /[({]/y],
  ["close", /[)}]/y],
  ["separator", /[,;]/y],
  ["operator", /<=|>=|<>|[-+*/^&=<>%:!@#~|]/y],
];

/**
 * A stored formula in its pieces, so that text inside quotes is never taken for a function or a cell.
 *
 * @param formula - without `=`
 * @returns the pieces in order; undefined when it is no formula that can be read
 * @example
 * tokenize('A1&"B1"') // → name A1, operator &, text "B1"
 */
export function tokenize(formula: string): readonly Token[] | undefined {
  const tokens: Token[] = [];
  let at = 0;
  while (at < formula.length) {
    const token = formula[at] === "[" ? bracket(formula, at) : plain(formula, at);
    if (token === undefined) return undefined;
    tokens.push(token);
    at += token.text.length;
  }
  return tokens;
}

function plain(formula: string, at: number): Token | undefined {
  for (const [kind, pattern] of starts) {
    pattern.lastIndex = at;
    const match = pattern.exec(formula);
    if (match) return { kind, text: match[0] };
  }
  return undefined;
}

// Brackets nest, and a quote mark inside them makes the next character an ordinary one.
function bracket(formula: string, from: number): Token | undefined {
  let depth = 0;
  for (let at = from; at < formula.length; at += 1) {
    const sign = formula[at];
    if (sign === "'") at += 1;
    else if (sign === "[") depth += 1;
    else if (sign === "]") {
      depth -= 1;
      if (depth === 0) return { kind: "bracket", text: formula.slice(from, at + 1) };
    }
  }
  return undefined;
}

/** The next token that is not white space, by its place; the length of the list when there is none. */
export function nextSolid(tokens: readonly Token[], from: number): number {
  let at = from;
  while (tokens[at]?.kind === "space") at += 1;
  return at;
}

/** Whether the name at this place is called: `SUM (…`. */
export const isCall = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.kind === "name" && tokens[at + 1]?.kind === "open" && tokens[at + 1]?.text === "(";

export const joinTokens = (tokens: readonly Token[]): string => tokens.map(({ text }) => text).join("");
