"""Reading messages: strict, and whatever comes, no other error than `BadMessage`."""

from typing import Any

import pytest

from quizroom.protocol import desk_messages, seat_messages
from quizroom.protocol.blueprint import BlueprintCell, BlueprintChoice
from quizroom.protocol.codec import BadMessage, read_message
from tests.protocol.wording import PLAIN, all_types, message


def fault_of(raw: Any) -> BadMessage:
    with pytest.raises(BadMessage) as bad:
        read_message(raw)
    return bad.value


def test_there_is_a_good_message_here_of_every_type() -> None:
    assert set(PLAIN) == all_types()


@pytest.mark.parametrize("kind", PLAIN)
def test_every_type_of_message_is_read(kind: str) -> None:
    read = read_message(message(kind))
    assert (read.id, read.type) == ("m1", kind)


@pytest.mark.parametrize("kind", PLAIN)
def test_an_unknown_field_is_refused_in_every_type(kind: str) -> None:
    bad = fault_of(message(kind, player_id="somebody else"))
    assert bad.message_id == "m1"
    assert "player_id" in bad.where


@pytest.mark.parametrize("kind", [kind for kind, fields in PLAIN.items() if fields])
def test_a_missing_or_mistaken_field_is_named(kind: str) -> None:
    needed = next(iter(PLAIN[kind]))
    left_out = message(kind)
    del left_out[needed]
    assert needed in fault_of(left_out).where
    assert needed in fault_of(message(kind, **{needed: {"no": "such thing"}})).where


@pytest.mark.parametrize("odd", ["\0", "a\0b"])
def test_no_text_holds_the_null_character_which_databases_refuse(odd: str) -> None:
    for kind, fields in PLAIN.items():
        for name in [name for name, value in fields.items() if isinstance(value, str)]:
            assert "null character" in fault_of(message(kind, **{name: odd})).where
    assert "null character" in fault_of(message("submit_answer", typed=["radial nerve", odd])).where
    assert "null character" in fault_of(message("probe_time", **{odd: 1})).where


def test_whoever_writes_of_the_null_character_in_plain_letters_is_read() -> None:
    read = read_message(message("submit_answer", typed=[r"the escape \u0000 of JSON"]))
    assert isinstance(read, seat_messages.SubmitAnswer)
    assert read.typed == (r"the escape \u0000 of JSON",)


@pytest.mark.parametrize("kind", ["", "enter", "ENTER_SEAT", "submit_answer ", None, 7, ["probe_time"]])
def test_an_unknown_type_is_refused(kind: object) -> None:
    assert fault_of({"id": "m1", "type": kind}).message_id == "m1"


@pytest.mark.parametrize(
    "raw",
    [
        message("enter_seat", handle="x" * 201),
        message("enter_seat", seat_key="x" * 129),
        message("enter_seat", seat_key=""),
        message("enter_seat", door_code="x" * 33),
        message("submit_answer", choice=["A"] * 11),
        message("submit_answer", choice=["AB"]),
        message("submit_answer", typed=["x" * 121]),
        message("submit_answer", typed=["x"] * 11),
        message("submit_answer", round=0),
        message("submit_answer", round=1001),
        message("submit_answer", round="1"),
        message("submit_answer", round=1.0),
        message("submit_answer", round=True),
        message("add_time", seconds=601),
        message("add_time", seconds=0),
        message("prepare_review", rounds=61),
        message("prepare_review", seed=2**31),
        message("prepare_review", timing="quick"),
        *(
            message("prepare_review", blueprint=wrong)
            for wrong in (
                {},
                {"cells": "all"},
                {"cells": [{"region": "arm", "family": "action", "rounds": -1}]},
                {"cells": [{"region": "arm", "family": "action", "rounds": 61}]},
                {"cells": [{"region": "arm", "family": "action", "rounds": 1, "marks": 2}]},
                {"cells": [], "share": 0},
                {"cells": [], "warm_up": 4},
                {"cells": [], "aim": "harder"},
            )
        ),
        message("show_standings", on="yes"),
        message("show_standings", on=1),
        message("probe_time", id="x" * 65),
        message("probe_time", id=""),
        message("probe_time", id=7),
    ],
)
def test_what_is_too_long_too_much_or_of_another_kind_is_refused(raw: dict[str, Any]) -> None:
    fault_of(raw)


def test_a_blueprint_is_read_with_its_cells() -> None:
    cells = [{"region": "arm", "family": "action", "rounds": 3}]
    read = read_message(message("prepare_review", blueprint={"cells": cells, "warm_up": 1}))
    assert isinstance(read, desk_messages.PrepareReview)
    assert read.blueprint == BlueprintChoice(
        cells=(BlueprintCell(region="arm", family="action", rounds=3),), warm_up=1
    )


def test_what_is_left_out_has_the_value_that_the_server_documents() -> None:
    read = read_message({"id": "m", "type": "submit_answer", "round": 1})
    assert isinstance(read, seat_messages.SubmitAnswer)
    assert (read.choice, read.typed) == ((), ())
