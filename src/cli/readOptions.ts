import { type ParseArgsConfig, parseArgs } from "node:util";
import { BadInput } from "./badInput.ts";

type Options = NonNullable<ParseArgsConfig["options"]>;

/**
 * The options and words after a command.
 *
 * @throws BadInput when an option is not known here, or there are more words than the command takes
 */
export function readOptions<O extends Options>(
  command: string,
  given: readonly string[],
  options: O,
  mostWords: number,
): ReturnType<typeof parseArgs<{ options: O; allowPositionals: true; args: string[] }>> {
  const read = withPlainErrors(command, () => parseArgs({ args: [...given], options, allowPositionals: true }));
  const extra = read.positionals[mostWords];
  if (extra !== undefined)
    throw new BadInput(`"${extra}" is one word too many for ${command}; a name with spaces needs quotes around it.`);
  return read;
}

function withPlainErrors<T>(command: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!code.startsWith("ERR_PARSE_ARGS")) throw error;
    const option = /'(-[^' ]*)/.exec((error as Error).message)?.[1] ?? "an option";
    throw new BadInput(`${command} does not know ${option}, or not in this form; see soundfold --help.`);
  }
}
