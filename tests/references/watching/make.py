"""Reference values for tests/core/watching: chart limits, moving averages, false alarms, rates."""

import os
import sys
from fractions import Fraction
from math import comb

from scipy.special import gammainccinv, gammaincinv
from scipy.stats import binom, binomtest

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import beta_quantile_lower, exp, gamma_lower, gamma_upper, log, loggamma, mpf, share, sqrt, write  # noqa: E402
from scipy.special import betaincinv  # noqa: E402

tail = Fraction("0.00135")


def binomial_limits(n, p):
    """Smallest counts with F ≥ 0.00135 and F ≥ 0.99865: fractions of whole numbers for small n, scipy for large."""
    if n > 500:
        return [int(binom.ppf(float(tail), n, p)), int(binom.ppf(1 - float(tail), n, p))]
    f = Fraction(str(p))
    found, total = [], Fraction(0)
    targets = [tail, 1 - tail]
    for k in range(n + 1):
        total += comb(n, k) * f**k * (1 - f) ** (n - k)
        while targets and total >= targets[0]:
            found.append(k)
            targets.pop(0)
    return found


def three_sigma(n, p):
    p_ = share(p)
    reach = 3 * sqrt(p_ * (1 - p_) / n)
    return [float(max(p_ - reach, 0)), float(min(p_ + reach, 1))]


def drift(counts, weight, width, target):
    """EWMA as the weighted sum it is, not by recursion; variance likewise."""
    w, t = share(weight), share(target)
    rows = []
    for i in range(len(counts)):
        average = (1 - w) ** (i + 1) * t + sum(
            w * (1 - w) ** (i - j) * mpf(x) / n for j, (x, n) in enumerate(counts[: i + 1])
        )
        variance = sum((w * (1 - w) ** (i - j)) ** 2 * t * (1 - t) / n for j, (_, n) in enumerate(counts[: i + 1]))
        reach = width * sqrt(variance)
        rows.append([float(average), float(max(t - reach, 0)), float(min(t + reach, 1))])
    return rows


def false_alarms(n, p, lengths):
    """Carries the sides of the last seven gathers along, every possible history of them with its chance."""
    low, high = binomial_limits(n, p)
    f, kinds = Fraction(str(p)), {}
    for k in range(n + 1):
        side = (Fraction(k, n) > f) - (Fraction(k, n) < f)
        chance = comb(n, k) * f**k * (1 - f) ** (n - k)
        kinds[(side, k < low or k > high)] = kinds.get((side, k < low or k > high), Fraction(0)) + chance
    kinds = {kind: mpf(c.numerator) / c.denominator for kind, c in kinds.items()}
    histories = {((), False, False): mpf(1)}
    found = []
    for gather in range(1, max(lengths) + 1):
        following = {}
        for (sides, outside, run), chance in histories.items():
            for (side, out), c in kinds.items():
                eight = sides + (side,)
                is_run = run or (len(eight) == 8 and side != 0 and len(set(eight)) == 1)
                state = (eight[-7:], outside or out, is_run)
                following[state] = following.get(state, mpf(0)) + chance * c
        histories = following
        if gather in lengths:
            beyond = sum(c for (_, o, _), c in histories.items() if o)
            runs = sum(c for (_, _, r), c in histories.items() if r)
            either = sum(c for (_, o, r), c in histories.items() if o or r)
            found.append([[n, p, gather], [float(beyond), float(runs), float(either)]])
    return found


def gamma_quantile(which, p, a):
    """Newton in 40 digits from scipy's value."""
    x = mpf((gammaincinv if which == "lower" else gammainccinv)(float(a), float(p)))
    for _ in range(40):
        t = gamma_lower(x, a) if which == "lower" else gamma_upper(x, a)
        density = exp((a - 1) * log(x) - x - loggamma(a))
        step = (1 if which == "lower" else -1) * log(t / p) * t / density
        x -= step
        if abs(step) < x * mpf(10) ** -25:
            return x
    raise ArithmeticError((which, p, a))


def garwood(x, c):
    t = (1 - share(c)) / 2
    low = 0 if x == 0 else float(gamma_quantile("lower", t, mpf(x)))
    return [low, float(gamma_quantile("upper", t, mpf(x + 1)))]


def rate_change(x0, d0, x1, d1, c):
    """Ratio after / before with Clopper-Pearson limits of the share of cases that came after, and scipy's binomial p."""
    t, n, scale = (1 - share(c)) / 2, x0 + x1, mpf(d0) / d1

    def quantile(a, b):
        return beta_quantile_lower(t, mpf(a), mpf(b), betaincinv(float(a), float(b), float(t)))

    low = mpf(0) if x1 == 0 else quantile(x1, x0 + 1)
    low = low / (1 - low) * scale
    p = binomtest(x1, n, d1 / (d0 + d1)).pvalue
    if x0 == 0:
        return [None, float(low), None, p]
    upper = quantile(x0, x1 + 1)
    return [float(mpf(x1) / x0 * scale), float(low), float((1 - upper) / upper * scale), p]


def sheep_days(counts, until):
    """Day by day: the latest count on or before each day."""
    total = 0
    for day in range(min(d for d, _ in counts), until):
        total += max((d, h) for d, h in counts if d <= day)[1]
    return total


sizes = [1, 2, 5, 20, 60, 200, 420, 10_000, 1_000_000, 10_000_000]
shares = [0.0001, 0.01, 0.02, 0.05, 0.1, 0.3, 0.5, 0.7, 0.98]
gathers = [(5, 50), (10, 80), (0, 20), (3, 200), (60, 420), (1, 1), (0, 1), (25, 10000)]
rates = [
    (15, 19017, 41, 28010), (0, 100, 1, 100), (1, 100, 0, 100), (5, 36525, 5, 36525), (100, 40000, 60, 41000),
    (0, 1000, 9, 5000), (1200, 10**7, 1300, 10**7), (3, 0.5, 40, 2.25),
]  # fmt: skip
write(
    __file__,
    {
        "binomialLimits": [[[n, p], binomial_limits(n, p)] for n in sizes for p in shares],
        "threeSigma": [[[n, p], three_sigma(n, p)] for n in sizes for p in shares],
        "drift": [
            [[w, l, t], drift(gathers, w, l, t)] for w in (0.05, 0.2, 0.5, 1) for l in (2, 3) for t in (0.001, 0.05, 0.5)
        ],
        "driftCounts": [list(g) for g in gathers],
        "falseAlarms": [
            case
            for n, p in ((1, 0.5), (4, 0.25), (20, 0.02), (20, 0.1), (60, 0.05))
            for case in false_alarms(n, p, (1, 7, 8, 9, 12))
        ],
        "garwood": [
            [[x, c], garwood(x, c)] for x in (0, 1, 2, 5, 10, 60, 300, 10_000) for c in (0.5, 0.8, 0.95, 0.99, 0.9999)
        ],
        "rateChange": [[[*r, c], rate_change(*r, c)] for r in rates for c in (0.5, 0.95, 0.9999)],
        "sheepDays": [
            [[counts, until], sheep_days(counts, until)]
            for counts in ([(46000, 100)], [(46010, 90), (46000, 100), (46200, 140)], [(46000, 0), (46001, 7), (46300, 3)])
            for until in (46000 if len(counts) == 1 else 46001, 46050, 46400)
        ],
    },
)
