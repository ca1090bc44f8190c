import { Bench } from "tinybench";

/**
 * The median time of each task in milliseconds. The median, because a busy machine makes a few runs very long.
 *
 * @param tasks by name; each must do the same work
 * @param time how long each is run, in milliseconds
 */
export async function medianTimes<N extends string>(
  tasks: Readonly<Record<N, () => unknown>>,
  time = 500,
): Promise<Readonly<Record<N, number>>> {
  const bench = new Bench({ time, warmupTime: time / 5, throws: true });
  for (const [name, task] of Object.entries<() => unknown>(tasks)) bench.add(name, task);
  await bench.run();
  return Object.fromEntries(bench.tasks.map(({ name, result }) => [name, medianOf(name, result)])) as Record<N, number>;
}

function medianOf(name: string, result: Bench["tasks"][number]["result"]): number {
  if ("latency" in result) return result.latency.p50;
  throw new Error(`${name} has no time: ${result.state}`);
}
