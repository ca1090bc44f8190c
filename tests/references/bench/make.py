"""Reference values for tests/bench: exact intervals, hypergeometric sample sizes, funnel limits.

Run by hand (some minutes): python3 tests/references/bench/make.py
"""

import os
import sys
from fractions import Fraction
from math import ceil

from mpmath import mpf
from scipy.special import betaincinv
from scipy.stats import binom

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import beta_quantile_lower, share, write  # noqa: E402


def low_quantile(tail, a, b):
    return beta_quantile_lower(tail, mpf(a), mpf(b), betaincinv(float(a), float(b), float(tail)))


def exact(x, n, c):
    tail = (1 - share(c)) / 2
    return [float(low_quantile(tail, x, n - x + 1)), float(1 - low_quantile(tail, n - x, x + 1))]


def none_found(N, d, n):
    """Chance of no lame sheep among n drawn of N of which d are lame, as a fraction."""
    top, bottom = 1, 1
    for k in range(d):
        top *= N - n - k
        bottom *= N - k
    return Fraction(top, bottom)


def sample(N, p, c):
    d = ceil(Fraction(str(p)) * N)
    few, enough = 0, N - d + 1
    while enough - few > 1:
        n = (few + enough) // 2
        if 1 - none_found(N, d, n) >= Fraction(str(c)):
            enough = n
        else:
            few = n
    chance = none_found(N, d, enough)
    return [enough, float(mpf(chance.numerator) / chance.denominator)]


def funnel(p, n, target):
    """Spiegelhalter 2005, A.1.1, with the sums in 40 digits."""
    t, q = share(target), share(p)
    r = int(binom.ppf(p, n, target))
    odds = t / (1 - t)
    term = (1 - t) ** n
    upto = term
    for k in range(r):
        term *= mpf(n - k) / (k + 1) * odds
        upto += term
    assert upto >= q > upto - term
    return max(float((r - (upto - q) / term) / n), 0.0)


sizes = [20, 60, 200, 420, 2_000, 100_000]
write(
    __file__,
    {
        "exact": [
            [[x, n, c], exact(x, n, c)]
            for n in sizes
            for x in sorted({1, 2, round(n * 0.05), round(n * 0.3), n // 2, n - 1})
            for c in (0.95, 0.9999)
        ],
        "sample": [
            [[N, p, c], sample(N, p, c)]
            for N in (100, 300, 1_000, 10_000)
            for p in (0.1, 0.05, 0.02, 0.01)
            for c in (0.9, 0.95, 0.99)
        ]
        + [[[100_000, p, 0.95], sample(100_000, p, 0.95)] for p in (0.05, 0.01)],
        "funnel": [
            [[p, n, target], funnel(p, n, target)]
            for n in (20, 60, 100, 420, 500, 2_000)
            for target in (0.02, 0.05, 0.1)
            for p in (0.001, 0.025, 0.975, 0.999)
        ],
    },
)
