import type { Cell, Cells } from "../../src/cells/cell.ts";
import { days1904 } from "../../src/cells/day.ts";
import { evaluate, type Outcome } from "../../src/definition/evaluate.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { anyCell, tag } from "../../src/reading/words.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import type { AnswerCell } from "../../src/writing/result.ts";
import { moveDaysInText } from "./moveDaysInText.ts";
import { isColumn, parametersOf, type SoundArgument, type SoundCall } from "./soundCall.ts";
import { accepts } from "./soundCell.ts";
import { namesFirst, spoil, spoiltChecks } from "./spoiltCells.ts";

/**
 * How the answer must move when the call is changed in a way whose effect is known without computing anything.
 * Nothing is given back when the law holds, or says nothing about the call; words when it is broken.
 */
export type Law = (call: SoundCall, answer: Outcome, random: SeededRandom) => string | undefined;

const toArgument = (argument: SoundArgument): Argument =>
  isColumn(argument) ? argument.map((cell) => [cell]) : (argument as Argument);

export const argumentsOf = ({ definition, given }: SoundCall): readonly Argument[] =>
  parametersOf(definition).map(([name]) => toArgument(given[name]));

const answerTo = (call: SoundCall): Outcome => evaluate(call.definition, argumentsOf(call));

/** The same call with each argument changed, or not, by what is known of its parameter. */
const changed = (
  call: SoundCall,
  change: (argument: SoundArgument, name: string, parameter: Parameter<unknown>) => SoundArgument,
): SoundCall => ({
  ...call,
  given: Object.fromEntries(
    parametersOf(call.definition).map(([name, parameter]) => [name, change(call.given[name], name, parameter)]),
  ),
});

const eachCell = (argument: SoundArgument, change: (cell: Cell) => Cell): SoundArgument =>
  isColumn(argument) ? argument.map(change) : argument === undefined ? undefined : change(argument as Cell);

/** Raw cells are reported on as they are, so the laws of kinds say nothing about them. */
const readsRaw = ({ definition }: SoundCall): boolean =>
  parametersOf(definition).some(([, { shape, kind }]) => shape === "block" || kind === anyCell);

/** The columns of each group that has rows to speak of: one cell stands for itself or for every row. */
function groupHeights({ definition, given }: SoundCall): ReadonlyMap<string, number> {
  const heights = new Map<string, number>();
  for (const [name, { group }] of parametersOf(definition)) {
    const argument = given[name];
    if (isColumn(argument) && argument.length > 1) heights.set(group, argument.length);
  }
  return heights;
}

const inGroups = (
  call: SoundCall,
  heights: ReadonlyMap<string, number>,
  change: (cells: readonly Cell[], group: string) => readonly Cell[],
): SoundCall =>
  changed(call, (argument, _, { group }) =>
    isColumn(argument) && argument.length > 1 && heights.has(group) ? change(argument, group) : argument,
  );

// Sums in another order and fits from them differ in their last digits; a fit by iteration in a few more.
const closeness = ({ definition }: SoundCall): number => (definition.name === "SHRUNKPREV" ? 1e-4 : 1e-9);

function difference(wanted: Outcome, got: Outcome, near: number): string | undefined {
  if (!wanted.ok || !got.ok) {
    const [one, other] = [wanted, got].map((outcome) => (outcome.ok ? "an answer" : outcome.message));
    return one === other ? undefined : `${one} became ${other}`;
  }
  return sameCells(wanted.cells, got.cells, near)
    ? undefined
    : `${JSON.stringify(wanted.cells)} became ${JSON.stringify(got.cells)}`;
}

const sameCells = (wanted: Cells, got: Cells, near: number): boolean =>
  wanted.length === got.length &&
  wanted.every(
    (row, r) => row.length === got[r]?.length && row.every((cell, c) => sameCell(cell, got[r]?.[c] as Cell, near)),
  );

const sameCell = (one: Cell, other: Cell, near: number): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= near * Math.max(1, Math.abs(one), Math.abs(other))
    : one === other;

const mapTexts = (outcome: Outcome, change: (text: string) => string): Outcome =>
  outcome.ok
    ? {
        ...outcome,
        cells: outcome.cells.map((row) => row.map((cell) => (typeof cell === "string" ? change(cell) : cell))),
      }
    : { ...outcome, message: change(outcome.message) };

const isAlongside = ({ definition }: SoundCall): boolean => definition.result.shape === "alongside";
const ownGroup = ({ definition }: SoundCall): string => definition.result.group ?? "rows";

const again: Law = (call, answer) => difference(answer, answerTo(call), 0);

/** Blank rows among and after the records change the rows that are named, and leave their places blank. */
const blankRows: Law = (call, answer, random) => {
  const heights = groupHeights(call);
  if (heights.size === 0 || readsRaw(call)) return undefined;
  // For each group, the new 0-based row of each old row.
  const places = new Map([...heights].map(([group, height]) => [group, spread(height, random)]));
  const fresh = inGroups(call, heights, (cells, group) => {
    const rows = places.get(group) as readonly number[];
    const spaced: Cell[] = Array.from({ length: (rows.at(-1) ?? 0) + 1 + ((heights.get(group) ?? 0) % 3) }, () =>
      random.pick([null, "", " "]),
    );
    rows.forEach((index, row) => {
      spaced[index] = cells[row] as Cell;
    });
    return spaced;
  });
  const argument = answer.ok ? undefined : /^[a-z0-9_]+/.exec(answer.message)?.[0];
  const group = call.definition.parameters[argument ?? ""]?.group ?? "rows";
  const rows = places.get(group) ?? [];
  const moved = mapTexts(answer, (text) =>
    text.replace(/\brow (\d+)/g, (_, row: string) => `row ${(rows[Number(row) - 1] ?? Number(row) - 1) + 1}`),
  );
  const got = answerTo(fresh);
  const own = places.get(ownGroup(call));
  if (!moved.ok || !isAlongside(call) || own === undefined) return difference(moved, got, 0);
  const spacedOut: AnswerCell[][] = [];
  moved.cells.forEach((row, index) => {
    spacedOut[own[index] as number] = [...row];
  });
  return difference(withoutTail({ ...moved, cells: Array.from(spacedOut, (row) => row ?? [""]) }), withoutTail(got), 0);
};

/** A range up to its last filled row gives no cells below it. */
const withoutTail = (outcome: Outcome): Outcome => {
  if (!outcome.ok) return outcome;
  const cells = [...outcome.cells];
  while (cells.at(-1)?.[0] === "") cells.pop();
  return { ...outcome, cells };
};

function spread(height: number, random: SeededRandom): readonly number[] {
  let next = 0;
  return Array.from({ length: height }, () => {
    next += random.happens(0.4) ? random.whole(1, 3) : 0;
    return next++;
  });
}

/** Which of several faulty rows is told of first may change, and nothing else. */
const otherOrder: Law = (call, answer, random) => {
  const heights = groupHeights(call);
  if (heights.size === 0 || readsRaw(call) || !answer.ok) return undefined;
  const orders = new Map([...heights].map(([group, height]) => [group, shuffled(height, random)]));
  const got = answerTo(
    inGroups(call, heights, (cells, group) =>
      (orders.get(group) as readonly number[]).map((from) => cells[from] as Cell),
    ),
  );
  if (!got.ok) return `an answer became ${got.message}`;
  if (isAlongside(call)) {
    const order = orders.get(ownGroup(call));
    if (order === undefined) return difference(answer, got, closeness(call));
    return difference(
      withoutTail({ ...answer, cells: order.map((from) => answer.cells[from] ?? [""]) }),
      withoutTail(got),
      closeness(call),
    );
  }
  if (call.definition.result.shape !== "table") return difference(answer, got, closeness(call));
  const [wanted, sorted] = [answer, got].map((outcome) => sortedRows(withoutTies(call, outcome)));
  return difference(wanted as Outcome, sorted as Outcome, closeness(call));
};

const shuffled = (height: number, random: SeededRandom): readonly number[] =>
  Array.from({ length: height }, (_, index) => ({ place: index, at: random.share() }))
    .sort((one, other) => one.at - other.at)
    .map(({ place }) => place);

/** Cases of two feet that begin on one day are numbered in the order of their records. */
const withoutTies = ({ definition }: SoundCall, outcome: Outcome): Outcome =>
  definition.name === "CASETABLE" && outcome.ok
    ? { ...outcome, cells: outcome.cells.map(([tag, , ...rest]) => [tag as AnswerCell, ...rest]) }
    : outcome;

/** Rows as a set; numbers are rounded for the order only, and which gap of an animal is named first is left out. */
function sortedRows(outcome: Outcome): Outcome {
  if (!outcome.ok) return outcome;
  const rows = outcome.cells.map((row) =>
    row.map((cell) => (typeof cell === "string" && /, row \d+/.test(cell) ? "said with its row" : cell)),
  );
  const key = (row: readonly Cell[]): string =>
    row.map((cell) => (typeof cell === "number" ? cell.toFixed(4) : String(cell))).join("|");
  return { ...outcome, cells: rows.sort((one, other) => (key(one) < key(other) ? -1 : key(one) > key(other) ? 1 : 0)) };
}

/** Columns may lie in a row of the sheet; then an answer alongside them lies too. */
const lyingDown: Law = (call, answer) => {
  const heights = groupHeights(call);
  if (heights.size === 0 || readsRaw(call)) return undefined;
  const got = evaluate(
    call.definition,
    parametersOf(call.definition).map(([name]) => {
      const argument = call.given[name];
      return isColumn(argument) ? [argument] : (argument as Argument);
    }),
  );
  const lies = isAlongside(call) && heights.has(ownGroup(call));
  return difference(
    lies && answer.ok ? { ...answer, cells: [answer.cells.map(([cell]) => cell as AnswerCell)] } : answer,
    got,
    0,
  );
};

const moveDates = (call: SoundCall, days: number): SoundCall =>
  changed(call, (argument, _, { kind }) =>
    kind.holds === "date"
      ? eachCell(argument, (cell) => (typeof cell === "number" && cell > 1 ? cell + days : cell))
      : argument,
  );

const isDate = (format: string | undefined): boolean => format === "date" || format === "date and time";

function moveAnswer(answer: Outcome, days: number): Outcome {
  if (!answer.ok) return answer;
  const cells = answer.cells.map((row) =>
    row.map((cell, column) => (typeof cell === "number" && isDate(answer.formats[column]) ? cell + days : cell)),
  );
  return { ...answer, cells };
}

/** All dates of a call moved by as many days: the dates of its answer move with them, and nothing else changes. */
const laterByDays: Law = (call, answer, random) => {
  // The same month of other years is another month for days moved.
  if (readsRaw(call) || /month/i.test(String(call.given.usual_level))) return undefined;
  const days = random.whole(-400, 400);
  const wanted = mapTexts(moveAnswer(answer, days), (text) => moveDaysInText(text, days));
  return difference(wanted, answerTo(moveDates(call, days)), 1e-9);
};

/** A workbook that counts from 1904 holds smaller numbers for the same days, and gets smaller numbers back. */
const countedFrom1904: Law = (call, answer) => {
  if (readsRaw(call)) return undefined;
  const moved = moveDates(call, -days1904);
  const got = evaluate(call.definition, argumentsOf(moved), { dateSystem: 1904 });
  return difference(moveAnswer(answer, -days1904), got, 1e-9);
};

/** Other names for the same animals give the same answer under those names. */
const renamedTags: Law = (call, answer) => {
  const tagged = parametersOf(call.definition).filter(([, { kind }]) => kind === tag);
  // TAGKEY and its like answer with the tag itself, which the renaming of the answer covers.
  if (tagged.length === 0) return undefined;
  const rename = (text: string): string =>
    text.replace(/\bT(\d+)\b/g, (_, number: string) => `K${Number(number) * 7 + 3}`);
  const renamed = changed(call, (argument, _, { kind }) =>
    kind === tag ? eachCell(argument, (cell) => (typeof cell === "string" ? rename(cell) : cell)) : argument,
  );
  return difference(mapTexts(answer, rename), answerTo(renamed), 0);
};

/** Counts that are pooled, with the columns that say what they belong to. */
const pooled: Readonly<Record<string, readonly [lame: string, seen: string]>> = {
  FLOCKPREV: ["lame", "seen"],
  PREVRANGE: ["lame", "seen"],
  TARGETCHECK: ["lame", "seen"],
  TRUEPREV: ["lame", "seen"],
  PREVBY: ["lame", "seen"],
  PREVTREND: ["lame", "seen"],
  LAMEWATCH: ["lame", "seen"],
  DRIFTWATCH: ["lame", "seen"],
  FUNNEL: ["lame", "seen"],
  SHRUNKPREV: ["lame", "seen"],
  PREVCHANGE: ["lame_before", "seen_before"],
};

/** Where a row without a day is a gather of its own. */
const gatherByRow = new Set(["PREVRANGE", "TARGETCHECK", "PREVBY", "PREVCHANGE"]);

/** A gather written in two rows is the same gather. */
const splitRow: Law = (call, answer, random) => {
  const names = pooled[call.definition.name];
  if (!names || !answer.ok) return undefined;
  // A row that is left out would be left out twice.
  if (answer.cells.flat().some((cell) => String(cell).includes(" left out; "))) return undefined;
  const byChance = /chance/i.test(String(call.given.spread));
  if (gatherByRow.has(call.definition.name) && !isColumn(call.given.dates) && !byChance) return undefined;
  const [lame, seen] = [call.given[names[0]], call.given[names[1]]];
  if (!isColumn(lame) || !isColumn(seen)) return undefined;
  const row = random.whole(0, seen.length - 1);
  const [ill, all] = [lame[row], seen[row]];
  if (typeof ill !== "number" || typeof all !== "number" || all < 2) return undefined;
  const part = random.whole(1, all - 1);
  const illPart = random.whole(Math.max(0, ill - (all - part)), Math.min(ill, part));
  const group = call.definition.parameters[names[0]]?.group;
  const split = changed(call, (argument, name, parameter) => {
    if (!isColumn(argument) || parameter.group !== group) return argument;
    const [first, second] =
      name === names[0]
        ? [illPart, ill - illPart]
        : name === names[1]
          ? [part, all - part]
          : [argument[row], argument[row]];
    return [...argument.slice(0, row), first as Cell, ...argument.slice(row + 1), second as Cell];
  });
  return difference(answer, answerTo(split), closeness(call));
};

/** One cell of the wrong kind in an otherwise sound call is named by its argument and its row, where it is refused. */
const oneBadCell: Law = (call, answer, random) => {
  if (!answer.ok) return undefined;
  const columns = parametersOf(call.definition).filter(
    ([name, { shape, kind, faults }]) =>
      shape === "column" && kind !== anyCell && faults === "refuse" && isColumn(call.given[name]),
  );
  if (columns.length === 0) return undefined;
  const [name, { kind }] = random.pick(columns);
  const cells = call.given[name] as readonly Cell[];
  const bad: Cell = random.pick([{ error: "#REF!" }, "03/04/2026", -3, 0.123, "?", true, 1e16]);
  if (kind.isBlank(bad) || accepts(kind, bad)) return undefined;
  const row = random.whole(0, cells.length - 1);
  const spoiled = changed(call, (argument, at) =>
    at === name ? cells.map((cell, index) => (index === row ? bad : cell)) : argument,
  );
  const got = answerTo(spoiled);
  const alone = cells.length === 1;
  const wanted = alone ? `${name}: ` : `${name}, row ${row + 1}: `;
  if (got.ok) return `${JSON.stringify(bad)} in ${wanted} was answered with ${JSON.stringify(got.cells)}`;
  return got.message.startsWith(wanted)
    ? undefined
    : `${JSON.stringify(bad)} in ${wanted} was refused with ${got.message}`;
};

/**
 * Spoil any cells of the records: every animal that the spoilt rows cannot concern has the answer it had, and none moves
 * towards clear, sound, zero or none.
 */
const spoiltRecords: Law = (call, answer, random) => {
  const check = spoiltChecks[call.definition.name];
  if (check === undefined || !answer.ok) return undefined;
  const spoilt = spoil(call, ["keep", "keep in rows"], random);
  if (spoilt === undefined) return undefined;
  const got = answerTo(spoilt.call);
  const broken = check(answer, got, spoilt, call);
  return broken && `${broken} (spoilt: ${JSON.stringify(spoilt.spoilt)}; ${JSON.stringify(spoilt.call.given)})`;
};

/** Rows that cannot be read are left out of a summary: it is that of the other rows, and says how many and the first. */
const leftOut: Law = (call, answer, random) => {
  // What is left out already would be told of first.
  if (!answer.ok || answer.cells.flat().some((cell) => String(cell).includes(" left out; "))) return undefined;
  const spoilt = spoil(call, ["leave out"], random);
  if (spoilt === undefined) return undefined;
  const rows = new Set(spoilt.spoilt.map(({ row }) => row));
  const got = answerTo(spoilt.call);
  const rest = answerTo(
    changed(call, (argument, _, { faults }) =>
      faults === "leave out" && isColumn(argument) && argument.length > 1
        ? argument.map((cell, row) => (rows.has(row) ? null : cell))
        : argument,
    ),
  );
  if (!got.ok) return rest.ok && rest.cells.length > 2 ? `it was refused: ${got.message}` : undefined;
  if (!namesFirst(got.cells, spoilt.spoilt)) return `the first row left out is not named: ${JSON.stringify(got.cells)}`;
  const cells =
    call.definition.result.shape === "table" ? got.cells.slice(0, -1) : got.cells.map((row) => row.slice(0, -1));
  return difference(rest, { ...got, cells }, 1e-9);
};

export const laws: Readonly<Record<string, Law>> = {
  again,
  blankRows,
  otherOrder,
  lyingDown,
  laterByDays,
  countedFrom1904,
  renamedTags,
  splitRow,
  oneBadCell,
  spoiltRecords,
  leftOut,
};
