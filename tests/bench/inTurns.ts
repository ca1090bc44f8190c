import { processorTime } from "./processorTime.ts";

/**
 * The processor time of one call of each task in milliseconds: the least of several rounds in which the tasks take turns.
 * In turns, so that whatever else the machine does falls on all of them; the least, because it only adds.
 *
 * @param tasks by name; each must do the same work
 * @param enough how long a task works at least when it is its turn, in milliseconds
 */
export function inTurns<N extends string>(
  tasks: Readonly<Record<N, () => unknown>>,
  { rounds = 9, enough = 30 } = {},
): Readonly<Record<N, number>> {
  const names = Object.keys(tasks) as N[];
  const calls = new Map(names.map((name) => [name, callsIn(tasks[name], enough)]));
  const times = new Map(names.map((name) => [name, [] as number[]]));
  for (let round = 0; round < rounds; round++)
    for (const name of names) times.get(name)?.push(turn(tasks[name], calls.get(name) ?? 1));
  return Object.fromEntries(names.map((name) => [name, Math.min(...(times.get(name) ?? []))])) as Record<N, number>;
}

const turn = (task: () => unknown, calls: number): number =>
  processorTime(() => {
    for (let done = 0; done < calls; done++) task();
  }) / calls;

/** How many calls take long enough, once what is going to be compiled is compiled. */
function callsIn(task: () => unknown, enough: number): number {
  for (let calls = 1; ; calls *= 2) {
    const time = turn(task, calls) * calls;
    if (time >= enough) return Math.max(1, Math.ceil(calls * Math.min(1, enough / time)));
  }
}
