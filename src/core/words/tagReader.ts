import { countryNumber } from "./countries.ts";
import { looksPrinted, PrintedTag } from "./printedTag.ts";
import { type Tag, tagKey } from "./tagKey.ts";

/**
 * A reader for tags, each spelling given once, that notes which of them are sure to be different animals: those printed in
 * full with the same country's letters, those entered as numbers, and those written as their own keys.
 *
 * @throws Problem as tagKey, from the reader
 * @example
 * tagReader()("042") // → { key: "042", shown: "042", spelling: 0, apart: {} }
 */
export function tagReader(): (written: string | number) => Tag {
  const printed = new Map<string, object>();
  const [asNumbers, asKeys] = [{}, {}];
  const begin = (letters: string): object | undefined => {
    if (countryNumber(letters) === undefined) return undefined;
    const apart = {};
    printed.set(letters, apart);
    return apart;
  };
  let spellings = 0;
  return (written) => {
    if (typeof written === "string" && looksPrinted(written)) {
      const letters = written.slice(0, 2);
      const apart = printed.get(letters) ?? begin(letters);
      if (apart !== undefined) return new PrintedTag(written, spellings++, apart);
    }
    const key = tagKey(written);
    const apart = typeof written === "number" ? asNumbers : key === written ? asKeys : undefined;
    return { key, shown: String(written).trim(), spelling: spellings++, apart };
  };
}
