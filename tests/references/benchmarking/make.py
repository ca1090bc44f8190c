"""Reference values for tests/core/benchmarking: funnel limits and words, beta-binomial fits and their tails, steadied
shares, intra-flock correlation and its range."""

import os
import random
import sys
from fractions import Fraction
from math import comb

import numpy as np
from mpmath import digamma, findroot, log, loggamma
from scipy.integrate import quad
from scipy.optimize import brentq, minimize, minimize_scalar
from scipy.special import betainc, betaincc, betaln
from scipy.stats import betabinom, binom, chi2, norm, t

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import mpf, write  # noqa: E402


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


def posterior(lame, seen, c):
    """Every flock's share, averaged over all beta distributions of mean m and root r of the intra-flock correlation, flat
    in both: a dense product grid (Gauss-Legendre in r in four pieces, equal steps in logit m), betaln from scipy. Mean
    and equal-tailed limits of each flock; the limits by brentq on the mixture of betainc."""
    x, n = np.array(lame), np.array(seen)
    g, gw = np.polynomial.legendre.leggauss(40)
    ends = [0, 0.1, 0.25, 0.5, 1]
    r = np.concatenate([(lo + hi) / 2 + (hi - lo) / 2 * g for lo, hi in zip(ends, ends[1:])])
    rw = np.concatenate([(hi - lo) / 2 * gw for lo, hi in zip(ends, ends[1:])])
    u = np.linspace(-14, 9, 1151)
    R, U = np.meshgrid(r, u, indexing="ij")
    m, size = 1 / (1 + np.exp(-U)), (1 - R**2) / R**2
    a, b = m * size, (1 - m) * size
    logs = np.log(rw)[:, None] + np.log(m) + np.log1p(-m)
    for k, k_all in zip(x, n):
        logs = logs + betaln(a + k, b + k_all - k) - betaln(a, b)
    w_ = np.exp(logs - logs.max())
    w_ /= w_.sum()
    keep = w_ > 1e-10 * w_.max()
    a, b, w_ = a[keep], b[keep], w_[keep]
    tail, rows = (1 - c) / 2, []
    for k, k_all in zip(x, n):
        p, q = a + k, b + k_all - k
        mean = float((w_ * p / (p + q)).sum())
        lower = lambda v: (w_ * betainc(p, q, 1 / (1 + np.exp(-v)))).sum() - tail  # noqa: E731, B023
        upper = lambda v: (w_ * betaincc(p, q, 1 / (1 + np.exp(-v)))).sum() - tail  # noqa: E731, B023
        # Nearer to 0 or 1 than any look at sheep can tell.
        low = 0.0 if lower(-40) > 0 else 1 / (1 + np.exp(-brentq(lower, -40, 20, xtol=1e-8)))
        high = 1.0 if upper(30) > 0 else 1 / (1 + np.exp(-brentq(upper, -40, 30, xtol=1e-8)))
        rows.append([mean, float(low), float(high)])
    return rows


def profile(lame, seen, c):
    """The intra-flock correlations whose profile likelihood is within half a squared t value of the greatest: scipy's
    betabinom over a fine grid of the root of the correlation, the share found by bounded minimisation, ends by brentq."""
    x, n = np.array(lame), np.array(seen)

    def height(root):
        size = (1 - root**2) / root**2
        minus = lambda v: -np.sum(  # noqa: E731
            betaln(size / (1 + np.exp(-v)) + x, size / (1 + np.exp(v)) + n - x) - betaln(size / (1 + np.exp(-v)), size / (1 + np.exp(v)))
        )
        return -minimize_scalar(minus, bounds=(-15, 15), method="bounded", options={"xatol": 1e-10}).fun

    grid = np.linspace(0.002, 0.9999, 150)
    heights = np.array([height(v) for v in grid])
    best = int(heights.argmax())
    top = -minimize_scalar(
        lambda v: -height(v), bounds=(grid[max(best - 1, 0)], grid[min(best + 1, 149)]), method="bounded", options={"xatol": 1e-10}
    ).fun
    cut = t.ppf(1 - (1 - c) / 2, len(x) - 1) ** 2 / 2
    low = 0.0 if heights[0] > top - cut else brentq(lambda v: height(v) - top + cut, grid[0], grid[best], xtol=1e-12) ** 2
    high = 1.0 if heights[-1] > top - cut else brentq(lambda v: height(v) - top + cut, grid[best], grid[-1], xtol=1e-12) ** 2
    return [float(low), float(high)]


def highest(lame, seen):
    """The greatest log-likelihood over a fine grid of the spread 1 / (a + b), 0 among them, relative to no spread."""
    x, n = np.array(lame), np.array(seen)
    pooled = x.sum() / n.sum()
    without = float(np.sum(x * np.log(pooled) + (n - x) * np.log1p(-pooled)))
    best = [0.0, 0.0]
    for s in np.exp(np.linspace(np.log(1e-5), np.log(1e3), 300)):
        minus = lambda v: -np.sum(  # noqa: E731
            betaln(1 / s / (1 + np.exp(-v)) + x, 1 / s / (1 + np.exp(v)) + n - x)  # noqa: B023
            - betaln(1 / s / (1 + np.exp(-v)), 1 / s / (1 + np.exp(v)))  # noqa: B023
        )
        gain = -minimize_scalar(minus, bounds=(-15, 15), method="bounded", options={"xatol": 1e-9}).fun - without
        if gain > best[1]:
            best = [float(s), float(gain)]
    return best


def words(x, n, target):
    """Both binomial tails in fractions."""
    f = Fraction(str(target))
    chances = [comb(n, k) * f**k * (1 - f) ** (n - k) for k in range(n + 1)]
    lower, upper = sum(chances[: x + 1]), sum(chances[x:])
    for tail, name in ((Fraction(1, 1000), "99.8 %"), (Fraction(25, 1000), "95 %")):
        if upper <= tail:
            return f"above the {name} limit"
        if lower <= tail:
            return f"below the {name} limit"
    return "within the limits"


def tails(x, n, m, rho):
    """Both beta-binomial tails as sums of products of fractions."""
    m, rho = Fraction(str(m)), Fraction(str(rho))
    size = (1 - rho) / rho
    a, b = m * size, (1 - m) * size
    chance, chances = Fraction(1), []
    for j in range(n):
        chance *= (b + j) / (size + j)
    for k in range(n + 1):
        chances.append(chance)
        if k < n:
            chance *= (n - k) * (a + k) / ((k + 1) * (b + n - k - 1))
    return [float(sum(chances[: x + 1])), float(sum(chances[x:]))]


def differ(lame, seen, target):
    """Spiegelhalter's additive variance about the target from residuals winsorised at a tenth, by his formulas; the squares
    over what winsorising leaves of a normal variance (by integration), and at the twelfths of a scaled inverse chi-square."""
    x, n = np.array(lame), np.array(seen)
    z = (x / n - target) / np.sqrt(target * (1 - target) / n)
    k = len(z) // 10
    ordered = np.sort(z)
    phi = np.mean(np.clip(z, ordered[k], ordered[len(z) - 1 - k]) ** 2)
    if k > 0:
        edge = norm.isf(k / len(z))
        phi /= 2 * (quad(lambda u: u * u * norm.pdf(u), 0, edge, epsabs=1e-13)[0] + edge**2 * norm.sf(edge))
    weight = n / (target * (1 - target))
    freedom = len(z) - 1 - 2 * k
    phis = phi * freedom / chi2.ppf((np.arange(12) + 0.5) / 12, freedom)
    tau2 = (len(z) * phis - (len(z) - 1)) / (weight.sum() - (weight**2).sum() / weight.sum())
    return [float(v) for v in np.clip(tau2 / (target * (1 - target)), 0, 0.99)]


def widened(lame, seen, target):
    """Each flock's word by the mean of beta-binomial tails over the spreads of `differ`, as scipy has them; only where no
    tail lies so near a limit that the last digits decide."""
    words = []
    rhos = differ(lame, seen, target)
    for x, n in zip(lame, seen):
        laws = [binom(n, target) if r == 0 else betabinom(n, target * (1 / r - 1), (1 - target) * (1 / r - 1)) for r in rhos]
        up, down = np.mean([law.sf(x - 1) for law in laws]), np.mean([law.cdf(x) for law in laws])
        words.append(
            "above the 99.8 % limit" if up <= 0.001 else "above the 95 % limit" if up <= 0.025
            else "below the 99.8 % limit" if down <= 0.001 else "below the 95 % limit" if down <= 0.025
            else "within the limits"
        )
    return words


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
missed = ([0, 92, 0, 47, 0], [60, 800, 20, 400, 20])
small = [missed, cbpp, ([1, 1], [10, 10]), ([0, 0, 0], [40, 10, 90]), ([0, 5], [5, 5]), ([0, 45, 20, 4], [10, 300, 400, 20])]


def unlike(count, seed):
    """Random flocks of very unlike sizes, for which the likelihood often has two tops."""
    draw = random.Random(seed)
    found = []
    while len(found) < count:
        seen = [int(2 + 10 ** draw.uniform(0, 3)) for _ in range(draw.randint(2, 8))]
        lame = [min(n, int(n * draw.choice([0, 0, 0.02, 0.1, 0.12, 0.5]) + draw.randint(0, 1))) for n in seen]
        if 0 < sum(lame) < sum(seen) and any(0 < x < n for x, n in zip(lame, seen)):
            found.append((lame, seen))
    return found


random_sets = unlike(25, 6)
# Random flocks around 5 %, of like sizes and with ordinary spreads: 10 to 40 of them, seeds 100 to 129.
alike_sets = [invented(10 + seed % 31, 0.95 * k, 18.05 * k, 200, 100 + seed) for seed in range(30) for k in [(1, 2.5, 50)[seed % 3]]]
sizes = [1, 2, 7, 20, 60, 100, 420, 500, 10_000, 1_000_000]
write(
    __file__,
    {
        "funnel": [
            [[p, n, t], funnel(p, n, t)] for n in sizes for t in (0.001, 0.05, 0.3, 0.9) for p in (0.001, 0.025, 0.975, 0.999)
        ],
        "fit": [[list(s), (lambda ab: [float(ab[0] / sum(ab)), float(1 / sum(ab))])(fit(*s))] for s in sets],
        "posterior": [[[*s, c], posterior(*s, c)] for s in [*small, *alike_sets[:6]] for c in (0.95,)],
        "profile": [[[*s, c], profile(*s, c)] for s in [*small, *sets[5:8], *alike_sets[:8]] for c in (0.8, 0.95)],
        "highest": [[list(s), highest(*s)] for s in [missed, *small[1:], *random_sets] if any(0 < x < n for x, n in zip(*s))],
        "words": [[[x, n, t], words(x, n, t)] for n in (1, 2, 5, 20, 60, 300) for t in (0.02, 0.05, 0.3) for x in range(min(n, 40) + 1)],
        "differ": [[[*s, t], differ(*s, t)] for s in [*small, *sets[5:], *alike_sets] for t in (0.05, 0.2)],
        "widened": [[[*s, 0.05], widened(*s, 0.05)] for s in [*sets[5:], *alike_sets]],
        "tails": [
            [[x, n, m, rho], tails(x, n, m, rho)]
            for n in (1, 5, 60, 400) for m in (0.05, 0.3) for rho in (0.001, 0.02, 0.3) for x in sorted({0, 1, n // 5, n // 2, n} & set(range(n + 1)))
        ],
        "spread": [[list(s), spread(*s)] for s in [*sets, *alike_sets] if sum(s[1]) < 50_000],
    },
)
