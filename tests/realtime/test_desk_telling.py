"""How desks hear of rooms with more players than a list can be sent of each time."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import write
from quizroom.realtime.desk_telling import AT_EASE, BREATHE_EVERY, DeskTelling
from quizroom.room.state import Player, Room
from quizroom.views.desk import desk_view
from tests.realtime.hall import Hall, hall_with

CROWD = 2 * AT_EASE
"""For so many the list may come every half second."""


class Desk:
    """A desk that notes what it hears, and how often others could go on meanwhile."""

    def __init__(self) -> None:
        """Sit at the desk of a room that is open."""
        self.hall: Hall = hall_with("ada")
        self.heard: list[dict[str, Any]] = []
        self.breaths = 0
        self.telling = DeskTelling(
            seats=self.hall.seats,
            clock=self.hall.clock,
            emit=lambda event, data, to: self.heard.append(data),
            breathe=self._breathe,
            marks=lambda room: marks_of_room(room, None),
        )

    def room(self, players: int) -> Room:
        """The room with so many in it."""
        return replace(self.hall.room(), players={player.id: player for player in crowd(players)})

    def taken(self) -> list[dict[str, Any]]:
        """What was heard since the last look."""
        heard, self.heard = self.heard, []
        return heard

    def _breathe(self) -> None:
        self.breaths += 1


def crowd(size: int) -> Iterator[Player]:
    for number in range(size):
        yield Player(id=f"p{number}", handle=f"Handle {number:04}", key_hash=f"k{number}", from_round=1)


def test_a_class_is_listed_whenever_anything_is_told() -> None:
    desk = Desk()
    room = desk.room(AT_EASE)
    desk.telling.tell(room, at_once=True)
    desk.telling.tell(room)
    assert [(view["roster_later"], len(view["roster"])) for view in desk.taken()] == [(False, AT_EASE)] * 2
    assert desk.telling.waiting() == []


def test_of_a_crowd_a_step_is_told_at_once_and_the_list_follows() -> None:
    desk = Desk()
    room = desk.room(CROWD)
    desk.telling.tell(room, at_once=True)
    (step,) = desk.taken()
    assert (step["roster_later"], step["roster"], step["public"]["phase"]) == (True, [], "answering")
    (late,) = desk.telling.waiting()
    desk.telling.tell(late)
    assert desk.taken() == []
    desk.hall.clock.move(0.5)
    desk.telling.tell(late)
    whole = write(desk_view(room, marks_of_room(room, None), desk.hall.clock.now()))
    assert desk.taken() == [whole]
    later = {name: whole[name] for name in ("roster", "roster_later")}
    step["now"] = step["public"]["now"] = whole["now"]
    assert {**step, **later} == whole
    assert desk.telling.waiting() == []


def test_of_a_crowd_the_list_comes_no_more_often_than_its_length_allows() -> None:
    desk = Desk()
    room = desk.room(CROWD)
    desk.telling.tell(room)
    desk.taken()
    desk.hall.clock.move(0.4)
    desk.telling.tell(room)
    assert (desk.taken(), desk.telling.waiting()) == ([], [room])
    desk.hall.clock.move(0.1)
    desk.telling.tell(room)
    assert [len(view["roster"]) for view in desk.taken()] == [CROWD]


def test_others_may_go_on_while_a_crowd_is_listed() -> None:
    desk = Desk()
    desk.telling.tell(desk.room(CROWD))
    assert desk.breaths == CROWD // BREATHE_EVERY


def test_a_room_without_a_desk_is_neither_told_nor_remembered() -> None:
    desk = Desk()
    desk.hall.gateway.disconnect("host")
    desk.telling.tell(desk.room(CROWD), at_once=True)
    assert (desk.taken(), desk.telling.waiting()) == ([], [])
