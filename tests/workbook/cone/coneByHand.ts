import type { StoredTable, StoredWorkbook } from "./storedCells.ts";

/** Rows and columns counted from 1, ends included. */
interface Box {
  readonly sheet: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

const mostRows = 1_048_576;
const mostColumns = 16_384;

const numberOf = (letters: string): number =>
  [...letters].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0);

const corner = /^([A-Z]{1,3})?(\d+)?$/;

/** A1, A1:B2, A:B or 1:2. */
function boxOf(area: string, sheet: number): Box {
  const [from = "", to = from] = area.replaceAll("$", "").toUpperCase().split(":");
  const [, left, top] = corner.exec(from) ?? [];
  const [, right, bottom] = corner.exec(to) ?? [];
  const columns = [left ? numberOf(left) : 1, right ? numberOf(right) : mostColumns] as const;
  const rows = [top ? Number(top) : 1, bottom ? Number(bottom) : mostRows] as const;
  return {
    sheet,
    left: Math.min(...columns),
    right: Math.max(...columns),
    top: Math.min(...rows),
    bottom: Math.max(...rows),
  };
}

const meet = (one: Box, other: Box): boolean =>
  one.sheet === other.sheet &&
  one.top <= other.bottom &&
  other.top <= one.bottom &&
  one.left <= other.right &&
  other.left <= one.right;

const isOneCell = ({ top, left, bottom, right }: Box): boolean => top === bottom && left === right;

// A sheet, and after its mark an area or a name; an area, a table with brackets or a name alone.
const onSheet = `(?:('(?:[^']|'')+'|[A-Za-z_][\\w.]*)!)?`;
const areas = String.raw`\$?[A-Za-z]{1,3}\$?\d{1,7}(?::\$?[A-Za-z]{1,3}\$?\d{1,7})?|\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?\d+:\$?\d+`;
const brackets = String.raw`\[(?:[^[\]]|\[[^[\]]*\])*\]`;
const pieces = new RegExp(
  String.raw`${onSheet}(?:(?<![\w.\\])(${areas})(?![\w.(])|(?<![\w.\\])([A-Za-z_\\][\w.]*)(${brackets})?(?!\w|\())`,
  "g",
);

/** The cells that a formula reads, by its text; names are looked into, of a table the columns it names. */
function readsOf(formula: string, sheet: number, book: StoredWorkbook, inside: readonly string[] = []): readonly Box[] {
  const found: Box[] = [];
  const plain = formula.replace(/"(?:[^"]|"")*"/g, '""');
  for (const [, prefix, area, name, bracket] of plain.matchAll(pieces)) {
    const on = prefix === undefined ? sheet : sheetCalled(prefix, book);
    if (area !== undefined) {
      if (on !== undefined) found.push(boxOf(area, on));
      continue;
    }
    const key = (name ?? "").toLowerCase();
    const table = book.tables.find((one) => one.name === key);
    const meaning = book.names.get(key);
    if (table) found.push(...columnsOf(table, bracket));
    else if (meaning !== undefined && !inside.includes(key))
      found.push(...readsOf(meaning, on ?? sheet, book, [...inside, key]));
  }
  return found;
}

const sheetCalled = (prefix: string, { sheets }: StoredWorkbook): number | undefined => {
  const name = prefix.startsWith("'") ? prefix.slice(1, -1).replaceAll("''", "'") : prefix;
  const at = sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  return at === -1 ? undefined : at;
};

function columnsOf({ sheet, area, columns }: StoredTable, bracket = ""): readonly Box[] {
  const all = boxOf(area, sheet);
  const named = columns.flatMap((column, at) =>
    bracket.toLowerCase().includes(column) ? [{ ...all, left: all.left + at, right: all.left + at }] : [],
  );
  return named.length === 0 ? [all] : named;
}

const answersAnew = /\bFOOT[._]|_xldudf_FOOT_|\b(?:TODAY|NOW|RAND|RANDARRAY|RANDBETWEEN|OFFSET|INDIRECT)\(/i;

/** What the names in a formula stand for, so that a clock behind a name is seen. */
function writtenOut(formula: string, { names }: StoredWorkbook): string {
  let text = formula;
  for (let depth = 0; depth < 3; depth += 1)
    text = text.replace(/[A-Za-z_\\][\w.]*/g, (word) => names.get(word.toLowerCase()) ?? word);
  return text;
}

/**
 * The cells outside the cone of FOOT in a file that was worked out: those that no formula fills which calls FOOT, has no
 * value yet or follows the clock, or hangs on such a one. By sheet, as addresses.
 *
 * @param before - the file as it was
 * @param after - the same worked out, for lists that have grown
 */
export function outsideTheCone(before: StoredWorkbook, after: StoredWorkbook): readonly ReadonlySet<string>[] {
  const formulas = before.sheets.flatMap(({ cells }, sheet) =>
    [...cells].flatMap(([address, { formula, fills, hasValue }]) => {
      if (formula === undefined) return [];
      const filled = [fills, after.sheets[sheet]?.cells.get(address)?.fills, address].flatMap((area) =>
        area === undefined ? [] : [boxOf(area, sheet)],
      );
      const seed = !hasValue || answersAnew.test(writtenOut(formula, before));
      return [{ filled, reads: readsOf(formula, sheet, before), seed }];
    }),
  );
  const cone = new Set(formulas.filter(({ seed }) => seed));
  let rest = formulas.filter(({ seed }) => !seed);
  for (const { filled } of cone) {
    const caught = rest.filter(({ reads }) => reads.some((box) => filled.some((one) => meet(one, box))));
    for (const formula of caught) cone.add(formula);
    if (caught.length > 0) rest = rest.filter((formula) => !cone.has(formula));
  }
  const own = before.sheets.map((_, sheet) =>
    [...cone].flatMap(({ filled }) => filled.filter((box) => box.sheet === sheet)),
  );
  const single = own.map((boxes) => new Set(boxes.filter(isOneCell).map(({ top, left }) => top * mostColumns + left)));
  const wide = own.map((boxes) => boxes.filter((box) => !isOneCell(box)));
  return before.sheets.map(({ cells }, sheet) => {
    const addresses = new Set([...cells.keys(), ...(after.sheets[sheet]?.cells.keys() ?? [])]);
    const isOutside = (address: string): boolean => {
      const box = boxOf(address, sheet);
      return !single[sheet]?.has(box.top * mostColumns + box.left) && !wide[sheet]?.some((one) => meet(one, box));
    };
    return new Set([...addresses].filter(isOutside));
  });
}
