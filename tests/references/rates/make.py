"""Reference values for tests/core/watching: ratios of rates where one period holds nearly all cases, or nearly all time."""

import os
import sys

from mpmath import mpf
from scipy.special import betaincinv
from scipy.stats import binomtest

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import beta_quantile_lower, share, write  # noqa: E402


def quantile(p, a, b):
    return beta_quantile_lower(p, mpf(a), mpf(b), betaincinv(float(a), float(b), float(p)))


def rate_change(x0, d0, x1, d1, c):
    """Limits of the odds from the small end of the beta distribution, in 40 digits, so that nothing cancels; R's
    binom.test and poisson.test rest on the same quantiles."""
    t, scale = (1 - share(c)) / 2, mpf(d0) / d1
    low = quantile(t, x1, x0 + 1) if x1 > 0 else mpf(0)
    rest = quantile(t, x0, x1 + 1)
    p = binomtest(x0, x0 + x1, d0 / (d0 + d1)).pvalue
    return [float(mpf(x1) / x0 * scale), float(low / (1 - low) * scale), float((1 - rest) / rest * scale), p]


write(
    __file__,
    {
        "lopsided": [
            [[x0, d0, x1, d1, c], rate_change(x0, d0, x1, d1, c)]
            for x0, x1 in ((1, 1), (1, 100), (1, 10_000), (1, 1_000_000), (3, 200_000), (50, 1_000_000), (10_000, 1))
            for d0, d1 in ((1000, 1000), (1, 1_000_000), (1_000_000, 1))
            for c in (0.8, 0.95, 0.9999)
        ],
    },
)
