"""What came of a rehearsal, in a few lines."""

from collections import Counter
from collections.abc import Iterable
from statistics import median, quantiles
from typing import Any

from quizroom.rehearsal.seat import SimulatedSeat


def summary(desk: dict[str, Any], seats: Iterable[SimulatedSeat]) -> str:
    """Rounds, players, answers and how long their acknowledgement took."""
    everybody = tuple(seats)
    waits = [wait for seat in everybody for wait in seat.waits_ms]
    refused = Counter(code for seat in everybody for code in seat.refused)
    lines = [
        f"Played {_count(desk['public']['round'], 'round')} with {_count(len(desk['roster']), 'player')}.",
        f"{_count(len(waits), 'answer')} acknowledged{_waits(waits)}.",
        *[f"{_count(number, 'message')} refused: {code}." for code, number in sorted(refused.items())],
        *_hardest(desk),
    ]
    return "\n".join(lines)


def round_line(desk: dict[str, Any], number: int) -> str:
    """How one closed round went."""
    result = desk["public"]["result"]
    if result is None:
        return ""
    mean = "" if result["mean_mark"] is None else f", mean mark {result['mean_mark']:.2f}"
    struck = ", struck: it counts for nobody" if result["struck"] else ""
    return f"Round {number}: {result['answered']} of {result['of']} answered{mean}{struck}"


def _hardest(desk: dict[str, Any]) -> list[str]:
    marked = [item for item in desk["items"] if item["mean_mark"] is not None and not item["struck"]]
    if not marked:
        return []
    item = min(marked, key=lambda item: float(item["mean_mark"]))
    return [f"Missed most, with a mean mark of {item['mean_mark']:.2f}: {item['stem']}"]


def _waits(waits: list[float]) -> str:
    if len(waits) < 2:
        return ""
    slow = quantiles(waits, n=20)[-1]
    return f", half of them within {median(waits):.0f} ms and 95 in 100 within {slow:.0f} ms"


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"
