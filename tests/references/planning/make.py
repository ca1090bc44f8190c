"""Reference values for tests/core/planning: sample sizes and chances of finding, from fractions of whole numbers."""

import os
import sys
from decimal import ROUND_CEILING, Decimal
from fractions import Fraction
from math import comb

from scipy.stats import hypergeom

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import log, mpf, share, write, z_of  # noqa: E402


def up(value):
    """Rounded up, unless it passes a whole number by less than 1e-9; at least 1."""
    return max(int(Decimal(str(value - mpf("1e-9"))).to_integral_value(ROUND_CEILING)), 1)


def estimate(p, d, N, c):
    p, d = share(p), share(d)
    n = z_of(c) ** 2 * p * (1 - p) / d**2
    return up(n if N is None else n / (1 + (n - 1) / N))


def lame_in(N, p):
    return up(N * share(p))


def find_exact(N, p, c):
    """Tries every number from 1 on; the chance as a fraction, with the tolerance of 1e-9."""
    d, wanted = lame_in(N, p), Fraction(str(c)) - Fraction(1, 10**9)
    for n in range(1, N + 1):
        if 1 - Fraction(comb(N - d, n), comb(N, n)) >= wanted:
            return n


def find_large(N, p, c):
    """scipy's hypergeometric distribution, by halving."""
    d, few, enough = lame_in(N, p), 0, N
    while enough - few > 1:
        n = (few + enough) // 2
        if hypergeom.sf(0, N, d, n) >= c - 1e-9:
            enough = n
        else:
            few = n
    return enough


def find_formula(N, p, c, se):
    d = lame_in(N, p)
    n = up(N / share(se) * (1 - (1 - share(c)) ** (mpf(1) / d)))
    return n if n <= N else None


def find_exact_look(N, p, c, se):
    """Tries every number from 1 on for a look that errs; the chance as a fraction, with the tolerance of 1e-9."""
    wanted = Fraction(str(c)) - Fraction(1, 10**9)
    for n in range(1, N + 1):
        if exact_fraction(N, n, p, se) >= wanted:
            return n


def find_endless(p, c, se):
    return up(log(1 - share(c)) / log(1 - share(p) * share(se)))


def chance(N, n, p, se):
    return float(1 - (1 - share(se) * n / N) ** lame_in(N, p))


def exact_fraction(N, n, p, se):
    d, s = lame_in(N, p), 1 - Fraction(str(se))
    missed = sum(comb(d, x) * comb(N - d, n - x) * s**x for x in range(max(0, n - N + d), min(n, d) + 1))
    return 1 - Fraction(missed, comb(N, n))


def exact_chance(N, n, p, se):
    found = exact_fraction(N, n, p, se)
    return float(mpf(found.numerator) / found.denominator)


flocks = [1, 2, 10, 40, 100, 300, 1000]
designs = [0.1, 0.07, 0.05, 0.02, 0.01]
write(
    __file__,
    {
        "estimate": [
            [[p, d, N, c], estimate(p, d, N, c)]
            for p in (0.001, 0.02, 0.3, 0.5)
            for d in (0.001, 0.01, 0.05)
            for N in (1, 40, 1000, 10**7, None)
            for c in (0.5, 0.95, 0.9999)
        ],
        "findExact": [[[N, p, c], find_exact(N, p, c)] for N in flocks for p in designs for c in (0.5, 0.9, 0.95, 0.9999)],
        "findLarge": [
            [[N, p, c], find_large(N, p, c)] for N in (10**5, 10**6) for p in (0.05, 0.001, 0.00002) for c in (0.5, 0.95, 0.9999)
        ],
        "findFormula": [
            [[N, p, c, se], find_formula(N, p, c, se)] for N in flocks for p in (0.1, 0.02) for c in (0.5, 0.95) for se in (0.5, 0.8, 0.95)
        ],
        "findExactLook": [
            [[N, p, c, se], find_exact_look(N, p, c, se)] for N in flocks[:-1] for p in (0.1, 0.02) for c in (0.5, 0.95) for se in (0.5, 0.8, 0.95)
        ],
        "findEndless": [[[p, c, se], find_endless(p, c, se)] for p in designs for c in (0.5, 0.95, 0.9999) for se in (0.8, 1)],
        "chance": [
            [[N, n, p, se], [chance(N, n, p, se), exact_chance(N, n, p, se)]]
            for N, n in ((1, 1), (10, 9), (100, 0), (100, 1), (100, 25), (300, 299), (300, 300), (1000, 58))
            for p in (0.1, 0.01)
            for se in (0.3, 0.8, 1)
        ],
    },
)
