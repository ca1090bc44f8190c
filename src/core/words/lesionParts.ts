const separator = /[+&/,;()]|\b(?:and|with|plus|or|also|the graver|the gravest)\b/;

/**
 * The lesions that a cell names, each as it was written. The one name that has "or" within stays whole.
 *
 * @example
 * lesionParts("scald + footrot?") // → ["scald", "footrot?"]
 */
export const lesionParts = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/\(read as [^()]*\)/g, " ")
    .replace(/[\s_-]+/g, " ")
    .replace(/, not sure\b/g, " not sure")
    .replace(/\borf or strawberry footrot\b/g, "orf")
    .split(separator)
    .map((part) => part.trim())
    .filter((part) => part !== "");
