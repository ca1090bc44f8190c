/**
 * The list of functions of the add-in, with its help under another address than the one it was built for.
 *
 * @param functions - functions.json as it was built
 * @param servedFrom - where its files are now, without a slash at the end
 * @returns the same text where it names no help, or names it there already
 * @example
 * functionsFor(built, "https://farm.example.org/feet") // each helpUrl under that address
 */
export const functionsFor = (functions: string, servedFrom: string): string =>
  functions.replace(
    /("helpUrl": )"[^"]+(\/taskpane\.html#\w+)"/g,
    (_, key: string, page: string) => `${key}${JSON.stringify(servedFrom + page)}`,
  );
