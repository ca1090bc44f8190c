/**
 * A number as it joins a text: 15 digits, with an exponent where it has more than 20 places.
 *
 * @example
 * numberText(1 / 3) // → "0.333333333333333"
 * numberText(1e-7) // → "0.0000001"
 */
export function numberText(value: number): string {
  const [digits = "0", exponent = "0"] = value.toExponential(14).split("e");
  const power = Number(exponent);
  const bare = digits.includes(".") ? digits.replace(/\.?0+$/, "") : digits;
  if (power > 19 || power < -9) return `${bare}E${power < 0 ? "-" : "+"}${String(Math.abs(power)).padStart(2, "0")}`;
  const sign = bare.startsWith("-") ? "-" : "";
  const all = bare.replace("-", "").replace(".", "");
  if (power < 0) return `${sign}0.${"0".repeat(-power - 1)}${all}`;
  const whole = all.slice(0, power + 1).padEnd(power + 1, "0");
  const rest = all.slice(power + 1);
  return rest === "" ? sign + whole : `${sign}${whole}.${rest}`;
}
