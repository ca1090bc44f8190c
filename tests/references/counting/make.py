"""Reference values for tests/core/counting: intervals, finite flocks, changes, trends, strata, imperfect looks, and how
often intervals hold the truth."""

import os
import sys
from fractions import Fraction
from itertools import product
from math import comb, prod

from scipy.special import betaincinv
from scipy.stats import binom, fisher_exact

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import beta_quantile_lower, mp, mpf, share, sqrt, write, z_of  # noqa: E402

sizes = [1, 2, 20, 60, 300, 420, 10_000, 1_000_000, 10_000_000]
confidences = [0.5, 0.8, 0.95, 0.99, 0.9999]


def counts(n):
    return sorted({x for x in (0, 1, 2, round(n * 0.05), round(n * 0.3), n // 2, n - 1, n) if 0 <= x <= n})


def wilson(x, n, c):
    z, p = z_of(c), mpf(x) / n
    middle, root = p + z**2 / (2 * n), z * sqrt(p * (1 - p) / n + z**2 / (4 * mpf(n) ** 2))
    ends = [(middle - root) / (1 + z**2 / n), (middle + root) / (1 + z**2 / n)]
    # Exactly 0 and 1 at the ends; the plain formula leaves a last digit.
    return [0 if x == 0 else float(ends[0]), 1 if x == n else float(ends[1])]


def low_quantile(tail, a, b):
    """Lower-tail quantile; the guess may be rough, the series does not converge quickly above the mean."""
    guess = betaincinv(float(a), float(b), float(tail))
    return beta_quantile_lower(tail, mpf(a), mpf(b), guess)


def exact(x, n, c):
    tail = (1 - share(c)) / 2
    low = 0 if x == 0 else float(low_quantile(tail, x, n - x + 1))
    high = 1 if x == n else float(1 - low_quantile(tail, n - x, x + 1))
    return [low, high]


def jeffreys(x, n, c):
    tail, half = (1 - share(c)) / 2, mpf(1) / 2
    low = 0 if x == 0 else float(low_quantile(tail, x + half, n - x + half))
    high = 1 if x == n else float(1 - low_quantile(tail, n - x + half, x + half))
    return [low, high]


def finite(x, n, N, c):
    """Every number of lame sheep that neither exact tail, a fraction of whole numbers, speaks against."""
    tail = (1 - Fraction(str(c))) / 2
    all_draws = comb(N, n)

    def draws(M, xs):
        return sum(comb(M, k) * comb(N - M, n - k) for k in xs)

    held = [
        M
        for M in range(x, N - n + x + 1)
        if draws(M, range(x, min(n, M) + 1)) >= tail * all_draws
        and draws(M, range(max(0, n - N + M), x + 1)) >= tail * all_draws
    ]
    return [min(held), max(held)]


def fisher(x1, n1, x2, n2):
    """Sum of the tables no more likely than the one seen (relative tolerance 1e-7), as fractions."""
    M = x1 + x2
    weights = {k: comb(n1, k) * comb(n2, M - k) for k in range(max(0, M - n2), min(n1, M) + 1)}
    limit = weights[x1] * (1 + Fraction(1, 10**7))
    p = Fraction(sum(w for w in weights.values() if w <= limit), comb(n1 + n2, M))
    value = float(mpf(p.numerator) / p.denominator)
    # A library that means the same.
    library = fisher_exact([[x1, n1 - x1], [x2, n2 - x2]])[1]
    assert abs(value - library) <= 1e-9 * max(value, 1e-12) or value < 1e-12, (x1, n1, x2, n2, value, library)
    return value


def newcombe(x1, n1, x0, n0, c):
    p1, p0 = mpf(x1) / n1, mpf(x0) / n0
    z = z_of(c)

    def limits(p, n):
        middle, root = p + z**2 / (2 * n), z * sqrt(p * (1 - p) / n + z**2 / (4 * mpf(n) ** 2))
        return (middle - root) / (1 + z**2 / n), (middle + root) / (1 + z**2 / n)

    (l1, u1), (l0, u0) = limits(p1, n1), limits(p0, n0)
    d = p1 - p0
    return [float(d), float(d - sqrt((p1 - l1) ** 2 + (u0 - p0) ** 2)), float(d + sqrt((u1 - p1) ** 2 + (p0 - l0) ** 2))]


def trend(days, lame, seen):
    """Slope, z and two-sided p of Cochran-Armitage, in 40 digits."""
    N, X = sum(seen), sum(lame)
    p = mpf(X) / N
    mean = mpf(sum(n * d for n, d in zip(seen, days))) / N
    spread = sum(n * (d - mean) ** 2 for n, d in zip(seen, days))
    excess = sum((x - n * p) * (d - mean) for x, n, d in zip(lame, seen, days))
    z = excess / sqrt(p * (1 - p) * spread)
    return [float(30 * excess / spread), float(z), float(mp.erfc(abs(z) / sqrt(2)))]


def true_share(x, n, se, sp, c, n_se=None, n_sp=None):
    """Rogan-Gladen; Lang & Reiczigel's interval as written in their paper, or Wilson's limits carried over. Of two
    qualities of which one alone was tried, the other is the one given and has no variance."""
    se_, sp_ = share(se), share(sp)
    clip = lambda v: float(min(max(v, mpf(0)), mpf(1)))  # noqa: E731
    point = (mpf(x) / n + sp_ - 1) / (se_ + sp_ - 1)
    if n_se is None and n_sp is None:
        low, high = wilson(x, n, c)
        return [clip(point)] + [clip((mpf(v) + sp_ - 1) / (se_ + sp_ - 1)) for v in (low, high)]
    z = z_of(c)
    n_, p_ = n + z**2, (x + z**2 / 2) / (n + z**2)
    s_ = se_ if n_se is None else (se_ * n_se + 1) / (n_se + 2)
    t_ = sp_ if n_sp is None else (sp_ * n_sp + 1) / (n_sp + 2)
    v_s = 0 if n_se is None else s_ * (1 - s_) / (n_se + 2)
    v_t = 0 if n_sp is None else t_ * (1 - t_) / (n_sp + 2)
    P = (p_ + t_ - 1) / (s_ + t_ - 1)
    shift = 2 * z**2 * (P * v_s - (1 - P) * v_t)
    reach = z * sqrt(p_ * (1 - p_) / n_ + P**2 * v_s + (1 - P) ** 2 * v_t) / (s_ + t_ - 1)
    return [clip(point), clip(P + shift - reach), clip(P + shift + reach)]


def strata(sizes_, lame, seen, c):
    """Share and standard error with finite correction (Cochran 5.6, 5.10); limits by Zou & Donner's recovery of
    variances from the groups' Wilson limits, z narrowed by the root of (N - n) / (N - 1), or where it reaches further by
    Wilson's limits for the effective number of sheep, one over the sum of squared weights times (N - n) / (N - 1) / n."""
    N = sum(sizes_)
    point = sum(mpf(s) / N * x / n for s, x, n in zip(sizes_, lame, seen))
    variance = sum(
        (mpf(s) / N) ** 2 * (1 - mpf(n) / s) * (mpf(x) / n) * (1 - mpf(x) / n) / (n - 1)
        for s, x, n in zip(sizes_, lame, seen)
        if n < s
    )
    below = above = mpf(0)
    for s, x, n in zip(sizes_, lame, seen):
        if n == s:
            continue
        z, p = z_of(c) * sqrt(mpf(s - n) / (s - 1)), mpf(x) / n
        middle, root = p + z**2 / (2 * n), z * sqrt(p * (1 - p) / n + z**2 / (4 * mpf(n) ** 2))
        low, high = (middle - root) / (1 + z**2 / n), (middle + root) / (1 + z**2 / n)
        below += (mpf(s) / N * (p - low)) ** 2
        above += (mpf(s) / N * (high - p)) ** 2
    alike = sum((mpf(s) / N) ** 2 * mpf(s - n) / (s - 1) / n for s, n in zip(sizes_, seen) if n < s)
    low, high = point - sqrt(below), point + sqrt(above)
    if alike > 0:
        z, m = z_of(c), 1 / alike
        middle, root = point + z**2 / (2 * m), z * sqrt(point * (1 - point) / m + z**2 / (4 * m**2))
        low, high = min(low, (middle - root) / (1 + z**2 / m)), max(high, (middle + root) / (1 + z**2 / m))
    low, high = max(low, mpf(0)), min(high, mpf(1))
    return [float(point), float(sqrt(variance)), float(low), float(high)]


def wilson_holds(n, c):
    """How often Wilson's limits hold shares of 0.001, 0.002 … 0.999: on average, and least."""
    limits = [wilson(x, n, c) for x in range(n + 1)]
    shares = [k / 1000 for k in range(1, 1000)]
    held = [sum(binom.pmf(x, n, p) for x, (low, high) in enumerate(limits) if low <= p <= high) for p in shares]
    return [float(sum(held) / len(held)), float(min(held))]


def strata_hold(sizes_, lame, looked, c):
    """How often the limits of strata hold the truth, over every draw there is; and so the share with so many standard
    errors to either side."""
    truth, z = mpf(sum(lame)) / sum(sizes_), z_of(c)

    def draws(s, m, n):
        return [(x, Fraction(comb(m, x) * comb(s - m, n - x), comb(s, n))) for x in range(max(0, n - s + m), min(m, n) + 1)]

    held, held_plainly = Fraction(0), Fraction(0)
    for found in product(*(draws(*group) for group in zip(sizes_, lame, looked))):
        chance = prod(part for _, part in found)
        point, error, low, high = strata(sizes_, [x for x, _ in found], looked, c)
        held += chance * (low <= truth <= high)
        held_plainly += chance * (point - z * error <= truth <= point + z * error)
    return [float(held), float(held_plainly)]


grid = [(x, n, c) for n in sizes for x in counts(n) for c in confidences]
finite_grid = [
    (x, n, N, c)
    for N, n in [(1, 1), (2, 1), (10, 3), (40, 20), (40, 39), (40, 40), (100, 20), (120, 60), (400, 148)]
    for x in sorted({0, 1, n // 7, n // 2, n - 1, n} & set(range(n + 1)))
    for c in (0.5, 0.95, 0.9999)
]
pairs = [
    (56, 70, 48, 80), (9, 10, 3, 10), (0, 10, 0, 20), (5, 56, 0, 29), (1, 1, 0, 1), (0, 1, 1, 1), (3, 4, 1, 4),
    (10, 10, 10, 10), (0, 300, 20, 300), (21, 400, 20, 380), (1, 50, 49, 50), (30, 60, 30, 60), (2, 1000, 11, 400),
    (100, 2000, 160, 2000), (7, 30, 7, 31), (60, 60, 12, 40), (12, 40, 60, 60), (5, 5000, 25, 5000),
]  # fmt: skip
trends = [
    ([46000, 46030], [8, 4], [40, 40]),
    ([46000, 46031, 46060, 46092, 46120], [20, 15, 12, 9, 4], [210, 200, 215, 190, 205]),
    ([46000, 46001, 46400], [0, 1, 0], [1, 1, 1]),
    ([45000, 45500, 46000, 46500], [1, 1, 2, 900000], [10**6, 10**6, 10**6, 10**6]),
    ([46120, 46000, 46060], [3, 3, 3], [60, 60, 60]),
    ([46000, 46000, 46010, 46010], [3, 1, 5, 7], [50, 20, 60, 61]),
    (list(range(46000, 46060)), [k % 7 for k in range(60)], [50 + k % 11 for k in range(60)]),
]
looks = [
    (60, 300, 0.85, 0.97, 0.95), (0, 40, 0.9, 0.95, 0.95), (40, 40, 0.9, 0.95, 0.95), (3, 100, 0.8, 0.99, 0.9),
    (1, 1, 0.7, 0.7, 0.5), (250, 10000, 0.95, 0.999, 0.9999), (12, 94, 1, 1, 0.95), (5, 90, 0.6, 0.9, 0.99),
]  # fmt: skip
flocks = [
    ([120, 60, 220], [6, 1, 4], [40, 30, 50]), ([10, 10], [1, 0], [10, 10]), ([100], [5], [50]),
    ([500, 20, 3], [0, 20, 1], [60, 20, 3]), ([10**7, 10**6], [3, 999], [1000, 1000]), ([80, 90, 100, 1], [2, 3, 4, 1], [20, 30, 40, 1]),
]  # fmt: skip

write(
    __file__,
    {
        "wilson": [[list(g), wilson(*g)] for g in grid],
        "exact": [[list(g), exact(*g)] for g in grid],
        "jeffreys": [[list(g), jeffreys(*g)] for g in grid],
        "finite": [[list(g), finite(*g)] for g in finite_grid],
        "fisher": [[list(g), fisher(*g)] for g in pairs],
        "newcombe": [[[*g, c], newcombe(*g, c)] for g in pairs for c in (0.5, 0.95, 0.9999)],
        "trend": [[list(g), trend(*g)] for g in trends],
        "trueShare": [[list(g), true_share(*g)] for g in looks]
        + [[[*g, a, b], true_share(*g, a, b)] for g in looks for a, b in ((100, 300), (5, 1000), (100, None), (None, 300))],
        "strata": [[[*g, c], strata(*g, c)] for g in flocks for c in (0.5, 0.95, 0.9999)],
        "wilsonHolds": [[[n, 0.95], wilson_holds(n, 0.95)] for n in (20, 60, 200, 420)],
        "strataHold": [
            [[[120, 60, 220], lame, [20, 15, 25], 0.95], strata_hold([120, 60, 220], lame, [20, 15, 25], 0.95)]
            for lame in ([0, 0, 2], [2, 1, 4], [6, 3, 11], [40, 6, 20], [2, 30, 0])
        ],
    },
)
