import type { Place } from "../../../workbook/address.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";

/** A formula to be worked out. */
export interface Task extends Place {
  readonly sheet: number;
  /** Worked out when it is asked for. */
  readonly reads: readonly SheetArea[];
  /** Which cells it reads shows only while it is worked out. */
  readonly dynamic: boolean;
  /** The cells beside its own that it fills, as far as is known. */
  fills: readonly Place[];
}

export interface Work {
  /**
   * Works a formula out and puts its answer into the cells.
   *
   * @param watch - to be told of the areas a dynamic formula reads; says whether they are settled
   * @param onChange - to be told of each cell whose content is another than before
   * @returns the cells it fills that were not known to be its own
   */
  readonly evaluate: (
    task: number,
    watch: ((area: SheetArea) => void) | undefined,
    onChange: ((row: number, column: number) => void) | undefined,
  ) => readonly Place[];
  /** Cells were read before they held their answers: what was kept of them is of no use. */
  readonly readTooEarly: () => void;
  /** Leaves a formula that depends on its own answer. */
  readonly keepCircular: (task: number) => void;
}

/** The cells that formulas fill, by column; those that are settled are passed over at once. */
class Pending {
  readonly #sheets = new Map<number, { columns: number[]; byColumn: Map<number, Column> }>();
  /** Where the cells of each formula stand: nearly always one alone, for which no list is made. */
  readonly #first: (Span | undefined)[];
  readonly #others = new Map<number, Span[]>();

  constructor(tasks: readonly Task[]) {
    this.#first = new Array<Span | undefined>(tasks.length);
    const loose = new Map<number, Map<number, { rows: number[]; owners: number[] }>>();
    tasks.forEach(({ sheet, row, column, fills }, owner) => {
      let columns = loose.get(sheet);
      if (!columns) {
        columns = new Map();
        loose.set(sheet, columns);
      }
      addCell(columns, row, column, owner);
      for (const place of fills) addCell(columns, place.row, place.column, owner);
    });
    for (const [sheet, columns] of loose) {
      const byColumn = new Map<number, Column>();
      for (const [column, cells] of columns) byColumn.set(column, this.#inOrder(cells));
      this.#sheets.set(sheet, { columns: [...byColumn.keys()].sort((one, other) => one - other), byColumn });
    }
  }

  #inOrder(cells: { readonly rows: readonly number[]; readonly owners: readonly number[] }): Column {
    const { rows, owners } = isAscending(cells.rows) ? cells : sorted(cells);
    const made: Column = { rows, owners, next: Int32Array.from({ length: rows.length + 1 }, (_, at) => at) };
    owners.forEach((owner, at) => {
      const others = this.#others.get(owner);
      const last = others?.at(-1) ?? this.#first[owner];
      if (last?.column === made && last.to === at) last.to = at + 1;
      else this.#addSpan(owner, { column: made, from: at, to: at + 1 });
    });
    return made;
  }

  #addSpan(owner: number, span: Span): void {
    const others = this.#others.get(owner);
    if (others) others.push(span);
    else if (this.#first[owner]) this.#others.set(owner, [span]);
    else this.#first[owner] = span;
  }

  settle(task: number): void {
    settleSpan(this.#first[task] as Span);
    const others = this.#others.get(task);
    if (others) for (const span of others) settleSpan(span);
  }

  columnsIn({ sheet, area }: SheetArea): readonly number[] {
    const columns = this.#sheets.get(sheet)?.columns ?? [];
    return columns.slice(firstAtLeast(columns, area.left), firstAtLeast(columns, area.right + 1));
  }

  /** The next cell from a row on that is not settled. */
  nextIn(sheet: number, column: number, from: number, to: number): { row: number; owner: number } | undefined {
    const found = this.#sheets.get(sheet)?.byColumn.get(column);
    if (!found) return undefined;
    const at = openFrom(found.next, firstAtLeast(found.rows, from));
    const row = found.rows[at];
    return row !== undefined && row <= to ? { row, owner: found.owners[at] as number } : undefined;
  }
}

interface Column {
  readonly rows: readonly number[];
  readonly owners: readonly number[];
  /** For each cell the next one that is open, itself where it is; shortened as it is followed. */
  readonly next: Int32Array;
}

/** Cells of one formula that follow one another in a column. */
interface Span {
  readonly column: Column;
  readonly from: number;
  to: number;
}

function settleSpan({ column, from, to }: Span): void {
  for (let at = from; at < to; at += 1) column.next[at] = at + 1;
}

function addCell(
  columns: Map<number, { rows: number[]; owners: number[] }>,
  row: number,
  column: number,
  owner: number,
): void {
  const list = columns.get(column);
  if (list) {
    list.rows.push(row);
    list.owners.push(owner);
  } else columns.set(column, { rows: [row], owners: [owner] });
}

const isAscending = (rows: readonly number[]): boolean =>
  rows.every((row, at) => at === 0 || (rows[at - 1] ?? 0) <= row);

function sorted({ rows, owners }: Pick<Column, "rows" | "owners">): Pick<Column, "rows" | "owners"> {
  const order = rows.map((_, at) => at).sort((one, other) => (rows[one] as number) - (rows[other] as number));
  return { rows: order.map((at) => rows[at] as number), owners: order.map((at) => owners[at] as number) };
}

function openFrom(next: Int32Array, from: number): number {
  let end = from;
  while (next[end] !== end) end = next[end] as number;
  for (let at = from; next[at] !== end && at !== end; ) {
    const after = next[at] as number;
    next[at] = end;
    at = after;
  }
  return end;
}

function firstAtLeast(sorted: readonly number[], wanted: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Cells that have changed in a round, to be asked by area. */
class ChangedCells {
  readonly #sheets = new Map<number, Map<number, Set<number>>>();

  add(sheet: number, row: number, column: number): void {
    let columns = this.#sheets.get(sheet);
    if (!columns) {
      columns = new Map();
      this.#sheets.set(sheet, columns);
    }
    const rows = columns.get(column);
    if (rows) rows.add(row);
    else columns.set(column, new Set([row]));
  }

  isIn({ sheet, area: { top, left, bottom, right } }: SheetArea): boolean {
    const columns = this.#sheets.get(sheet);
    if (!columns) return false;
    const wanted =
      right - left < columns.size ? range(left, right) : [...columns.keys()].filter((c) => c >= left && c <= right);
    return wanted.some((column) => {
      const rows = columns.get(column);
      if (!rows) return false;
      if (bottom - top < rows.size) return range(top, bottom).some((row) => rows.has(row));
      for (const row of rows) if (row >= top && row <= bottom) return true;
      return false;
    });
  }
}

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);

// Each round settles the formulas that read cells another formula turned out to fill; more rounds no sheet needs.
const mostRounds = 12;

/**
 * Works formulas out, each after those it rests on: once, and again only where a formula turned out to fill cells that
 * another had read before.
 */
export function workOutInOrder(tasks: readonly Task[], order: readonly number[], work: Work): void {
  const found: (readonly SheetArea[])[] = [];
  const doneAt: number[] = [];
  let clock = 0;
  let dirty: ReadonlySet<number> | undefined;
  for (let round = 0; round < mostRounds; round += 1) {
    const changed = new ChangedCells();
    const surprises: { task: number; at: number; places: readonly Place[] }[] = [];
    const reads = (task: number): readonly SheetArea[] => [...(tasks[task] as Task).reads, ...(found[task] ?? [])];
    const must = (task: number): boolean =>
      dirty === undefined || dirty.has(task) || reads(task).some((area) => changed.isIn(area));
    inOneRound(tasks, order, {
      keepCircular: work.keepCircular,
      evaluate(task, isOpen) {
        if (!must(task)) return none;
        const { sheet, dynamic } = tasks[task] as Task;
        const watching = dynamic ? watchingFor(isOpen) : undefined;
        // In the first round every formula is worked out, whatever has changed.
        const onChange =
          dirty === undefined ? undefined : (row: number, column: number) => changed.add(sheet, row, column);
        const filled = work.evaluate(task, watching?.watch, onChange);
        if (watching) {
          if (watching.open.size > 0) {
            work.readTooEarly();
            return [...watching.open];
          }
          found[task] = watching.seen;
        }
        clock += 1;
        doneAt[task] = clock;
        if (filled.length > 0) surprises.push({ task, at: clock, places: filled });
        return none;
      },
    });
    if (surprises.length === 0) return;
    const late = new ChangedCells();
    for (const { task, places } of surprises) {
      const own = tasks[task] as Task;
      own.fills = [...own.fills, ...places];
      for (const { row, column } of places) late.add(own.sheet, row, column);
    }
    const first = (surprises[0] as { at: number }).at;
    const last = (surprises.at(-1) as { at: number }).at;
    // What was worked out after the last of them read what it should.
    const again = tasks.flatMap((_, task) =>
      (doneAt[task] ?? 0) < last && reads(task).some((area) => late.isIn(area)) ? [task] : [],
    );
    if (again.length === 0 || first === undefined) return;
    dirty = new Set(again);
  }
}

const none: readonly number[] = [];

/** Notes what a formula reads while it is worked out, and which formulas must go before it. */
function watchingFor(isOpen: (area: SheetArea) => readonly number[]) {
  const seen: SheetArea[] = [];
  const open = new Set<number>();
  const watch = (area: SheetArea): void => {
    seen.push(area);
    for (const owner of isOpen(area)) open.add(owner);
  };
  return { seen, open, watch };
}

interface Round {
  /** @returns formulas that must go first; none when it is done */
  readonly evaluate: (task: number, isOpen: (area: SheetArea) => readonly number[]) => readonly number[];
  readonly keepCircular: (task: number) => void;
}

interface Frame {
  readonly task: number;
  readonly reads: readonly SheetArea[];
  area: number;
  columns: readonly number[];
  column: number;
  row: number;
  /** Where on the path the circle begins that this formula is part of. */
  circle: number;
  first: readonly number[];
}

const [fresh, onPath, settled, inCircle] = [0, 1, 2, 3];

/** Depth first, with a path of its own instead of calls, since chains of formulas are as long as sheets. */
function inOneRound(tasks: readonly Task[], order: readonly number[], round: Round): void {
  const pending = new Pending(tasks);
  const state = new Uint8Array(tasks.length);
  const root = new Int32Array(tasks.length);
  const path: Frame[] = [];
  let waiting: { task: number; root: number }[] = [];

  const enter = (task: number): void => {
    state[task] = onPath;
    root[task] = path.length;
    const { reads } = tasks[task] as Task;
    path.push({ task, reads, area: 0, columns: none, column: -1, row: 0, circle: path.length, first: none });
  };
  const settle = (task: number): void => {
    state[task] = settled;
    pending.settle(task);
  };
  const markCircle = (from: number): void => {
    for (let at = from; at < path.length; at += 1) {
      const frame = path[at] as Frame;
      frame.circle = Math.min(frame.circle, from);
      circular[frame.task] = 1;
    }
  };
  const circular = new Uint8Array(tasks.length);
  const meet = (owner: number): void => {
    if (state[owner] === fresh) enter(owner);
    else if (state[owner] === onPath || state[owner] === inCircle) markCircle(root[owner] as number);
  };
  const isOpen = (area: SheetArea): readonly number[] =>
    pending.columnsIn(area).flatMap((column) => {
      const next = pending.nextIn(area.sheet, column, area.area.top, area.area.bottom);
      return next ? [next.owner] : [];
    });

  for (const start of order) {
    if (state[start] !== fresh) continue;
    enter(start);
    while (path.length > 0) {
      const frame = path.at(-1) as Frame;
      if (frame.first.length > 0) {
        const [must, ...rest] = frame.first;
        frame.first = rest;
        meet(must as number);
        continue;
      }
      const next = nextUnsettled(frame, pending);
      if (next !== undefined) {
        meet(next);
        continue;
      }
      if (circular[frame.task] === 0) {
        const before = round.evaluate(frame.task, isOpen);
        if (before.length > 0) {
          frame.first = before;
          continue;
        }
      }
      const index = path.length - 1;
      path.pop();
      if (circular[frame.task] === 0) settle(frame.task);
      else {
        round.keepCircular(frame.task);
        if (frame.circle < index) {
          state[frame.task] = inCircle;
          root[frame.task] = frame.circle;
          waiting.push({ task: frame.task, root: frame.circle });
        } else {
          settle(frame.task);
          for (const { task, root: from } of waiting) if (from >= index) settle(task);
          waiting = waiting.filter(({ root: from }) => from < index);
        }
      }
    }
  }
}

function nextUnsettled(frame: Frame, pending: Pending): number | undefined {
  const { reads } = frame;
  for (; frame.area < reads.length; frame.area += 1) {
    const reference = reads[frame.area] as SheetArea;
    if (frame.column === -1) {
      frame.columns = pending.columnsIn(reference);
      frame.column = 0;
      frame.row = reference.area.top;
    }
    for (; frame.column < frame.columns.length; frame.column += 1, frame.row = reference.area.top) {
      const column = frame.columns[frame.column] as number;
      const next = pending.nextIn(reference.sheet, column, frame.row, reference.area.bottom);
      if (!next) continue;
      frame.row = next.row + 1;
      return next.owner;
    }
    frame.column = -1;
  }
  return undefined;
}
