"""Items, plans and rooms made by hand, for tests that need no knowledge base."""

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

from quizroom.questions.model import Item
from quizroom.room.commands import (
    CloseRound,
    Command,
    EnterSeat,
    OpenDoor,
    OpenRound,
    PrepareReview,
    ShowRecord,
    SubmitAnswer,
)
from quizroom.room.events import Event
from quizroom.room.folding import apply, replay
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from tests.room.sample_items import all_formats

NOON = datetime(2031, 9, 3, 12, 0, tzinfo=UTC)
CLOSE, RECORD = CloseRound(round=1, by_host=True), ShowRecord(round=1)
"""What a host does with the first round."""


def after(seconds: float) -> datetime:
    """So many seconds after noon."""
    return NOON + timedelta(seconds=seconds)


def plan(
    *, timing: str = "computed", standings: bool = False, capacity: int = 500, seconds: int = 45
) -> Plan:
    """A plan of a fictional course."""
    return Plan(
        title="Shoulder and arm",
        course="hhc_kn_232",
        course_title="HHC-KN 232 Muscles and Movement",
        families=("nerve", "set"),
        rounds=4,
        seed=1,
        timing="untimed" if timing == "untimed" else "fixed" if timing == "fixed" else "computed",
        seconds=seconds,
        standings=standings,
        capacity=capacity,
    )


def prepared(*items: Item, by: Plan | None = None) -> Room:
    """A room as laid out, its door still shut."""
    room = replay(prepare("room-1", preparation(*items, by=by), NOON))
    assert room is not None
    return room


def preparation(*items: Item, by: Plan | None = None, host: str = "owner") -> PrepareReview:
    """The order to lay out a review."""
    return PrepareReview(plan=by or plan(), items=items or all_formats(), host=host)


def gathered(*items: Item, by: Plan | None = None, players: Iterable[str] = ("ada", "bo")) -> Room:
    """A room with its door open and these players in their seats."""
    door = OpenDoor(door_code="CDFHJ")
    return ordered(prepared(*items, by=by), door, *(seat(player) for player in players))


def answering(*items: Item, by: Plan | None = None, players: Iterable[str] = ("ada", "bo")) -> Room:
    """The same with its first round opened at noon."""
    return ordered(gathered(*items, by=by, players=players), OpenRound(round=1))


def seat(player: str, handle: str = "") -> EnterSeat:
    """The order of a player to take a seat."""
    return EnterSeat(player=player, handle=handle or player.title(), key_hash=f"hash of {player}")


def says(player: str, *letters: str, round_: int = 1) -> SubmitAnswer:
    """The order of a player to choose these letters."""
    return SubmitAnswer(player=player, round=round_, choice=letters)


def writes(player: str, *words: str, round_: int = 1) -> SubmitAnswer:
    """The order of a player to hand in these words."""
    return SubmitAnswer(player=player, round=round_, typed=words)


def ordered(room: Room, *commands: Command, at: datetime = NOON) -> Room:
    """The room after these orders, none of which may be refused."""
    for command in commands:
        room = folded(room, decide(room, command, at))
    return room


def folded(room: Room, events: Iterable[Event]) -> Room:
    """The room after these events."""
    for event in events:
        room = apply(room, event)
    return room


def choice_of(room: Room, player: str = "ada") -> tuple[str, ...]:
    """What a player has chosen in the newest round."""
    return room.rounds[-1].answers[player].choice
