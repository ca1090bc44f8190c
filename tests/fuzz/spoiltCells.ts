import type { Cell, Cells } from "../../src/cells/cell.ts";
import type { Outcome } from "../../src/definition/evaluate.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import { anyCell } from "../../src/reading/words.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { isColumn, parametersOf, type SoundArgument, type SoundCall } from "./soundCall.ts";
import { accepts } from "./soundCell.ts";

/** One cell of a column that nothing can read now. */
interface Spoilt {
  readonly name: string;
  readonly group: string;
  /** 0-based. */
  readonly row: number;
  /** Said of the cell in the answer, with its place. */
  readonly place: string;
}

export interface SpoiltCall {
  readonly call: SoundCall;
  readonly spoilt: readonly Spoilt[];
}

const unreadable: readonly Cell[] = [
  { error: "#REF!" },
  "03/04/2026",
  "14/3",
  -3,
  0.123,
  "?",
  true,
  1e16,
  "28d",
  "perhaps",
  "23 lambs",
  "9.99012E+14",
];

type Faults = Parameter<unknown>["faults"];

/** A sound call in which some cells of its records cannot be read any more; undefined where it has none to spoil. */
export function spoil(call: SoundCall, faults: readonly Faults[], random: SeededRandom): SpoiltCall | undefined {
  const columns = parametersOf(call.definition).filter(
    ([name, { shape, kind, faults: kept }]) =>
      shape === "column" &&
      kind !== anyCell &&
      faults.includes(kept) &&
      isColumn(call.given[name]) &&
      (call.given[name] as readonly Cell[]).length > 1,
  );
  if (columns.length === 0) return undefined;
  const given: Record<string, SoundArgument> = { ...call.given };
  const spoilt: Spoilt[] = [];
  for (let times = random.whole(1, 4); times > 0; times--) {
    const [name, { kind, group }] = random.pick(columns);
    const cells = given[name] as readonly Cell[];
    const row = random.whole(0, cells.length - 1);
    const bad = random.pick(unreadable.filter((cell) => !kind.isBlank(cell) && !accepts(kind, cell)));
    // A row that was blank would become a record.
    if (kind.isBlank(cells[row] as Cell) || spoilt.some((one) => one.name === name && one.row === row)) continue;
    given[name] = cells.map((cell, at) => (at === row ? bad : cell));
    spoilt.push({ name, group, row, place: `${name}, row ${row + 1}: ` });
  }
  return spoilt.length === 0 ? undefined : { call: { ...call, given }, spoilt };
}

const texts = (cells: Cells): readonly string[] =>
  cells.flat().filter((cell): cell is string => typeof cell === "string");

/** What a law says of an answer before and after: words when it is broken. */
type Before = Extract<Outcome, { ok: true }>;
type Check = (before: Before, after: Outcome, spoilt: SpoiltCall, call: SoundCall) => string | undefined;

const columnOf = (call: SoundCall, name: string): readonly Cell[] =>
  (call.given[name] as readonly Cell[] | undefined) ?? [];

/** Animals whose records were touched; and whether a record may be any animal's now. */
function concerned({ spoilt }: SpoiltCall, call: SoundCall, tags = "tags") {
  const rows = spoilt.filter(({ group }) => group === "rows");
  return {
    animals: new Set(rows.map(({ row }) => String(columnOf(call, tags)[row]))),
    any: rows.some(({ name, row }) => name === tags || columnOf(call, tags)[row] === null || name === "groups"),
  };
}

const body = ({ cells }: Before): Cells => cells.slice(1);
const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

const unanswered = (after: Outcome): string | undefined => (after.ok ? undefined : `it was refused: ${after.message}`);

const eachRow: Check = (before, after, { spoilt }) => {
  if (!after.ok) return unanswered(after);
  for (let row = 0; row < before.cells.length; row++) {
    const [was, is] = [before.cells[row]?.[0], after.cells[row]?.[0]];
    const isSpoilt = spoilt.some((one) => one.row === row);
    if (!isSpoilt && !same(was, is)) return `row ${row + 1} was ${was} and is ${is}`;
    if (isSpoilt && typeof is === "number") return `row ${row + 1} is ${is} in spite of all`;
  }
  return undefined;
};

/** As each row, but with tags a record says something of the other rows of its animal. */
const secondLooks: Check = (before, after, spoilt, call) => {
  if (call.given.tags === undefined || !after.ok) return eachRow(before, after, spoilt, call);
  const touched = concerned(spoilt, call);
  for (let row = 0; row < before.cells.length; row++) {
    const [was, is] = [before.cells[row]?.[0], after.cells[row]?.[0]];
    if (touched.animals.has(String(columnOf(call, "tags")[row]))) continue;
    if (!same(was, is)) return `row ${row + 1} was ${was} and is ${is}`;
  }
  return undefined;
};

const safety = ["no treatment recorded", "clear", "hold"];

const saleCheck: Check = (before, after, spoilt, call) => {
  if (!after.ok) return unanswered(after);
  const touched = concerned(spoilt, call);
  const unreadableSale = new Set(spoilt.spoilt.filter(({ name }) => name === "sale_tags").map(({ row }) => row));
  const groupSpoilt = new Set(spoilt.spoilt.filter(({ name }) => name === "sale_groups").map(({ row }) => row));
  for (const [row, [tag, was, ...rest]] of body(before).entries()) {
    const [shown, is, ...now] = after.cells[row + 1] ?? [];
    if (unreadableSale.has(row)) {
      if (is !== "hold") return `sale row ${row + 1} cannot be read and is ${is}`;
      continue;
    }
    if (shown !== tag) return `sale row ${row + 1} is ${shown}`;
    const isTouched = touched.any || touched.animals.has(String(tag)) || groupSpoilt.has(row);
    if (!isTouched && !same([was, rest], [is, now])) return `${tag} was ${was} and is ${is}`;
    if (was === "hold" && is !== "hold") return `${tag} was held and is ${is}`;
    if (!touched.any && safety.indexOf(String(is)) < safety.indexOf(String(was)))
      return `${tag} was ${was} and is ${is}`;
    const [dated, dates] = [rest[0], now[0]];
    if (typeof dated === "number" && typeof dates === "number" && dates < dated && was === "hold")
      return `${tag} is clear earlier`;
  }
  return undefined;
};

const nobody: ReadonlySet<string> = new Set(["every animal is clear", "no treatments recorded"]);

const notClear: Check = (before, after, spoilt, call) => {
  if (!after.ok) return unanswered(after);
  const touched = concerned(spoilt, call);
  const now = body(after);
  const all = now.some(([tag]) => tag === "every animal" || String(tag).startsWith("every animal of group"));
  const none = before.cells.length === 2 && nobody.has(String(before.cells[1]?.[0]));
  for (const line of none ? [] : body(before)) {
    const found = now.find(([tag]) => tag === line[0]);
    if (found === undefined && !all) return `${line[0]} is listed no more`;
    if (!touched.any && !touched.animals.has(String(line[0])) && !same(line, found)) return `${line[0]} has changed`;
  }
  if (touched.any) return undefined;
  for (const [tag] of now)
    if (!touched.animals.has(String(tag)) && !body(before).some(([was]) => was === tag) && !(none && now.length === 1))
      return `${tag} is listed though nothing of it was touched`;
  return undefined;
};

const animalClear: Check = (before, after, spoilt, call) => {
  const touched = concerned(spoilt, call);
  const was = before.cells[0]?.[0];
  const isTouched = touched.any || touched.animals.has(String(call.given.tag));
  if (!isTouched) return after.ok && same(before.cells, after.cells) ? undefined : "another animal's record changed it";
  if (!after.ok) return undefined;
  const is = after.cells[0]?.[0];
  if (typeof was === "number" && !(typeof is === "number" && is >= was)) return `${was} became ${is}`;
  return undefined;
};

/** Tables in which the tag comes first, and a line for any animal stands where one cannot be told. */
const listed =
  (anyone: readonly string[], isTheSame: (was: readonly Cell[], is: readonly Cell[]) => boolean): Check =>
  (before, after, spoilt, call) => {
    if (!after.ok) return unanswered(after);
    const touched = concerned(spoilt, call);
    const now = body(after);
    const covers = now.some(([tag]) => anyone.includes(String(tag)));
    const empty = body(before)[0]
      ?.slice(1)
      .every((cell) => cell === "");
    for (const line of empty ? [] : body(before)) {
      const own = now.filter(([tag]) => tag === line[0]);
      if (own.length === 0 && !covers) return `${line[0]} is listed no more`;
      if (!touched.any && !touched.animals.has(String(line[0])) && !own.some((found) => isTheSame(line, found)))
        return `${line[0]} has changed`;
    }
    return undefined;
  };

const caseTable: Check = (before, after, spoilt, call) => {
  if (!after.ok) return unanswered(after);
  const touched = concerned(spoilt, call);
  const others = (cells: Cells): Cells =>
    cells
      .slice(1)
      .filter(([tag, number]) => number !== "not known" && number !== "" && !touched.animals.has(String(tag)));
  if (!same(others(before.cells), others(after.cells))) return "the cases of another animal changed";
  const rows = new Set(spoilt.spoilt.map(({ row }) => row)).size;
  const told = after.cells.filter(([, number]) => number === "not known").length;
  return told === rows ? undefined : `${rows} rows cannot be read and ${told} are told of`;
};

const caseNumber: Check = (before, after, spoilt, call) => {
  const touched = concerned(spoilt, call);
  if (!after.ok) return touched.any || touched.animals.size > 0 ? undefined : unanswered(after);
  const asked = spoilt.spoilt.filter(({ group }) => group === "asked").map(({ row }) => row);
  const tags = call.given.tag;
  for (let row = 0; row < before.cells.length; row++) {
    const [was, is] = [before.cells[row]?.[0], after.cells[row]?.[0]];
    if (asked.includes(row)) {
      if (typeof is === "number") return `row ${row + 1} cannot be read and is ${is}`;
      continue;
    }
    const tag = String(isColumn(tags) ? tags[row] : tags);
    if (typeof is === "number" && is !== was) return `row ${row + 1} was ${was} and is ${is}`;
    if (!touched.any && !touched.animals.has(tag) && !same(was, is)) return `row ${row + 1} was ${was} and is ${is}`;
  }
  return undefined;
};

/** What holds, by function, when cells of the records are spoilt. */
export const spoiltChecks: Readonly<Record<string, Check>> = {
  CLEARDATE: eachRow,
  RECHECKDUE: eachRow,
  RECHECKSTATE: secondLooks,
  SALECHECK: saleCheck,
  NOTCLEAR: notClear,
  ANIMALCLEAR: animalClear,
  KEEPAPART: listed(["any animal"], (was, is) => same(was, is)),
  DUELIST: listed(["not known"], (was, is) => same(was, is)),
  REPEATS: listed(["any animal"], (was, is) => same(was, is)),
  NOTSOUND: listed(["any animal"], (was, is) => same(was, is)),
  CASETABLE: caseTable,
  CASENO: caseNumber,
};

/** Whether the words of an answer name the topmost of the rows that were spoilt. */
export const namesFirst = (cells: Cells, spoilt: readonly Spoilt[]): boolean => {
  const first = Math.min(...spoilt.map(({ row }) => row));
  const places = spoilt.filter(({ row }) => row === first).map(({ place }) => place);
  return texts(cells).some((text) => places.some((place) => text.includes(place)));
};
