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

interface Start {
  readonly kind: TokenKind;
  /** What it may begin with. */
  readonly first: RegExp;
  readonly whole: RegExp;
}

const starts: readonly Start[] = [
  { kind: "space", first: /[ \t\r\n\u00a0]/, whole: /[ \t\r\n\u00a0]+/y },
  { kind: "text", first: /"/, whole: /"[^"]*(?:""[^"]*)*"/y },
  { kind: "quoted", first: /'/, whole: /'[^']*(?:''[^']*)*'/y },
  {
    kind: "error",
    first: /#/,
    whole:
      /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA|FIELD!|BLOCKED!|UNKNOWN!|CONNECT!|BUSY!)/iy,
  },
  // A row on its own (`1:3`, `$1:$3`) is a number here; the colon tells.
  { kind: "number", first: /[\d.]/, whole: /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y },
  { kind: "name", first: /[\p{L}_\\$]/u, whole: /[\p{L}_\\$][\p{L}\p{N}\p{M}_.\\$?]*/uy },
  { kind: "open", first: /[({]/, whole: /[({]/y },
  { kind: "close", first: /[)}]/, whole: /[)}]/y },
  { kind: "separator", first: /[,;]/, whole: /[,;]/y },
  { kind: "operator", first: /[-<>+*/^&=%:!@#~|]/, whole: /<=|>=|<>|[-+*/^&=<>%:!@#~|]/y },
];

const signsOfAscii = 128;

/** What each sign may begin: to try all of them in turn would be most of reading a formula. */
const startsBySign: readonly (readonly Start[])[] = Array.from({ length: signsOfAscii }, (_, code) =>
  starts.filter(({ first }) => first.test(String.fromCharCode(code))),
);

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
  for (const { kind, whole } of startsBySign[formula.charCodeAt(at)] ?? starts) {
    whole.lastIndex = at;
    if (whole.test(formula)) return { kind, text: formula.slice(at, whole.lastIndex) };
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
