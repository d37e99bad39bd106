"""Reading messages: strict, and whatever comes, no other error than `BadMessage`."""

import copy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.protocol import messages
from quizroom.protocol.codec import BadMessage, read_message
from tests.protocol.wording import PLAIN, all_types, message

often = settings(max_examples=80, deadline=None)
json_values = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**70), 2**70) | st.floats() | st.text(max_size=80),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=12), inner, max_size=4),
    max_leaves=8,
)


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
        message("show_standings", on="yes"),
        message("show_standings", on=1),
        message("probe_time", id="x" * 65),
        message("probe_time", id=""),
        message("probe_time", id=7),
    ],
)
def test_what_is_too_long_too_much_or_of_another_kind_is_refused(raw: dict[str, Any]) -> None:
    fault_of(raw)


@pytest.mark.parametrize(
    "raw", [None, 7, "say", [], {}, [message("probe_time")], b"\x00", {1: 2}, {"id": {1, 2}}]
)
def test_what_is_no_message_at_all_is_refused_without_an_id(raw: Any) -> None:
    assert fault_of(raw).message_id == ""


@pytest.mark.parametrize("made_up", ["a\nb", "\x1b[2J", 7, None, ["m1"]])
def test_an_id_that_cannot_be_printed_is_not_sent_back(made_up: object) -> None:
    assert fault_of({"id": made_up, "type": "nothing"}).message_id == ""


def test_an_id_that_is_too_long_is_cut() -> None:
    assert fault_of({"id": "x" * 5000, "type": "nothing"}).message_id == "x" * 64


@often
@given(json_values)
def test_any_json_at_all_is_a_message_or_a_bad_one(raw: Any) -> None:
    _read(raw)


@often
@given(st.sampled_from(sorted(PLAIN)), st.data())
def test_a_spoilt_message_is_still_a_message_or_a_bad_one(kind: str, data: st.DataObject) -> None:
    raw = copy.deepcopy(message(kind))
    for _ in range(data.draw(st.integers(1, 3))):
        name = data.draw(st.sampled_from([*raw, "extra"]))
        raw[name] = data.draw(json_values)
    _read(raw)


def test_nesting_without_end_is_refused() -> None:
    deep: list[Any] = []
    for _ in range(2000):
        deep = [deep]
    fault_of(message("submit_answer", choice=deep))


def test_what_is_left_out_has_the_value_that_the_server_documents() -> None:
    read = read_message({"id": "m", "type": "submit_answer", "round": 1})
    assert isinstance(read, messages.SubmitAnswer)
    assert (read.choice, read.typed) == ((), ())


def _read(raw: Any) -> None:
    """Any error but `BadMessage` would end the test here."""
    try:
        assert read_message(raw).type in PLAIN
    except BadMessage as bad:
        where, message_id = bad.where, bad.message_id
    else:
        return
    assert where
    assert len(message_id) <= 64
