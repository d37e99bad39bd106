"""Whatever comes over the wire, it is a message or a bad one."""

import copy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.protocol.codec import BadMessage, read_message
from tests.protocol.wording import PLAIN, message

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
