import { seededRandom } from "../../../src/workbooks/inventedFlock/seededRandom.ts";

export interface Draws {
  /** 0 up to 1. */
  readonly share: () => number;
  readonly whole: (from: number, to: number) => number;
  readonly binomial: (n: number, p: number) => number;
  /** The true share of a gather: beta-distributed about the long-run share. */
  readonly shareOf: (mean: number, correlation: number) => number;
}

/** What simulations draw, from a seed. */
export function drawsFrom(seed: number): Draws {
  const { share: random, whole } = seededRandom(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

  /** Gamma by Marsaglia & Tsang 2000. */
  function gamma(shape: number): number {
    if (shape < 1) return gamma(shape + 1) * (1 - random()) ** (1 / shape);
    const d = shape - 1 / 3;
    for (;;) {
      const x = normal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  }
  const binomial = (n: number, p: number): number => {
    let x = 0;
    for (let i = 0; i < n; i++) if (random() < p) x++;
    return x;
  };
  function shareOf(mean: number, correlation: number): number {
    if (correlation === 0) return mean;
    const total = 1 / correlation - 1;
    const [a, b] = [gamma(mean * total), gamma((1 - mean) * total)];
    return a / (a + b);
  }
  return { share: random, whole, binomial, shareOf };
}
