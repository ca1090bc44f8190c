/** Where the add-in is served from while it is being developed. */
export const developmentUrl = "https://localhost:3000";

/**
 * Checks the address the add-in will be served from.
 *
 * @returns the address without a slash at its end
 * @throws Error with one sentence when Excel would refuse it
 * @example
 * checkedBaseUrl("https://example.org/soundfold/") // → "https://example.org/soundfold"
 */
export function checkedBaseUrl(text: string): string {
  const refuse = (why: string) =>
    new Error(`baseUrl ${JSON.stringify(text)} ${why}; give an address such as https://example.org/soundfold.`);
  if (!URL.canParse(text)) throw refuse("is not a web address");
  const url = new URL(text);
  const local = url.hostname === "localhost";
  if (url.protocol !== "https:" && !(local && url.protocol === "http:"))
    throw refuse("is neither https nor on localhost");
  if (url.username !== "" || url.password !== "") throw refuse("holds a name or a password");
  if (url.search !== "" || url.hash !== "") throw refuse("goes on after the folder");
  return url.href.replace(/\/+$/, "");
}
