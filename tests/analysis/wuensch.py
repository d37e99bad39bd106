"""K. Wuensch's ten students and ten items (handout on KR-20, East Carolina University, StatHelp/KR20.txt).

Its p, pq and variance are published there; what else is compared with it was computed by the libraries named
in the tests, or by hand.
"""

from dataclasses import replace

from quizroom.room.commands import CloseRound, EndReview, OpenRound, ShowRecord
from quizroom.room.state import Room
from tests.room.sample_items import one_best
from tests.room.samples import after, gathered, ordered, plan, says

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


def wuensch_room() -> Room:
    """The data as a review that was played: ten rounds of one best answer, wrong ones spread over A, C, D."""
    items = tuple(
        replace(one_best(f"item-{number}"), subject=f"muscle {number}", facts=(f"fact {number}",))
        for number in range(1, 11)
    )
    room = gathered(*items, by=replace(plan(), title="Wuensch", rounds=10), players=ANSWERS)
    for number in range(1, 11):
        opened = 100 * number
        room = ordered(room, OpenRound(round=number), at=after(opened))
        for place, (name, marks) in enumerate(ANSWERS.items()):
            letter = "B" if marks[number - 1] == "1" else "ACD"[place % 3]
            room = ordered(room, says(name, letter, round_=number), at=after(opened + 10 + place))
        room = ordered(room, CloseRound(round=number, by_host=True), at=after(opened + 29))
        room = ordered(room, ShowRecord(round=number), at=after(opened + 30))
    return ordered(room, EndReview(), at=after(2000))
