import { type Cell, errorCodes } from "../../src/cells/cell.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";

/** Numbers that break arithmetic, dates and whole numbers. */
const numbers: readonly number[] = [
  0,
  -0,
  1,
  -1,
  0.1,
  1 / 3,
  2.5,
  1e-7,
  Number.MIN_VALUE,
  Number.EPSILON,
  Number.MAX_SAFE_INTEGER,
  Number.MAX_SAFE_INTEGER + 2,
  Number.MAX_VALUE,
  -Number.MAX_VALUE,
  1e15,
  1e16,
  1e21,
  1e300,
  999012345600042,
  59,
  60,
  61,
  32874,
  45351,
  46095,
  46095.4375,
  73415.999999,
  73416,
  1048576,
];

const texts: readonly string[] = [
  "",
  " ",
  "\u00a0",
  "\u200b",
  "\ufeff",
  "0",
  "12",
  " 3.5 ",
  "3,5",
  "1e999",
  "0x10",
  "１２",
  "٣",
  "5%",
  "28d",
  "2026-03-14",
  "2026-02-30",
  "2026-03-14 10:30",
  "03/04/2026",
  "14 März",
  "yes",
  "no",
  "TRUE",
  "-",
  "n/a",
  "#N/A",
  "=1+1",
  "+1",
  "@SUM(A1)",
  '=HYPERLINK("https://example.org","x")',
  "\t=1",
  "'",
  '"',
  "a\nb",
  "\u0000",
  "\u0007",
  "all",
  "ALL",
  "constructor",
  "__proto__",
  "toString",
  "Füße",
  "μάτι",
  "копыто",
  "蹄",
  "قدم",
  "🐑🐑",
  "e\u0301",
  "\ud800",
  "ZZ 0 123456 00042",
  "ZZ 0123456 42",
  "9.99012E+14",
  "footrot",
  "scald",
  "lame",
  "LF, RH",
  "x".repeat(33_000),
];

const notSpreadsheetNumbers: readonly number[] = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

/** Anything that a spreadsheet, or a fault of one, may hand over as a cell. */
export function hostileCell(random: SeededRandom): Cell {
  const sort = random.share();
  if (sort < 0.1) return null;
  if (sort < 0.2) return { error: random.pick(errorCodes) };
  if (sort < 0.26) return random.happens(0.5);
  if (sort < 0.28) return random.pick(notSpreadsheetNumbers);
  if (sort < 0.5) return random.pick(numbers);
  if (sort < 0.6) return (random.share() - 0.5) * 10 ** random.whole(-8, 20);
  if (sort < 0.68) return random.whole(-3, 400);
  if (sort < 0.95) return random.pick(texts);
  return String.fromCodePoint(
    ...Array.from({ length: random.whole(1, 12) }, () => random.whole(1, random.pick([127, 0x7ff, 0xd7ff]))),
  );
}
