"""Distributions in 40-digit arithmetic (mpmath), from their definitions: sums of positive terms, no approximation.

Used by the make.py of each topic. Run by hand: python3 tests/references/<topic>/make.py
(Debian: python3-mpmath, python3-scipy).
"""

import json
import os

from mpmath import erfinv, exp, gammainc, log, loggamma, mp, mpf, sqrt

mp.dps = 40


def share(x):
    """The decimal number that is meant, not the double next to it."""
    return mpf(str(x))


def z_of(confidence):
    return sqrt(2) * erfinv(share(confidence))


def beta_lower(x, a, b):
    """Regularized incomplete beta function, from the side whose series is the shorter."""
    return beta_series(x, a, b) if x < mpf(1) / 2 else 1 - beta_series(1 - x, b, a)


def beta_series(x, a, b):
    """x^a y^b / (a B(a, b)) times a series of positive terms."""
    y = 1 - x
    front = exp(a * log(x) + b * log(y) + loggamma(a + b) - loggamma(a + 1) - loggamma(b))
    term, total, n = mpf(1), mpf(1), 0
    while term > total * mpf(10) ** -32:
        term *= x * (a + b + n) / (a + 1 + n)
        total += term
        n += 1
    return front * total


def beta_density(x, a, b):
    return exp((a - 1) * log(x) + (b - 1) * log(1 - x) + loggamma(a + b) - loggamma(a) - loggamma(b))


def beta_quantile_lower(p, a, b, start):
    """Newton on the logarithm of the tail from a guess good to some digits."""
    x = mpf(start)
    for _ in range(60):
        tail = beta_lower(x, a, b)
        step = log(tail / p) * tail / beta_density(x, a, b)
        x -= step
        if abs(step) < x * mpf(10) ** -25:
            return x
    raise ArithmeticError(f"no quantile for {p} {a} {b}")


def gamma_lower(x, a):
    return gammainc(a, 0, x, regularized=True)


def gamma_upper(x, a):
    return gammainc(a, x, regularized=True)


def write(script, values):
    """values: name of the check → list of cases [arguments, what comes out]."""
    path = os.path.join(os.path.dirname(os.path.abspath(script)), "values.json")
    with open(path, "w") as file:
        file.write("{\n")
        file.write(
            ",\n".join(
                f'"{name}": [\n' + ",\n".join(json.dumps(case) for case in cases) + "\n]" for name, cases in values.items()
            )
        )
        file.write("\n}\n")
    print({name: len(cases) for name, cases in values.items()}, sum(len(c) for c in values.values()))
