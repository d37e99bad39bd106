"""Who got what in which item: the matrix that all statistics of a review are made from."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from quizroom.analysis.rapid import is_rapid
from quizroom.marking import RoomMarks, RoundMarks, counts
from quizroom.room.state import Room, Round

LEAST_SHARE_ANSWERED = 0.5
"""Who answered fewer of the items is not ranked: one lucky answer makes nobody strong (own choice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One item, with the marks of those whose own first answer tells something about it."""

    current: Round
    marks: Mapping[str, float]
    """By player. Rapid guesses are not in it, nor is anybody who handed nothing in."""
    rapid: int
    """How many answers were rapid guesses."""
    silent: int
    """How many were in the room and handed nothing in."""

    @property
    def is_right_or_wrong(self) -> bool:
        """Whether nobody got a part of the mark, so that the item is one of 0 and 1."""
        return all(mark in (0.0, 1.0) for mark in self.marks.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class Responses:
    """The marks of everybody by item: closed rounds alone, struck items left out."""

    columns: tuple[Column, ...]
    players: tuple[str, ...]
    """Who answered at least one of these items, in the order in which they came."""

    def complete(self) -> tuple[str, ...]:
        """The players who answered every item."""
        return tuple(one for one in self.players if all(one in column.marks for column in self.columns))

    def ranked(self) -> dict[str, float]:
        """By player the mean mark over the items answered, for those who answered half of them or more."""
        needed = LEAST_SHARE_ANSWERED * len(self.columns)
        means: dict[str, float] = {}
        for player in self.players:
            marks = self.marks_of(player)
            if len(marks) >= needed:
                means[player] = sum(marks) / len(marks)
        return means

    def marks_of(self, player: str) -> list[float]:
        """The marks of one player for the items that were answered."""
        return [column.marks[player] for column in self.columns if player in column.marks]

    def only(self, wanted: Callable[[Column], bool]) -> "Responses":
        """The same for some of the items."""
        return Responses(
            columns=tuple(column for column in self.columns if wanted(column)), players=self.players
        )


def responses_of(room: Room, marks: RoomMarks, breathe: Callable[[], None] = lambda: None) -> Responses:
    """The matrix of a review as it now stands.

    What was before a player came is missing, not wrong; so is what somebody in the room did not answer. In a
    rehearsal no answer is a rapid guess: programs read as fast as they like. `breathe` is called in between.
    """
    columns: list[Column] = []
    for current, marked in zip(room.rounds, marks.rounds, strict=True):
        if counts(current):
            columns.append(_column(room, current, marked))
            breathe()
    answered = {player for column in columns for player in column.marks}
    return Responses(columns=tuple(columns), players=tuple(one for one in room.players if one in answered))


def _column(room: Room, current: Round, marked: RoundMarks) -> Column:
    there = [one.id for one in room.players.values() if one.from_round <= current.number]
    answers = {player: current.answers[player] for player in there if player in current.answers}
    considered = {
        player: marked.marks[player]
        for player, answer in answers.items()
        if room.plan.rehearsal or not is_rapid(current, answer)
    }
    return Column(
        current=current,
        marks=considered,
        rapid=len(answers) - len(considered),
        silent=len(there) - len(answers),
    )
