import { createInterface } from "node:readline";
import { answerCall, type SentAnswer, type SentCall } from "./answerCall.ts";

// The program that the extension runs: a call a line on standard input, an answer a line on standard output.

const lines = createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY });
lines.on("line", (line) => process.stdout.write(`${JSON.stringify(answer(line))}\n`));

function answer(line: string): SentAnswer {
  try {
    return answerCall(JSON.parse(line) as SentCall);
  } catch (error) {
    // Whatever goes wrong in one call, the next one must still get its answer.
    return { code: "#VALUE!", message: `this is a fault in Soundfold, not in your sheet: ${String(error)}` };
  }
}
