"""The inverse of a small matrix."""

from collections.abc import Sequence


def inverse(matrix: Sequence[Sequence[float]]) -> list[list[float]]:
    """By Gauss and Jordan, with the largest pivot of each column.

    Raises:
        ZeroDivisionError: the matrix has no inverse.
    """
    size = len(matrix)
    rows = [[*row, *(float(place == other) for other in range(size))] for place, row in enumerate(matrix)]
    for place in range(size):
        best = max(range(place, size), key=lambda row: abs(rows[row][place]))
        rows[place], rows[best] = rows[best], rows[place]
        pivot = rows[place][place]
        rows[place] = [cell / pivot for cell in rows[place]]
        for other in range(size):
            share = rows[other][place]
            if other != place and share:
                rows[other] = [
                    cell - share * known for cell, known in zip(rows[other], rows[place], strict=True)
                ]
    return [row[size:] for row in rows]
