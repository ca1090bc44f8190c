"""Reference values for the same sheep looked at twice, and for two lookers. Run by hand:
    python3 tests/references/counting/pairs.py

Tango's limits: the score with the constrained likelihood found by a general optimiser, solved by a general root finder.
McNemar's p and kappa with its standard error: statsmodels. AC1 and its standard error: Gwet's printed sums, not the delta method.
"""

import json
import os

import numpy as np
from scipy.optimize import brentq, minimize_scalar
from scipy.stats import norm
from statsmodels.stats.contingency_tables import mcnemar
from statsmodels.stats.inter_rater import cohens_kappa


def tango(b, c, n, confidence):
    z = norm.ppf((1 + confidence) / 2)

    def score(d):
        lo, hi = max(0.0, -d), (1 - d) / 2
        a = n - b - c

        def minus(q):
            parts = [(b, q + d), (c, q), (a, 1 - 2 * q - d)]
            return -sum(k * np.log(max(p, 1e-300)) for k, p in parts if k > 0)

        q = minimize_scalar(minus, bounds=(lo, hi), method="bounded", options={"xatol": 1e-14}).x
        q = min((lo, hi, q), key=minus)
        return (b - c - n * d) / np.sqrt(max(n * (2 * q + d * (1 - d)), 1e-300))

    p = (b - c) / n
    edge = 1 - 1e-12
    low = -1.0 if score(-edge) < z else brentq(lambda d: score(d) - z, -edge, p)
    high = 1.0 if score(edge) > -z else brentq(lambda d: score(d) + z, p, edge)
    return [p, low, high]


def gwet(table):
    table = np.array(table, float)
    n, k = table.sum(), len(table)
    p = table / n
    pi = (p.sum(0) + p.sum(1)) / 2
    agreed, chance = np.trace(p), (pi * (1 - pi)).sum() / (k - 1)
    g = (agreed - chance) / (1 - chance)
    # Gwet 2008, equation for the variance of AC1 without finite-population correction (from memory).
    inner = sum(p[i, j] * (1 - (pi[i] + pi[j]) / 2) ** 2 for i in range(k) for j in range(k))
    diagonal = sum(p[i, i] * (1 - pi[i]) for i in range(k))
    variance = (
        agreed * (1 - agreed)
        - 4 * (1 - g) * (diagonal / (k - 1) - agreed * chance)
        + 4 * (1 - g) ** 2 * (inner / (k - 1) ** 2 - chance**2)
    ) / (n * (1 - chance) ** 2)
    return g, variance**0.5


def agreement(table, confidence):
    z = norm.ppf((1 + confidence) / 2)
    k = len(table)
    padded = np.array(table, float) + 4 / k**2
    near = cohens_kappa(padded)
    kappa = cohens_kappa(np.array(table, float)).kappa
    ac1, (ac1_near, error) = gwet(table)[0], gwet(padded)

    def limits(value, middle, reach):
        return [value, max(min(middle - reach, value), -1), min(max(middle + reach, value), 1)]

    return {"kappa": limits(kappa, near.kappa, z * near.std_kappa), "AC1": limits(ac1, ac1_near, z * error)}


pairs = [(7, 1, 21), (1, 7, 21), (0, 0, 30), (5, 0, 40), (3, 9, 400), (12, 12, 60), (20, 2, 22), (1, 0, 2), (40, 10, 150)]
tables = [
    [[20, 5], [10, 15]], [[3, 1], [2, 94]], [[40, 9], [6, 45]], [[0, 4], [3, 93]], [[10, 0], [0, 90]],
    [[44, 5, 1], [7, 20, 3], [9, 5, 6]], [[30, 4, 0, 0], [3, 12, 2, 0], [0, 1, 6, 1], [0, 0, 1, 2]],
]  # fmt: skip
values = {
    "paired": [
        [[*pair, c], tango(*pair, c) + [float(mcnemar([[0, pair[0]], [pair[1], 0]], exact=True).pvalue)]]
        for pair in pairs
        for c in (0.5, 0.9, 0.95, 0.99)
    ],
    "agreement": [[[t, c], agreement(t, c)] for t in tables for c in (0.8, 0.95, 0.99)],
}
with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "pairs.json"), "w") as file:
    json.dump(values, file, indent=None)
    file.write("\n")
