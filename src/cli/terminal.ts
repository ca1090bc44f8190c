import type { Terminal } from "./command.ts";
import { visible } from "./visible.ts";

const clearLine = "\r\u001b[2K";

/** The terminal the command was started from. */
export function terminalOf(output: NodeJS.WriteStream, errors: NodeJS.WriteStream): Terminal {
  return {
    say: (text) => void output.write(`${visible(text)}\n`),
    progress: (words) => void (errors.isTTY && errors.write(`${clearLine}${visible(words)}`)),
    progressDone: () => void (errors.isTTY && errors.write(clearLine)),
  };
}
