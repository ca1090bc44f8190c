/** Capitals of other alphabets that look like ours, each above the one it looks like. */
const alike = { theirs: "АВЕЅІЈКМНОРСТУХΑΒΕΖΗΙΚΜΝΟΡΤΥΧ", ours: "ABESIJKMHOPCTYXABEZHIKMNOPTYX" };
const oursFor = new Map([...alike.theirs].map((letter, place) => [letter, alike.ours[place] as string]));

const ascii = /^[ -~]*$/;
const otherDigit = /(?![0-9])\p{Nd}/gu;

/**
 * A tag in capitals, as it looks: letters and digits of full width, digits of other scripts, and letters of other alphabets
 * that look like ours are the same letters and digits.
 *
 * @example
 * plainCapitals("blue 42") // → "BLUE 42"
 * plainCapitals("٤٢") // → "42"
 */
export function plainCapitals(text: string): string {
  if (ascii.test(text)) return text.toUpperCase();
  const capitals = text.normalize("NFKC").toUpperCase().replace(otherDigit, digitOf);
  return capitals.replace(/\P{ASCII}/gu, (letter) => oursFor.get(letter) ?? letter);
}

// The digits of a script stand in a row, from nought to nine (Unicode Standard 4.6; from memory), and rows seldom touch.
function digitOf(digit: string): string {
  let code = digit.codePointAt(0) as number;
  let value = 0;
  while (value < 9 && isDigit.test(String.fromCodePoint(code - 1))) {
    code--;
    value++;
  }
  return String(value);
}

const isDigit = /^\p{Nd}$/u;
