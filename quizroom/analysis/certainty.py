"""Certainty 1, 2 or 3 beside an answer: its mark, and whether it was deserved.

The marks are those that A. R. Gardner-Medwin published for certainty-based marking: right 1, 2, 3;
wrong 0, -2, -6. So it pays to say what one believes: 1 below two thirds, 2 up to four fifths, 3 above.
They stand beside the usual marks and never in standings.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from quizroom.marking import RoomMarks, counts
from quizroom.questions.model import Item
from quizroom.room.state import CERTAINTIES, Certainty, Room

IF_RIGHT: Mapping[Certainty, int] = MappingProxyType({1: 1, 2: 2, 3: 3})
IF_WRONG: Mapping[Certainty, int] = MappingProxyType({1: 0, 2: -2, 3: -6})
DESERVED: Mapping[Certainty, tuple[float, float]] = MappingProxyType(
    {1: (0.0, 2 / 3), 2: (2 / 3, 4 / 5), 3: (4 / 5, 1.0)}
)
"""Between which shares of right answers a certainty is the best one to say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """How those answers came out that were given with one certainty."""

    certainty: Certainty
    answers: int
    right: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Sureness:
    """Certainty over some answers: the marks together, and each level by itself."""

    marks: int
    answers: int
    levels: tuple[Level, ...]


def asks_certainty(room: Room, item: Item) -> bool:
    """Whether certainty is asked for: where the host chose so, and an answer is right or wrong as a whole."""
    return room.plan.certainty and item.format in ("one_best", "typed")


def certainty_mark(certainty: Certainty, *, right: bool) -> int:
    """What a certainty is worth, once it is known whether the answer was right."""
    return IF_RIGHT[certainty] if right else IF_WRONG[certainty]


def is_right(mark: float) -> bool:
    """Whether an answer counts as right here: a term that is only misspelt was known."""
    return mark > 0


def sureness_of_player(room: Room, marks: RoomMarks, player: str) -> Sureness | None:
    """Over the rounds that count; None where certainty is not asked for."""
    if not room.plan.certainty:
        return None
    return _added_up((sure, right) for who, sure, right in _said(room, marks) if who == player)


def sureness_of_room(room: Room, marks: RoomMarks) -> Sureness | None:
    """The same over all players together."""
    if not room.plan.certainty:
        return None
    return _added_up((sure, right) for _who, sure, right in _said(room, marks))


def _said(room: Room, marks: RoomMarks) -> Iterator[tuple[str, Certainty, bool]]:
    for current, marked in zip(room.rounds, marks.rounds, strict=True):
        if not counts(current):
            continue
        for player, answer in current.answers.items():
            seated = room.players.get(player)
            if answer.certainty is not None and seated is not None and current.number >= seated.from_round:
                yield player, answer.certainty, is_right(marked.marks[player])


def _added_up(said: Iterable[tuple[Certainty, bool]]) -> Sureness:
    known = tuple(said)
    levels = tuple(
        Level(
            certainty=level,
            answers=sum(sure == level for sure, _ in known),
            right=sum(sure == level and right for sure, right in known),
        )
        for level in CERTAINTIES
    )
    total = sum(certainty_mark(sure, right=right) for sure, right in known)
    return Sureness(marks=total, answers=len(known), levels=levels)
