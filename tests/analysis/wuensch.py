"""K. Wuensch's ten students and ten items (handout on KR-20, East Carolina University, StatHelp/KR20.txt).

Its p, pq and variance are published there; what else is compared with it was computed by the libraries named
in the tests, or by hand.
"""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.room.commands import (
    CloseRound,
    Command,
    EndReview,
    OpenDoor,
    OpenRound,
    PrepareReview,
    ShowRecord,
)
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.state import Room
from tests.room.sample_items import one_best
from tests.room.samples import after, ordered, plan, preparation, says, seat

ANSWERS = {
    "A": "1111110110",
    "B": "1011011101",
    "C": "1111011001",
    "D": "0010001000",
    "E": "0000010010",
    "F": "1110111111",
    "G": "1101110111",
    "H": "1111111101",
    "I": "0101111101",
    "J": "1101101110",
}
ROWS = [[float(mark) for mark in marks] for marks in ANSWERS.values()]
COLUMNS = [list(column) for column in zip(*ROWS, strict=True)]
TOTALS = [sum(row) for row in ROWS]
MEANS = {name: total / 10 for name, total in zip(ANSWERS, TOTALS, strict=True)}

P = [0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6]
PQ = [0.21, 0.21, 0.24, 0.21, 0.24, 0.16, 0.21, 0.21, 0.25, 0.24]
VARIANCE = 5.84
"""Of the totals, divisor N."""
CORRECTED = [0.7059, 0.7059, 0.0, 0.4736, 0.5839, 0.2861, -0.0274, 0.7059, -0.1236, 0.4759]
D = [0.75, 0.75, 0.333, 0.333, 0.833, 0.417, 0.0, 0.75, 0.25, 0.583]
PROX = [-0.2059, -0.2059, 0.3509, -0.2059, 0.3509, -0.8852, -0.2059, -0.2059, 0.8619, 0.3509]
CONDITIONAL = [-0.1971, -0.1971, 0.3509, -0.1971, 0.3509, -0.8832, -0.1971, -0.1971, 0.8161, 0.3509]


def wuensch_orders() -> Iterator[tuple[float, Command]]:
    """The data as a review that is played, each order with its second: ten rounds of one best answer.

    Wrong answers are spread over A, C and D.
    """
    items = tuple(
        replace(one_best(f"item-{number}"), subject=f"muscle {number}", facts=(f"fact {number}",))
        for number in range(1, 11)
    )
    yield 0, preparation(*items, by=replace(plan(), title="Wuensch", rounds=10))
    yield 1, OpenDoor(door_code="CDFHJ")
    yield from ((2, seat(name)) for name in ANSWERS)
    for number in range(1, 11):
        opened = 100.0 * number
        yield opened, OpenRound(round=number)
        for place, (name, marks) in enumerate(ANSWERS.items()):
            letter = "B" if marks[number - 1] == "1" else "ACD"[place % 3]
            yield opened + 10 + place, says(name, letter, round_=number)
        yield opened + 29, CloseRound(round=number, by_host=True)
        yield opened + 30, ShowRecord(round=number)
    yield 2000, EndReview()


def wuensch_room() -> Room:
    """The same as a room that is finished."""
    (_, first), *others = wuensch_orders()
    assert isinstance(first, PrepareReview)
    room = replay(prepare("room-1", first, after(0)))
    assert room is not None
    for second, order in others:
        room = ordered(room, order, at=after(second))
    return room
