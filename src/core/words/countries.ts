/**
 * Country letters printed on tags and the three digits of ISO 3166-1 that stand for them in an electronic tag.
 * Countries with sheep tags in Europe and its neighbours, as in ISO 3166-1 (from memory); UK is printed on tags
 * although ISO says GB. ZZ and 999 are for tests: no animal has them.
 */
const numbers: ReadonlyMap<string, string> = new Map(
  Object.entries({
    AT: "040",
    BE: "056",
    BG: "100",
    CH: "756",
    CY: "196",
    CZ: "203",
    DE: "276",
    DK: "208",
    EE: "233",
    ES: "724",
    FI: "246",
    FR: "250",
    GB: "826",
    GR: "300",
    HR: "191",
    HU: "348",
    IE: "372",
    IS: "352",
    IT: "380",
    LT: "440",
    LU: "442",
    LV: "428",
    MT: "470",
    NL: "528",
    NO: "578",
    NZ: "554",
    PL: "616",
    PT: "620",
    RO: "642",
    SE: "752",
    SI: "705",
    SK: "703",
    UK: "826",
    ZZ: "999",
  }),
);

/**
 * The three digits for a country's letters, or undefined when the letters are no country on this list.
 *
 * @example
 * countryNumber("ZZ") // → "999"
 */
export const countryNumber = (letters: string): string | undefined => numbers.get(letters);

const known: ReadonlySet<string> = new Set(numbers.values());

/**
 * Whether three digits stand for a country on this list.
 *
 * @example
 * isCountryNumber("040") // → true
 */
export const isCountryNumber = (digits: string): boolean => known.has(digits);
