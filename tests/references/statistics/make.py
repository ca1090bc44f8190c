"""Reference values for tests/core/statistics: densities and tails in 40-digit arithmetic."""

import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
from precise import beta_lower, exp, gamma_lower, gamma_upper, log, loggamma, mpf, write  # noqa: E402


def ln_choose(n, k):
    return loggamma(mpf(n) + 1) - loggamma(mpf(k) + 1) - loggamma(mpf(n - k) + 1)


# Here the doubles themselves are meant: both sides are given the same p.
def binomial(x, n, p):
    return float(exp(ln_choose(n, x) + x * log(mpf(p)) + (n - x) * log(1 - mpf(p))))


def hypergeometric(x, N, M, n):
    return exp(ln_choose(M, x) + ln_choose(N - M, n - x) - ln_choose(N, n))


def hypergeometric_tails(x, N, M, n):
    """Both tails by ratios of neighbouring terms, as far as 40 digits go."""
    at = hypergeometric(x, N, M, n)
    lower, term, k = at, at, x
    while k > max(0, n - N + M) and term > lower * mpf(10) ** -30:
        term *= mpf(k) * (N - M - n + k) / (mpf(M - k + 1) * (n - k + 1))
        lower += term
        k -= 1
    upper, term, k = at, at, x
    while k < min(n, M) and term > upper * mpf(10) ** -30:
        term *= mpf(M - k) * (n - k) / (mpf(k + 1) * (N - M - n + k + 1))
        upper += term
        k += 1
    return [float(at), float(lower), float(upper)]


def beta_tails(x, a, b):
    lower = beta_lower(mpf(x), mpf(a), mpf(b))
    return [float(lower), float(1 - lower)]


def gamma_tails(x, a):
    return [float(gamma_lower(mpf(x), mpf(a))), float(gamma_upper(mpf(x), mpf(a)))]


write(
    __file__,
    {
        "binomial": [
            [[x, n, p], binomial(x, n, p)]
            for n in (1, 2, 20, 420, 10_000, 10_000_000)
            for p in (1e-7, 0.02, 0.3, 0.5, 0.97)
            for x in sorted({0, 1, n, n - 1, round(n * p), round(n * p * 0.9)})
            if 0 <= x <= n and binomial(x, n, p) > 1e-280
        ],
        "hypergeometric": [
            [[x, N, M, n], hypergeometric_tails(x, N, M, n)]
            for N, M, n in (
                (2, 1, 1), (40, 4, 20), (100, 20, 10), (1000, 50, 57), (10_000, 500, 400), (10**6, 10_000, 50_000),
                (10**7, 1000, 500_000), (10**7, 100_000, 500_000), (10**7, 5_000_000, 4_000_000),
            )
            for mean in (n * M // N,)
            for x in sorted({max(0, mean - round(mean**0.5)), mean, mean + round(mean**0.5) + 1})
            if max(0, n - N + M) <= x <= min(n, M)
        ],
        "beta": [
            [[x, a, b], beta_tails(x, a, b)]
            for x, a, b in (
                (0.25, 1, 1), (0.02, 3, 100), (0.9, 0.5, 0.5), (0.001, 0.5, 300.5), (0.05, 500, 10_000), (0.049, 500, 10_000),
                (0.0505, 500_001, 9_500_000), (0.0495, 500_001, 9_500_000), (5e-7, 2, 10_000_000), (0.3, 3_000_001, 7_000_000),
                (0.2999, 3_000_001, 7_000_000), (0.6, 30, 7), (0.03, 0.02, 5), (1e-12, 0.01, 0.01),
            )
        ],
        "gamma": [
            [[x, a], gamma_tails(x, a)]
            for x, a in (
                (0.5, 0.5), (1, 1), (3.84, 0.5), (20, 0.5), (0.001, 0.5), (5, 5), (100, 120), (130, 100), (10_050, 10_000), (9_950, 10_000),
            )
        ],
    },
)
