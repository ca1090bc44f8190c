import { type ParseArgsConfig, parseArgs } from "node:util";
import { BadInput } from "./badInput.ts";

type Options = NonNullable<ParseArgsConfig["options"]>;

/**
 * The options and words after a command.
 *
 * @throws BadInput when an option is not known here or not used as it is meant, or there are more words than the
 * command takes
 */
export function readOptions<O extends Options>(
  command: string,
  given: readonly string[],
  options: O,
  mostWords: number,
): ReturnType<typeof parseArgs<{ options: O; allowPositionals: true; args: string[] }>> {
  const read = withPlainErrors(command, options, () =>
    parseArgs({ args: [...given], options, allowPositionals: true }),
  );
  const extra = read.positionals[mostWords];
  if (extra !== undefined)
    throw new BadInput(`"${extra}" is one word too many for ${command}; a name with spaces needs quotes around it.`);
  return read;
}

function withPlainErrors<T>(command: string, options: Options, read: () => T): T {
  try {
    return read();
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!code.startsWith("ERR_PARSE_ARGS")) throw error;
    // The message names a short form first where there is one, as in '-o, --out <value>'.
    const option = /'(?:-\w, )?(-[^' ]*)/.exec((error as Error).message)?.[1] ?? "an option";
    throw new BadInput(`${fault(command, options, option)}; see soundfold ${command} --help.`);
  }
}

function fault(command: string, options: Options, option: string): string {
  const known = options[option.replace(/^--/, "")];
  if (!known) return `${command} does not know ${option}`;
  if (known.type === "boolean") return `${option} stands alone, without = and a value`;
  return `${option} needs a value after it (one that begins with - is given as ${option}=-…)`;
}
