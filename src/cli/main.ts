#!/usr/bin/env node
import { version } from "../../functions/version.ts";
import { WorkbookProblem } from "../workbook/workbookProblem.ts";
import { BadInput } from "./badInput.ts";
import { collateCommand } from "./commands/collateCommand.ts";
import { functionsCommand } from "./commands/functionsCommand.ts";
import { recalcCommand } from "./commands/recalcCommand.ts";
import { startCommand } from "./commands/startCommand.ts";
import { templateCommand } from "./commands/templateCommand.ts";
import { helpText } from "./helpText.ts";
import { terminalOf } from "./terminal.ts";

const commands = [recalcCommand, templateCommand, collateCommand, functionsCommand, startCommand];

/** Runs what was typed after `soundfold`. @returns the exit code */
async function main([word, ...given]: readonly string[]): Promise<number> {
  const terminal = terminalOf(process.stdout, process.stderr);
  try {
    if (word === "--version") terminal.say(version);
    else if (word === undefined || word === "--help" || given.includes("--help")) terminal.say(helpText(commands));
    else await commandNamed(word).run(given, terminal);
    return 0;
  } catch (error) {
    terminal.progressDone();
    if (error instanceof BadInput || error instanceof WorkbookProblem) {
      process.stderr.write(`${error.message}\n`);
      return 2;
    }
    process.stderr.write(`Something went wrong that is not your doing: ${(error as Error)?.stack ?? error}\n`);
    return 1;
  }
}

function commandNamed(word: string) {
  const command = commands.find(({ name }) => name === word);
  if (!command) throw new BadInput(`There is no command ${word}; see soundfold --help.`);
  return command;
}

process.exitCode = await main(process.argv.slice(2));
