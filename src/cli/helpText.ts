import type { Command } from "./command.ts";

/** What `soundfold --help` prints. */
export function helpText(commands: readonly Command[]): string {
  return `Soundfold: worksheet functions for sheep foot health.

${commands.map((command) => `  ${call(command)}\n      ${command.summary}`).join("\n")}
  soundfold COMMAND --help
  soundfold --version

No file of yours is changed. One that is there already is replaced only with recalc --force; start replaces
the sample of an earlier start.

${exitCodes}`;
}

/** What `soundfold recalc --help` prints. */
export const commandHelp = (command: Command): string =>
  `${call(command)}\n\n${sentence(command.summary)}.\n\n${command.details}\n\n${exitCodes}`;

const call = ({ name, takes }: Command): string => `soundfold ${name} ${takes}`.trim();

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const exitCodes = `Exit code: 0 done (cells that end in an error are listed), 1 a fault of this program,
2 what was given cannot be worked with (it is said why, and no file is written).`;
