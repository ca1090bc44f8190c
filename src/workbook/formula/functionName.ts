// Newer built-ins carry these in files, so that older spreadsheets know what they do not know.
const prefix = "(?:_xlfn\\.|_xlws\\.|_xlpm\\.|_xludf\\.)";
const prefixes = new RegExp(`^${prefix}+`, "i");

/** A built-in as it is typed: `_xlfn._xlws.FILTER` is FILTER. */
export const withoutPrefixes = (name: string): string => name.replace(prefixes, "");

/** Before the name of each function, as Excel stores it. */
const stored = "_xldudf_FOOT_";

/** The service of the Calc extension: every version of Calc finds a function by it, in files of every kind. */
const inCalc = "SOUNDFOLD.FOOT.";

/**
 * Spellings of a custom function in files: as Excel stores it, as it is typed, as one sheet service types it, and as
 * Calc finds it.
 */
const spelling = new RegExp(`^${prefix}*(?:${stored}|foot\\.|foot_|soundfold\\.foot\\.)(.+)$`, "i");

/**
 * The FOOT function that a name in a file stands for, without its namespace and in capitals.
 *
 * @example
 * footName("_xldudf_foot_flockprev") // → "FLOCKPREV"
 */
export const footName = (name: string): string | undefined => spelling.exec(name)?.[1]?.toUpperCase();

/** As Excel stores it. */
export const storedFootName = (name: string): string => `${stored}${name}`;
/** As every version of Calc finds it. */
export const calcFootName = (name: string): string => `${inCalc}${name}`;
/** Whether a name in a file is spelled for Calc. */
export const isForCalc = (name: string): boolean => name.toUpperCase().startsWith(inCalc);
/** As a person types it, and as the engine knows it. */
export const typedFootName = (name: string): string => `FOOT.${name}`;
