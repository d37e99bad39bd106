"""What talking changed: first and second answers, a twin item, and the gain."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from quizroom.marking import RoomMarks
from quizroom.room.state import Room, Round

Advice = Literal["explain", "talk", "go on"]

EXPLAIN_BELOW = 0.35
GO_ON_ABOVE = 0.70
"""Act on the first answers: below 35 % right explain again, up to 70 % let them talk, above go on (Vickrey
2015)."""
NO_GAIN = "All had it right before: there was nothing to gain."
NOBODY_TWICE = "Nobody answered both times."


@dataclass(frozen=True, slots=True, kw_only=True)
class RightOf:
    """How many had the full mark, of how many who answered."""

    right: int
    of: int

    @property
    def share(self) -> float | None:
        """0 to 1, or None if nobody answered."""
        return self.right / self.of if self.of else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What became of those who answered both times."""

    right_right: int
    right_wrong: int
    wrong_right: int
    wrong_wrong: int

    @property
    def before(self) -> RightOf:
        """Right the first time."""
        return RightOf(right=self.right_right + self.right_wrong, of=self.of)

    @property
    def after(self) -> RightOf:
        """Right the second time."""
        return RightOf(right=self.right_right + self.wrong_right, of=self.of)

    @property
    def of(self) -> int:
        """How many answered both times."""
        return self.right_right + self.right_wrong + self.wrong_right + self.wrong_wrong


@dataclass(frozen=True, slots=True, kw_only=True)
class TalkOfRound:
    """A round that was talked over. `gain` is None where it is not defined; `no_gain` then says why."""

    round: int
    first: RightOf
    second: RightOf
    twin_round: int | None
    twin: RightOf | None
    """Of the twin, once it is closed."""
    change: Change
    gain: float | None
    no_gain: str


def advice(first: RightOf) -> Advice | None:
    """What the published thresholds advise after the first answers; None if nobody answered."""
    share = first.share
    if share is None:
        return None
    if share < EXPLAIN_BELOW:
        return "explain"
    return "talk" if share <= GO_ON_ABOVE else "go on"


def normalised_gain(before: float, after: float) -> float | None:
    """(after - before) / (1 - before), the part of what was missing that was gained; negative for a loss.

    None where nothing was missing (Hake 1998). `before` and `after` are shares, 0 to 1.
    """
    return None if before >= 1 else (after - before) / (1 - before)


def talk_of_room(room: Room, marks: RoomMarks) -> tuple[TalkOfRound, ...]:
    """All rounds that were answered again, for the desk and the report; struck ones are left out."""
    return tuple(
        talk_of_round(room, marks, current)
        for current in room.rounds
        if current.again_closed_at is not None and not current.struck
    )


def talk_of_round(room: Room, marks: RoomMarks, current: Round) -> TalkOfRound:
    """What talking changed in one round that was answered again."""
    first, second = marks.rounds[current.number - 1].marks, _second(marks, current)
    change = change_of(first, second)
    twin = _twin_of(room, current)
    closed = twin is not None and twin.closed_at is not None and not twin.struck
    before, after = change.before.share, change.after.share
    gain = None if before is None or after is None else normalised_gain(before, after)
    return TalkOfRound(
        round=current.number,
        first=right_of(first),
        second=right_of(second),
        twin_round=None if twin is None else twin.number,
        twin=right_of(marks.rounds[twin.number - 1].marks) if twin is not None and closed else None,
        change=change,
        gain=gain,
        no_gain="" if gain is not None else NOBODY_TWICE if before is None else NO_GAIN,
    )


def change_of(first: Mapping[str, float], second: Mapping[str, float]) -> Change:
    """The change from first to second marks, by player, over those who have both."""
    both = [(has_full(first[player]), has_full(second[player])) for player in first if player in second]
    return Change(
        right_right=both.count((True, True)),
        right_wrong=both.count((True, False)),
        wrong_right=both.count((False, True)),
        wrong_wrong=both.count((False, False)),
    )


def has_full(mark: float) -> bool:
    """Whether an answer counts as right here: half marks and parts of a set are not yet."""
    return mark >= 1


def right_of(marks: Mapping[str, float]) -> RightOf:
    """How many of those who answered have the full mark."""
    return RightOf(right=sum(has_full(mark) for mark in marks.values()), of=len(marks))


def _second(marks: RoomMarks, current: Round) -> Mapping[str, float]:
    second = marks.seconds[current.number - 1]
    return {} if second is None else second.marks


def _twin_of(room: Room, current: Round) -> Round | None:
    return next((one for one in room.rounds if room.twins.get(one.item.id) == current.number), None)
