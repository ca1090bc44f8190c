/**
 * Places and weights of Gauss–Legendre quadrature from −1 to 1: exact for polynomials to the degree 2n − 1.
 *
 * @param n places, whole number from 2
 * @source Abramowitz & Stegun 25.4.29; Newton's steps on the Legendre polynomial
 * @example
 * gaussLegendre(2)[0]?.[0] // → 0.5773502691…
 */
export function gaussLegendre(n: number): readonly (readonly [place: number, weight: number])[] {
  const angle = Math.PI / (n + 0.5);
  // Guesses cos((i + ¾) angle), each from the two before.
  const guesses = [smallCosine(0.75 * angle), smallCosine(0.25 * angle)];
  return Array.from({ length: n }, (_, i) => {
    const [guess = 1, before = 1] = guesses;
    guesses.unshift(2 * smallCosine(angle) * guess - before);
    let x = guess;
    for (let turn = 0; turn < 8; turn++) {
      const [value, slope] = legendre(n, x);
      x -= value / slope;
    }
    const [, slope] = legendre(n, x);
    return [n === 2 * i + 1 ? 0 : x, 2 / ((1 - x * x) * slope * slope)];
  });
}

/** The cosine of an angle below about 1, good enough for a guess. */
const smallCosine = (angle: number): number => {
  const square = angle * angle;
  return 1 - (square / 2) * (1 - (square / 12) * (1 - (square / 30) * (1 - square / 56)));
};

function legendre(n: number, x: number): readonly [value: number, slope: number] {
  let [before, value] = [1, x];
  for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return [value, (n * (x * value - before)) / (x * x - 1)];
}
