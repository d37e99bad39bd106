"""What goes out: plain JSON, and one schema that knows all of it."""

from functools import cache
from typing import Any

import orjson
import pytest
from hypothesis import given, settings

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import Outgoing, write
from quizroom.protocol.export import wire_schema
from quizroom.protocol.replies import Reply, Tally
from quizroom.realtime.broadcast import tally_of
from quizroom.views.desk import desk_view
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.protocol.wording import all_types
from tests.room.histories import History, histories, played
from tests.room.samples import NOON, answering, ordered, says


@settings(max_examples=20, deadline=None)
@given(histories())
def test_every_view_of_every_room_is_plain_json(history: History) -> None:
    for step in list(played(history))[::7]:
        room, marks = step.room, marks_of_room(step.room)
        views: list[Outgoing] = [
            public_view(room, marks, NOON),
            own_view(room, "ada", marks, NOON),
            desk_view(room, marks, NOON),
        ]
        for view in views:
            assert orjson.loads(orjson.dumps(write(view))) == write(view)


def test_a_reply_is_flat_where_it_says_nothing() -> None:
    assert write(Reply(id="m", result="done", now=5)) == {
        "id": "m",
        "result": "done",
        "now": 5,
        "code": "",
        "text": "",
        "public": None,
        "own": None,
        "desk": None,
        "reviews": None,
        "reviews_in_all": None,
        "answer_round": None,
    }
    tally = Tally(version=3, phase="answering", round=1, players=2, answered=1)
    assert write(tally) == {"version": 3, "phase": "answering", "round": 1, "players": 2, "answered": 1}


@cache
def definitions() -> dict[str, Any]:
    found: dict[str, Any] = wire_schema()["$defs"]
    return found


def test_the_schema_knows_every_type_of_the_wire() -> None:
    shapes = definitions()["ClientMessage"]["oneOf"]
    assert set(definitions()["ClientMessage"]["discriminator"]["mapping"]) == all_types()
    assert all(shape["$ref"].rpartition("/")[2] in definitions() for shape in shapes)
    assert {"Reply", "Tally", "PublicView", "OwnView", "DeskView", "DeskSettings"} <= set(definitions())


def sent() -> dict[str, Any]:
    """One of each kind, as it goes out."""
    room = ordered(answering(), says("ada", "B"))
    marks = marks_of_room(room)
    return {
        "PublicView": write(public_view(room, marks, NOON)),
        "OwnView": write(own_view(room, "ada", marks, NOON)),
        "DeskView": write(desk_view(room, marks, NOON)),
        "Tally": write(tally_of(room)),
        "Reply": write(Reply(id="m", result="done", now=5)),
    }


@pytest.mark.parametrize("kind", sent())
def test_the_schema_has_the_fields_that_are_sent_and_no_others(kind: str) -> None:
    assert set(sent()[kind]) == set(definitions()[kind]["properties"])
