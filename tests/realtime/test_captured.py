"""The same class twice, with other keys: until a round is closed, what goes out is the same byte for byte."""

from collections.abc import Callable
from dataclasses import dataclass, field

import pytest

from quizroom.questions.model import Item
from quizroom.realtime import wire_json
from tests.realtime.hall import Hall
from tests.room.sample_items import one_best, pick_three
from tests.room.samples import preparation

Captured = list[tuple[str, str, str]]


@dataclass
class Class:
    """A hall whose lines are listened to; desks, who may know the key, are not."""

    hall: Hall
    frames: Captured = field(default_factory=list)

    def say(self, sid: str, kind: str, **fields: object) -> None:
        """Somebody says something; the reply is captured unless it goes to the host."""
        reply = self.hall.say(sid, kind, **fields)
        assert reply["result"] == "done", reply
        if sid != "host":
            self.frames.append(("reply", sid, wire_json.dumps(reply)))
        self.tell()

    def tell(self) -> None:
        """Let everything be told that is due."""
        self.hall.broadcast.run_once(with_tallies=True)
        self.hall.broadcast.remind(self.hall.rooms.live())
        sent, self.hall.lines.sent = self.hall.lines.sent, []
        self.frames += [
            (event, to, wire_json.dumps(data)) for event, data, to in sent if not to.startswith("desk ")
        ]


def played(*items: Item, close: bool = False) -> Captured:
    """A class through a round: entering, answers right and wrong, a change of mind, pause, more time."""
    room = Class(Hall())
    hall = room.hall
    hall.rooms.handle("room-1", preparation(*items, host="owner"))
    hall.connect("host", "owner")
    room.say("host", "open_desk", room="room-1")
    room.say("host", "show_standings", on=True)
    room.say("host", "open_door")
    door = hall.room().door_code
    hall.connect("wall")
    room.say("wall", "watch_wall", door_code=door)
    for name in ("ada", "bo", "cem"):
        hall.connect(name)
        room.say(name, "enter_seat", door_code=door, handle=name.title(), seat_key=f"key of {name}")
    room.say("host", "open_round", round=1)
    for name, letter in (("ada", "B"), ("bo", "C"), ("ada", "D"), ("cem", "A")):
        hall.clock.move(1)
        room.say(name, "submit_answer", round=1, choice=[letter], id=f"{name} {letter}")
    room.say("host", "pause_round", round=1)
    room.say("host", "add_time", seconds=15)
    room.say("host", "resume_round", round=1)
    for name in ("wall", "ada"):
        room.say(name, "show_view")
    if close:
        room.say("host", "close_round", round=1)
    return room.frames


@pytest.mark.parametrize("key", ["A", "C", "D"])
def test_no_byte_before_closing_depends_on_the_key(key: str) -> None:
    frames = played(one_best("first", "B"), one_best("second", "A"))
    assert len(frames) > 30
    assert frames == played(one_best("first", key), one_best("second", "D"))


def test_nor_on_what_lies_ahead() -> None:
    ahead: tuple[Callable[[], Item], ...] = (lambda: one_best("second"), pick_three)
    first, second = (played(one_best("first"), item()) for item in ahead)
    assert first == second


def test_the_listener_hears_the_key_once_the_round_is_closed() -> None:
    assert played(one_best("i", "B"), close=True) != played(one_best("i", "C"), close=True)
