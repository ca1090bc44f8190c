/** Milliseconds of processor time that some work takes: on a machine shared with others, the clock would tell of them. */
export function processorTime(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/**
 * The least processor time of one call in several batches, in milliseconds. The least, because whatever disturbs a
 * measurement only adds to it.
 *
 * @param enough how long a batch takes at least, in milliseconds
 */
export function leastTime(call: () => unknown, { batches = 5, enough = 40 } = {}): number {
  let calls = 1;
  let time = processorTime(call);
  let least = time;
  while (time < enough) {
    calls = Math.ceil(calls * Math.min(10, Math.max(2, (1.2 * enough) / Math.max(time, 0.05))));
    time = batch(call, calls);
    least = Math.min(least, time / calls);
  }
  for (let done = 1; done < batches; done++) least = Math.min(least, batch(call, calls) / calls);
  return least;
}

const batch = (call: () => unknown, calls: number): number =>
  processorTime(() => {
    for (let done = 0; done < calls; done++) call();
  });
