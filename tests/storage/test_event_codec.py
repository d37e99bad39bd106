"""Events to bytes and back."""

from datetime import UTC, datetime, timedelta
from typing import Any, Literal, get_args, get_origin, get_type_hints

import orjson
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.model import Item
from quizroom.room.events import AnswerAccepted, Event, ItemSwapped, PlayerRemoved, ReviewPrepared
from quizroom.room.state import Plan
from quizroom.storage.event_codec import UnreadableEvent, read_event, write_event
from tests.room.sample_items import all_formats, one_best
from tests.room.samples import NOON, plan

KINDS = get_args(Event)
words = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)  # what JSON can hold
numbers = st.integers(-(2**53), 2**53)
moments = st.datetimes(datetime(2000, 1, 1), datetime(2200, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001 - bounds are naive


def values(kind: Any) -> st.SearchStrategy[Any]:
    """Values of any type that an event's field may have."""
    by_type = {str: words, int: numbers, bool: st.booleans(), datetime: moments, type(None): st.none()}
    if kind in by_type:
        return by_type[kind]
    if kind is Item:
        return st.sampled_from(all_formats())
    if get_origin(kind) is Literal:
        return st.sampled_from(get_args(kind))
    if get_origin(kind) is tuple:
        return st.lists(values(get_args(kind)[0]), max_size=3).map(tuple)
    if get_args(kind):
        return st.one_of(*map(values, get_args(kind)))
    return st.builds(kind, **{name: values(hint) for name, hint in get_type_hints(kind).items()})


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_every_event_comes_back_as_it_was(kind: type[Event]) -> None:
    @settings(max_examples=15, deadline=None)
    @given(values(kind))
    def comes_back(event: Event) -> None:
        assert read_event(write_event(event)) == event

    comes_back()


def test_times_come_back_in_utc_to_the_microsecond() -> None:
    at = NOON + timedelta(microseconds=1)
    event = ReviewPrepared(room="a", host="b", plan=plan(), items=all_formats(), at=at)
    back = read_event(write_event(event))
    assert isinstance(back, ReviewPrepared)
    assert back.at == at
    assert back.at.utcoffset() == timedelta(0)
    assert isinstance(back.plan, Plan)


def test_an_item_stored_before_there_were_rows_is_still_read() -> None:
    event = ItemSwapped(position=0, item=one_best())
    older = orjson.loads(write_event(event))
    del older["event"]["item"]["stems"]
    assert read_event(orjson.dumps(older)) == event


def stored(**changes: Any) -> bytes:
    return orjson.dumps({"kind": "PlayerRemoved", "event": {"player": "bo"}} | changes)


def test_the_stored_form_is_the_kind_and_its_fields() -> None:
    fields = {"player": "bo", "by": "T. Bracken", "at": "2031-09-01T12:00:00Z"}
    event = PlayerRemoved(player="bo", by="T. Bracken", at=datetime(2031, 9, 1, 12, tzinfo=UTC))
    assert orjson.loads(write_event(event)) == orjson.loads(stored(event=fields))


def test_a_change_from_before_it_was_noted_who_made_it_is_still_read() -> None:
    assert read_event(stored()) == PlayerRemoved(player="bo", by="", at=None)


def test_a_review_from_before_there_were_blueprints_is_still_read() -> None:
    event = ReviewPrepared(room="a", host="b", plan=plan(), items=all_formats(), at=NOON)
    older = orjson.loads(write_event(event))
    del older["event"]["plan"]["blueprint"]
    for item in older["event"]["items"]:
        del item["difficulty"], item["warm_up"]
    assert read_event(orjson.dumps(older)) == event


def test_a_review_and_an_answer_from_before_results_were_held_are_still_read() -> None:
    laid_out = ReviewPrepared(room="a", host="b", plan=plan(), items=all_formats(), at=NOON)
    answer = AnswerAccepted(player="ada", round=1, choice=("B",), typed=(), at=NOON)
    older = [orjson.loads(write_event(event)) for event in (laid_out, answer)]
    del older[0]["event"]["plan"]["holds_results"], older[1]["event"]["again"]
    assert [read_event(orjson.dumps(one)) for one in older] == [laid_out, answer]


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"\xff\x00",
        b"null",
        b"7",
        b"[]",
        b'"PlayerRemoved"',
        b'{"kind": "PlayerRemoved"}',
        b'{"event": {"player": "bo"}}',
        stored(kind="PlayerPromoted"),
        stored(kind=["PlayerRemoved"]),
        stored(event=None),
        stored(event={}),
        stored(event={"player": 7}),
        stored(event={"player": "bo", "why": "a field of a later version"}),
    ],
)
def test_what_this_version_does_not_know_is_unreadable_and_nothing_else(body: bytes) -> None:
    with pytest.raises(UnreadableEvent):
        read_event(body)


@given(st.binary(max_size=40))
def test_any_bytes_are_an_event_or_unreadable(body: bytes) -> None:
    try:
        read_event(body)
    except UnreadableEvent:
        return
