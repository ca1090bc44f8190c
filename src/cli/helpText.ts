import type { Command } from "./command.ts";

/** What `soundfold --help` prints. */
export function helpText(commands: readonly Command[]): string {
  const lines = commands.map(({ name, takes, summary }) => ({ call: `soundfold ${name} ${takes}`.trim(), summary }));
  return `Soundfold: worksheet functions for sheep foot health.

${lines.map(({ call, summary }) => `  ${call}\n      ${summary}`).join("\n")}
  soundfold --help
  soundfold --version

recalc works out every formula of a workbook and saves it under another name, by default
beside the input with "-worked-out" at the end of its name. The input is never changed.
A file that is already there is replaced only with --force.

Exit code: 0 done (cells that end in an error are listed), 1 a fault of this program,
2 the input cannot be worked with (one sentence says why, and no file is written).`;
}
