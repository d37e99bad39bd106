"""Quantiles of the F distribution, for intervals of reliability.

By the incomplete beta function as a continued fraction (Abramowitz & Stegun 26.5.8 and 26.6.2, from memory),
compared with a reference library in the tests: a server needs no numeric library for two numbers.
"""

from math import exp, lgamma, log

MOST_TERMS = 500
CLOSE = 1e-14
TINY = 1e-300
HALVINGS = 200


def f_quantile(probability: float, first: float, second: float) -> float:
    """The value that an F variable with these degrees of freedom stays below with this probability."""
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        if incomplete_beta(middle, first / 2, second / 2) < probability:
            low = middle
        else:
            high = middle
    share = (low + high) / 2
    return second * share / (first * (1 - share)) if share < 1 else float("inf")


def incomplete_beta(x: float, a: float, b: float) -> float:
    """The regularised incomplete beta function, 0 to 1."""
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
    front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log(1 - x))
    # The fraction converges fast on this side of the mean only.
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(x, a, b) / a
    return 1 - front * _fraction(1 - x, b, a) / b


def _fraction(x: float, a: float, b: float) -> float:
    """Lentz's way through the continued fraction."""
    c, d = 1.0, 1 / _not_zero(1 - (a + b) * x / (a + 1))
    value = d
    for term in range(1, MOST_TERMS):
        even = term * (b - term) * x / ((a + 2 * term - 1) * (a + 2 * term))
        odd = -(a + term) * (a + b + term) * x / ((a + 2 * term) * (a + 2 * term + 1))
        for step in (even, odd):
            d = 1 / _not_zero(1 + step * d)
            c = _not_zero(1 + step / c)
            value *= c * d
        if abs(c * d - 1) < CLOSE:
            break
    return value


def _not_zero(value: float) -> float:
    return value if abs(value) > TINY else TINY
