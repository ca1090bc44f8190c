// Newer built-ins carry these in files, so that older spreadsheets know what they do not know.
const prefixes = /^(?:_xlfn\.|_xlws\.|_xlpm\.|_xludf\.)+/i;

/** A built-in as it is typed: `_xlfn._xlws.FILTER` is FILTER. */
export const withoutPrefixes = (name: string): string => name.replace(prefixes, "");

/** Before the name of each function, as Excel stores it. */
const stored = "_xldudf_FOOT_";

/** Spellings of a custom function in files: as Excel stores it, as it is typed, and as one sheet service types it. */
const spellings = [new RegExp(`^${stored}(.+)$`, "i"), /^foot\.(.+)$/i, /^foot_(.+)$/i];

/**
 * The FOOT function that a name in a file stands for, without its namespace and in capitals.
 *
 * @example
 * footName("_xldudf_foot_flockprev") // → "FLOCKPREV"
 */
export function footName(name: string): string | undefined {
  const bare = withoutPrefixes(name);
  for (const spelling of spellings) {
    const match = spelling.exec(bare);
    if (match) return (match[1] as string).toUpperCase();
  }
  return undefined;
}

/** As Excel stores it. */
export const storedFootName = (name: string): string => `${stored}${name}`;
/** As a person types it, and as the engine knows it. */
export const typedFootName = (name: string): string => `FOOT.${name}`;
