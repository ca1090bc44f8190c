"""Reference values for tests/core/benchmarks: funnel limits, beta-binomial fits, steadied shares, intra-flock correlation."""

import os
import random
import sys
from fractions import Fraction
from math import comb

import numpy as np
from mpmath import digamma, findroot, log, loggamma
from scipy.optimize import minimize
from scipy.special import betaincinv, betaln
from scipy.stats import binom

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import beta_quantile_lower, mpf, share, write  # noqa: E402


def funnel(p, n, target):
    """Spiegelhalter's A.1.1 with fractions of whole numbers; scipy where n is large."""
    if n > 500:
        r = int(binom.ppf(p, n, target))
        f, before = binom.cdf(r, n, target), binom.cdf(r - 1, n, target)
        return max((r - (f - p) / binom.pmf(r, n, target)) / n, 0)
    t, wanted, total = Fraction(str(target)), Fraction(str(p)), Fraction(0)
    for r in range(n + 1):
        chance = comb(n, r) * t**r * (1 - t) ** (n - r)
        total += chance
        if total >= wanted:
            return float(max((r - (total - wanted) / chance) / n, Fraction(0)))


def fit(lame, seen):
    """Greatest likelihood in a and b: scipy gets near, Newton on the score in 40 digits gets there."""
    x, n = np.array(lame), np.array(seen)

    def minus(v):
        a, b = np.exp(v)
        return -np.sum(betaln(a + x, b + n - x) - betaln(a, b))

    start = minimize(minus, [0.0, 1.0], method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-12, "maxiter": 5000}).x

    def score(a, b):
        both = sum(digamma(a + b) - digamma(a + b + k) for k in seen)
        return (
            sum(digamma(a + k) - digamma(a) for k in lame) + both,
            sum(digamma(b + m - k) - digamma(b) for k, m in zip(lame, seen)) + both,
        )

    a, b = findroot(score, [mpf(float(v)) for v in np.exp(start)])
    return a, b


def steadied(lame, seen, c):
    """Mean and equal-tailed limits of each flock's beta distribution."""
    a, b = fit(lame, seen)
    tail, rows = (1 - share(c)) / 2, []
    for x, n in zip(lame, seen):
        p, q = a + x, b + n - x
        low = beta_quantile_lower(tail, p, q, betaincinv(float(p), float(q), float(tail)))
        high = 1 - beta_quantile_lower(tail, q, p, betaincinv(float(q), float(p), float(tail)))
        rows.append([float(p / (p + q)), float(low), float(high)])
    return [[float(a / (a + b)), float(1 / (a + b))], rows]


def spread(lame, seen):
    """One-way analysis of variance of the single sheep, 0 or 1, with the sums of squares written out."""
    sheep = [(flock, Fraction(int(i < x))) for flock, (x, n) in enumerate(zip(lame, seen)) for i in range(n)]
    N, k = len(sheep), len(lame)
    mean = sum(v for _, v in sheep) / N
    means = [sum(v for f, v in sheep if f == flock) / seen[flock] for flock in range(k)]
    between = sum((means[f] - mean) ** 2 for f, _ in sheep) / (k - 1)
    within = sum((v - means[f]) ** 2 for f, v in sheep) / (N - k)
    n0 = (N - Fraction(sum(n * n for n in seen), N)) / (k - 1)
    rho = (between - within) / (between + (n0 - 1) * within)
    # The variance of the pooled share, sheep by sheep, over what it is without correlation.
    pairs = sum(n * (n - 1) for n in seen)
    return [float(mean), float(rho), float(1 + pairs * rho / N)]


# lme4's cbpp table (an R package's data on a cattle disease), summed by herd: new cases and animals seen.
cbpp = (
    [9, 5, 12, 4, 6, 4, 12, 12, 2, 4, 9, 3, 3, 11, 3],
    [40, 61, 74, 35, 71, 72, 40, 34, 29, 84, 96, 29, 87, 26, 64],
)


def invented(flocks, a, b, largest, seed):
    draw = random.Random(seed)
    seen = [draw.randint(2, largest) for _ in range(flocks)]
    lame = []
    for n in seen:
        p = draw.betavariate(a, b)
        lame.append(sum(draw.random() < p for _ in range(n)))
    return lame, seen


sets = [
    cbpp,
    ([1, 9], [10, 10]),
    ([0, 0, 30], [50, 40, 60]),
    ([0, 0, 0, 4, 1], [1, 2, 3, 5, 4]),
    ([10, 900, 3000], [10_000, 20_000, 30_000]),
    invented(20, 2, 30, 60, 1),
    invented(60, 0.3, 5, 400, 2),
    invented(12, 5, 5, 20, 3),
    invented(8, 0.05, 0.2, 100, 4),
    invented(40, 20, 380, 900, 5),
]
sizes = [1, 2, 7, 20, 60, 100, 420, 500, 10_000, 1_000_000]
write(
    __file__,
    {
        "funnel": [
            [[p, n, t], funnel(p, n, t)] for n in sizes for t in (0.001, 0.05, 0.3, 0.9) for p in (0.001, 0.025, 0.975, 0.999)
        ],
        "steadied": [[[*s, c], steadied(*s, c)] for s in sets for c in ((0.95,) if len(s[0]) > 15 else (0.5, 0.95, 0.9999))],
        "spread": [[list(s), spread(*s)] for s in sets if sum(s[1]) < 50_000],
    },
)
