import { numberIn } from "../cells/numberIn.ts";
import { BadInput } from "./badInput.ts";

/**
 * The share that an option names, as 5% or 0.05; undefined where it is not given.
 *
 * @throws BadInput when it is no share above 0 and below 100 %
 */
export function targetFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const percent = /^(.*\S)\s*%$/.exec(text.trim());
  const number = numberIn(percent?.[1] ?? text);
  const target = number === undefined ? undefined : percent ? number / 100 : number;
  if (target === undefined || !(target > 0 && target < 1))
    throw new BadInput(`"${text}" is no share above 0 and below 100 %; give it as --target 5% or --target 0.05.`);
  return target;
}
