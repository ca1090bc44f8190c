#!/usr/bin/env node
import { version } from "../../functions/version.ts";
import { WorkbookProblem } from "../workbook/workbookProblem.ts";
import { BadInput } from "./badInput.ts";
import type { Command } from "./command.ts";
import { bringCommand } from "./commands/bringCommand.ts";
import { collateCommand } from "./commands/collateCommand.ts";
import { compareCommand } from "./commands/compareCommand.ts";
import { functionsCommand } from "./commands/functionsCommand.ts";
import { recalcCommand } from "./commands/recalcCommand.ts";
import { startCommand } from "./commands/startCommand.ts";
import { templateCommand } from "./commands/templateCommand.ts";
import { reasonFor } from "./fileTrouble.ts";
import { commandHelp, helpText } from "./helpText.ts";
import { terminalOf } from "./terminal.ts";
import { visible } from "./visible.ts";

const commands: readonly Command[] = [
  recalcCommand,
  templateCommand,
  bringCommand,
  collateCommand,
  compareCommand,
  functionsCommand,
  startCommand,
];

/** Runs what was typed after `soundfold`. @returns the exit code */
async function main([word, ...given]: readonly string[]): Promise<number> {
  const terminal = terminalOf(process.stdout, process.stderr);
  try {
    if (word === "--version" || word === "-v") terminal.say(version);
    else if (word === undefined || asksForHelp(word)) terminal.say(helpAbout(given[0]));
    else if (given.some((one) => one === "--help" || one === "-h")) terminal.say(helpAbout(word));
    else await commandNamed(word).run(given, terminal);
    return 0;
  } catch (error) {
    terminal.progressDone();
    if (error instanceof BadInput || error instanceof WorkbookProblem) {
      process.stderr.write(`${visible(error.message)}\n`);
      return 2;
    }
    process.stderr.write(visible(`Something went wrong that is not your doing: ${(error as Error)?.stack ?? error}\n`));
    return 1;
  }
}

const asksForHelp = (word: string): boolean => word === "--help" || word === "-h" || word === "help";

const helpAbout = (word: string | undefined): string =>
  word === undefined ? helpText(commands) : commandHelp(commandNamed(word));

function commandNamed(word: string): Command {
  const command = commands.find(({ name }) => name === word);
  if (!command) throw new BadInput(`There is no command "${word}"; soundfold --help lists them.`);
  return command;
}

let unshown = 0;
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  // Whoever reads the first lines only closes the other end of the pipe; what was asked for is saved all the same.
  if (error.code === "EPIPE" || unshown > 0) return;
  unshown = 1;
  process.exitCode = 1;
  const reason = reasonFor(error) ?? error.message;
  process.stderr.write(`Not all can be shown: ${reason}. A file that was asked for is saved before this.\n`);
});
// There is no place left to complain at.
process.stderr.on("error", () => undefined);

process.exitCode = (await main(process.argv.slice(2))) || unshown;
