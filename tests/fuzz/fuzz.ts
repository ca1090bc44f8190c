import { parseArgs } from "node:util";
import { runFuzz } from "./runFuzz.ts";
import { runSlips } from "./tagSlips.ts";

/** `npm run fuzz -- --calls 1000000 --slips 200000 --seed 7`: ends with exit code 1 when anything is found. */
const { values } = parseArgs({
  options: {
    calls: { type: "string", default: "1000000" },
    slips: { type: "string", default: "200000" },
    seed: { type: "string" },
  },
});
const calls = Number(values.calls);
const rounds = Number(values.slips);
const seed = values.seed === undefined ? Date.now() % 2_147_483_647 : Number(values.seed);
if (!Number.isSafeInteger(calls) || calls < 1 || !Number.isSafeInteger(rounds) || !Number.isSafeInteger(seed)) {
  console.error("--calls, --slips and --seed take whole numbers, such as --calls 1000000 --slips 200000 --seed 7.");
  process.exit(2);
}

console.log(`Seed ${seed}, ${calls} calls.`);
const started = performance.now();
const report = runFuzz({
  seed,
  calls,
  onProgress: (made) => process.stderr.write(`${made} calls, ${Math.round((performance.now() - started) / 1000)} s\n`),
});
const seconds = (performance.now() - started) / 1000;

const slowest = [...report.functions].sort(([, one], [, other]) => other.slowestMs - one.slowestMs).slice(0, 5);
console.log(`${report.calls} calls in ${seconds.toFixed(0)} s, of them changed by a law:`);
for (const [law, checked] of report.lawsChecked) console.log(`  ${law} ${checked}`);
console.log("Slowest calls:");
for (const [name, { slowestMs }] of slowest) console.log(`  ${name} ${slowestMs.toFixed(0)} ms`);
console.log("Answered of the calls made without a law, by function:");
for (const [name, { calls: made, answered }] of report.functions)
  console.log(`  ${name} ${answered} of ${made} (${Math.round((100 * answered) / made)} %)`);
for (const { round, functionName, what, call } of report.violations)
  console.log(`VIOLATION in round ${round}, ${functionName}: ${what}\n  ${call}`);
const slipped = runSlips(rounds, seed);
console.log(`${slipped.rounds} rounds with a slip in the tag of an animal in withdrawal and lame:`);
for (const [slip, made] of slipped.made) console.log(`  ${slip} ${made}`);
for (const breach of slipped.breaches) console.log(`LET GO: ${breach}`);
console.log(`${report.violations.length} violations, ${slipped.breaches.length} let go. Seed ${seed}.`);
process.exitCode = report.violations.length + slipped.breaches.length === 0 ? 0 : 1;
