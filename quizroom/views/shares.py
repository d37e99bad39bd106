"""Counts as shares."""


def share(count: int, whole: int) -> float:
    """`count` of `whole`, 0 to 1."""
    return round(count / whole, 4) if whole else 0.0
