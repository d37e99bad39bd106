"""Random reviews: orders that fit more often than not, and what came of each."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import NamedTuple

from hypothesis import strategies as st

from quizroom.room.commands import Command, PrepareReview
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Room
from tests.room.orders import WORDING
from tests.room.sample_items import free_list, matching, one_best, ordering, pick_three, typed
from tests.room.samples import NOON, folded, plan, preparation

USUAL: tuple[str, ...] = (
    *["answer"] * 12,
    *["open_round"] * 5,
    *["close_round"] * 2,
    *["show_record", "enter", "wait"] * 2,
    *["strike", "restore", "pause", "resume", "add_time", "give_back"],
    *["rename", "remove", "drop", "swap", "add", "standings", "open_door", "end", "rule"],
    *["rekey", "rekey", "flag", "flag", "settle"],
    *["factor", "factor", "factor", "time_link", "bring_time"],
    *["take_time", "take_time", "take_time_always"],
    *["hold", "show_result"],
)
BEGUN: tuple[str, ...] = ("open_door", "enter", "enter", "enter", "open_round")
HELD = (*BEGUN, "hold", *["answer"] * 3, "close_round")
TALKED: tuple[str, ...] = (*HELD, "let_talk", "open_again", *["answer_again"] * 3, "close_again")
"""How a round is talked over; orders of a talk are as frequent as others in histories of talks."""
TALKING: tuple[str, ...] = (
    *["let_talk", "open_again", "close_again", "twin", "show_result", "answer", "close_round"] * 2,
    *["answer_again"] * 10,
    *USUAL,
)
SHIFTS = (*[0] * 12, -1, 1, -2, 90)
"""How far the number of a round is from the one meant."""
SECONDS = (*[0.0, 0.1, 1.0, 2.0] * 4, 0.749, 0.75, 7.0, 44.3, 45.0)


class Order(NamedTuple):
    """An order that is worded when its turn comes: `close_round` means the one then open."""

    kind: str
    one: int
    other: int
    shift: int
    seconds: float
    """How long before it nothing happens."""


History = list[Order]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One order, the room before and after it, and the events or the refusal that it met."""

    command: Command
    at: datetime
    before: Room
    events: tuple[Event, ...]
    refused: Refused | None
    room: Room


def laying_out() -> PrepareReview:
    """How every history begins: six items, typed ones early, places for four players, 45 s a round."""
    items = typed(), ordering(), free_list(), matching(), pick_three(), one_best("last")
    return preparation(*items, by=plan(timing="fixed", capacity=4))


def played(history: History) -> Iterator[Step]:
    """Carry out a history."""
    laid_out = replay(prepare("room-1", laying_out(), NOON))
    assert laid_out is not None
    room, now = laid_out, NOON
    for order in history:
        now += timedelta(seconds=order.seconds)
        command = WORDING[order.kind](room, order.one, order.other, order.shift)
        if command is not None:
            step = carried_out(room, command, now)
            room = step.room
            yield step


def carried_out(room: Room, command: Command, now: datetime) -> Step:
    """One step of a history."""
    try:
        events = decide(room, command, now)
    except Refused as refused:
        return Step(command=command, at=now, before=room, events=(), refused=refused, room=room)
    after = folded(room, events)
    return Step(command=command, at=now, before=room, events=events, refused=None, room=after)


def histories(longest: int = 40) -> st.SearchStrategy[History]:
    """Reviews of up to so many orders; most begin with a class in its seats and a round open."""
    beginnings = st.sampled_from([*[len(BEGUN)] * 8, len(BEGUN) - 1, 0])
    rest = st.lists(orders(), min_size=longest // 3, max_size=longest)
    return st.builds(lambda known, more: [*_begun()[:known], *more], beginnings, rest)


def talks(longest: int = 30) -> st.SearchStrategy[History]:
    """Reviews in which results are held and talked over, begun up to some step of a talk."""
    beginnings = st.integers(len(HELD), len(TALKED))
    rest = st.lists(orders(TALKING), min_size=longest // 3, max_size=longest)
    return st.builds(lambda known, more: [*_begun(TALKED)[:known], *more], beginnings, rest)


def orders(kinds: tuple[str, ...] = USUAL) -> st.SearchStrategy[Order]:
    """One order of any of these kinds."""
    small = st.sampled_from((*range(6), *range(6), 6, 7))
    return st.builds(
        Order,
        st.sampled_from(kinds),
        small,
        st.integers(0, 63),
        st.sampled_from(SHIFTS),
        st.sampled_from(SECONDS),
    )


def _begun(kinds: tuple[str, ...] = BEGUN) -> History:
    said = {"answer": 1, "answer_again": 2}
    return [Order(kind, index % 6, said.get(kind, 0), 0, 0.0) for index, kind in enumerate(kinds)]
