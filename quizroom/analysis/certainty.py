"""Certainty 1, 2 or 3 beside an answer: its mark, and whether it was deserved.

The marks are those that A. R. Gardner-Medwin published for certainty-based marking: right 1, 2, 3;
wrong 0, -2, -6. So it pays to say what one believes: 1 below two thirds, 2 up to four fifths, 3 above.
They stand beside the usual marks and never in standings.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from quizroom.marking import RoomMarks, counts
from quizroom.questions.model import Item
from quizroom.room.state import CERTAINTIES, Answer, Certainty, Room

IF_RIGHT: Mapping[Certainty, int] = MappingProxyType({1: 1, 2: 2, 3: 3})
IF_WRONG: Mapping[Certainty, int] = MappingProxyType({1: 0, 2: -2, 3: -6})


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
    return _added_up(room, marks, lambda _answers: (player,))


def sureness_of_room(room: Room, marks: RoomMarks) -> Sureness | None:
    """The same over all players together."""
    return _added_up(room, marks, lambda answers: answers)


def _added_up(
    room: Room, marks: RoomMarks, whose: Callable[[Mapping[str, Answer]], Iterable[str]]
) -> Sureness | None:
    """Over the answers of `whose`: each is looked up, so that one player costs nothing for the others."""
    if not room.plan.certainty:
        return None
    said = Counter(_said(room, marks, whose))
    return Sureness(
        marks=sum(certainty_mark(level, right=right) * times for (level, right), times in said.items()),
        answers=said.total(),
        levels=tuple(
            Level(certainty=level, answers=said[level, True] + said[level, False], right=said[level, True])
            for level in CERTAINTIES
        ),
    )


def _said(
    room: Room, marks: RoomMarks, whose: Callable[[Mapping[str, Answer]], Iterable[str]]
) -> Iterator[tuple[Certainty, bool]]:
    for current, marked in zip(room.rounds, marks.rounds, strict=True):
        if not counts(current):
            continue
        for player in whose(current.answers):
            answer, seated = current.answers.get(player), room.players.get(player)
            if answer is None or answer.certainty is None or seated is None:
                continue
            if current.number >= seated.from_round:
                yield answer.certainty, is_right(marked.marks[player])
