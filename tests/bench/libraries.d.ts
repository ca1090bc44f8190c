declare module "jstat" {
  const jstat: {
    readonly jStat: {
      normal: { inv(p: number, mean: number, std: number): number };
      studentt: { inv(p: number, dof: number): number };
      beta: { inv(p: number, a: number, b: number): number };
      binomial: {
        pdf(k: number, n: number, p: number): number;
        cdf(k: number, n: number, p: number): number;
      };
      hypgeom: { pdf(k: number, N: number, M: number, n: number): number };
    };
  };
  export default jstat;
}

declare module "@stdlib/stats-base-dists-beta-quantile" {
  export default function quantile(p: number, a: number, b: number): number;
}

declare module "@stdlib/stats-base-dists-binomial-quantile" {
  export default function quantile(p: number, n: number, share: number): number;
}

declare module "@stdlib/stats-base-dists-binomial-cdf" {
  export default function cdf(k: number, n: number, share: number): number;
}

declare module "@stdlib/stats-base-dists-binomial-pmf" {
  export default function pmf(k: number, n: number, share: number): number;
}

declare module "@stdlib/stats-base-dists-hypergeometric-pmf" {
  export default function pmf(x: number, N: number, K: number, n: number): number;
}
