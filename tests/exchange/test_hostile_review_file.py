"""Files that are damaged, or made to do harm, are refused with their place; nothing of them is taken."""

import base64
import tracemalloc
from dataclasses import replace
from functools import cache
from typing import Any

import orjson
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.exchange.review_file import faults
from quizroom.exchange.review_file.faults import DEEPEST, LARGEST_FILE, MOST_TOLD, BadReviewFile
from quizroom.exchange.review_file.reading import read_review
from quizroom.exchange.review_file.writing import review_file
from quizroom.room.commands import CloseRound, Command, EndReview, OpenRound, StrikeItem, SubmitAnswer
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from tests.exchange.review_samples import PICTURE
from tests.exchange.uploads import bomb, moving
from tests.questions.own_samples import DRAWING
from tests.room.sample_items import one_best, typed
from tests.room.samples import NOON, after, preparation, seat

Path = tuple[str | int, ...]


@cache
def whole() -> bytes:
    """A good file: two rounds, two players, one strike, one picture."""
    pictured = replace(one_best(), picture=DRAWING)
    log: list[Event] = list(prepare("room-1", preparation(pictured, typed()), NOON))
    commands: tuple[Command, ...] = (
        seat("ada", "Teal Talus"),
        seat("bo", "Wren Radius"),
        OpenRound(round=1),
        SubmitAnswer(player="ada", round=1, choice=("B",)),
        CloseRound(round=1, by_host=True),
        OpenRound(round=2),
        SubmitAnswer(player="bo", round=2, typed=("axillary nerve",)),
        CloseRound(round=2, by_host=True),
        StrikeItem(round=1),
        EndReview(),
    )
    for place, command in enumerate(commands):
        room = replay(log)
        assert room is not None
        from_gathering = replace(room, phase="gathering") if room.phase == "preparing" else room
        log += decide(from_gathering, command, after(place))
    room = replay(log)
    assert room is not None
    return review_file(room, log, {DRAWING.name: PICTURE}.get, happened=True)


def changed(path: Path, value: Any) -> bytes:
    """The good file with another value at a place; Ellipsis takes it out."""
    file: Any = orjson.loads(whole())
    part = file
    for step in path[:-1]:
        part = part[step]
    if value is ...:
        del part[path[-1]]
    else:
        part[path[-1]] = value
    return orjson.dumps(file)


def test_a_file_of_very_many_values_is_refused_and_not_laid_out_in_memory(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(faults, "MOST_VALUES", 290_000)
    body = b'{"format":"quizroom review","version":1,"plan":[%s1]}' % (b"1," * 300_000)
    tracemalloc.start()
    try:
        (fault,) = refused(body).faults
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert fault.text == "It holds more than 290000 values, as no review does."
    assert peak < 10_000_000, "a list of 300 000 numbers that are shared takes 2.4 MB"


def test_very_many_faults_are_looked_for_no_longer_than_they_are_told() -> None:
    assert len(refused(b'{"x":[%s0]}' % (b"%d," % 2**60 * 1000)).faults) == MOST_TOLD


def refused(body: bytes) -> BadReviewFile:
    with pytest.raises(BadReviewFile) as caught:
        read_review(body)
    assert 0 < len(caught.value.faults) <= MOST_TOLD
    assert all(fault.path and fault.text for fault in caught.value.faults)
    return caught.value


def faults_told(body: bytes) -> int | None:
    """How many faults were told of a file; None for one that may be taken."""
    try:
        read_review(body)
    except BadReviewFile as bad:
        return len(bad.faults)
    return None


def test_the_good_file_is_good() -> None:
    assert len(read_review(whole()).steps) == 10


@pytest.mark.parametrize(
    "path,value,told",
    [
        (("format",), "other", "format"),
        (("version",), 2, "version"),
        (("extra",), 1, "extra"),
        (("plan", "title"), 7, "plan.title"),
        (("plan", "title"), "x" * 121, "plan.title"),
        (("plan", "timing"), "sometimes", "plan.timing"),
        (("plan", "host"), "owner", "plan.host"),
        (("items",), [], "items"),
        (("items", 0, "stem"), "", "items.0.stem"),
        (("items", 0, "stem"), "x" * 4001, "items.0.stem"),
        (("items", 0, "stem"), "Which \u202e nerve?", "items.0.stem"),
        (("items", 0, "stem"), "Which \u0000 nerve?", "items.0.stem"),
        (("items", 0, "family"), "script", "items.0.family"),
        (("items", 0, "key"), ["Z"], "items.0.key"),
        (("items", 0, "key"), [], "items.0.key"),
        (("items", 0, "pick"), 3, "items.0.key"),
        (("items", 0, "format"), "matching", "items.0.key"),
        (("items", 0, "options", 1, "letter"), "A", "items.0.options"),
        (("items", 0, "options", 1, "reason"), ..., "items.0.options.1.reason"),
        (("items", 0, "seconds"), -1, "items.0.seconds"),
        (("items", 0, "seconds"), 1e400, "file"),
        (("items", 0, "difficulty"), 7.5, "items.0.difficulty"),
        (("items", 0, "picture", "alt"), "", "items.0.picture"),
        (("items", 0, "picture", "name"), "../../etc/passwd", "items.0.picture.name"),
        (("items", 1, "id"), "one-best", "items.1.id"),
        (("items", 1, "accepted"), [], "items.1.key"),
        (("pictures", 0, "body"), "?", "pictures.0.body"),
        (("pictures", 0, "body"), "QUJD", "pictures.0.body"),
        (("pictures", 0, "body"), base64.b64encode(bomb()).decode(), "pictures.0.body"),
        (("pictures", 0, "body"), base64.b64encode(moving()).decode(), "pictures.0.body"),
        (("pictures", 0, "body"), base64.b64encode(b"<svg onload=alert(1)>").decode(), "pictures.0.body"),
        (("happened", "prepared_at"), "2031-09-03T12:00:00", "happened.prepared_at"),
        (("happened", "steps", 0, "step"), "PlayerForgotten", "happened.steps.0"),
        (("happened", "steps", 0, "step"), "ReviewPrepared", "happened.steps.0"),
        (("happened", "steps", 0, "event", "owner"), "a" * 64, "happened.steps.0.event.owner"),
        (("happened", "steps", 0, "event", "handle"), " ", "happened.steps.0.event.handle"),
        (("happened", "steps", 1, "event", "handle"), "TEAL talus", "happened.steps.1"),
        (("happened", "steps", 2, "event", "round"), 2, "happened.steps.2"),
        (("happened", "steps", 2, "event", "at"), "2031-09-03T12:00:00", "happened.steps.2.event"),
        (("happened", "steps", 3, "event", "player"), "Nobody", "happened.steps.3"),
        (("happened", "steps", 3, "event", "choice"), ["A", "B"], "happened.steps.3"),
        (("happened", "steps", 3, "event", "round"), 9, "happened.steps.3"),
        (("happened", "steps", 4), ..., "happened.steps.4"),
        (("happened", "steps", 8, "event", "round"), 3, "happened.steps.8"),
        (("happened", "steps", 8, "event", "round"), 2**60, "happened.steps.8.event.round"),
        (("happened", "steps", 9), ..., "happened.steps"),
        (("happened", "steps"), {}, "happened.steps"),
    ],
)
def test_each_fault_is_told_by_its_place(path: Path, value: Any, told: str) -> None:
    body = (
        changed(path, value) if value != 1e400 else whole().replace(b'"seconds": 45', b'"seconds": 1e400', 1)
    )
    paths = [fault.path for fault in refused(body).faults]
    assert any(one == told or one.startswith(f"{told}.") for one in paths), paths


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"null",
        b"[]",
        b"{",
        b"\xff\xfe{}",
        b"PK\x03\x04" + b"\0" * 100,
        whole()[:-40],
        b"[" * 100_000,
        b'{"a":' * 100_000,
        b'{"format": "quizroom review", "version": 1, "plan": '
        + b"[" * DEEPEST * 2
        + b"]" * DEEPEST * 2
        + b"}",
        b" " * (LARGEST_FILE + 1),
    ],
    ids=["empty", "null", "list", "cut", "utf16", "zip", "half", "deep", "deep-objects", "nested", "huge"],
)
def test_what_is_no_such_file_is_refused(body: bytes) -> None:
    refused(body)


def test_script_in_a_text_stays_a_text() -> None:
    text = "<script>alert('x')</script> {{7*7}} =cmd|' /C calc'!A0"
    assert read_review(changed(("items", 0, "stem"), text)).file.items[0].stem == text


@settings(max_examples=50, deadline=None)
@given(st.integers(0, 10**6), st.binary(min_size=1, max_size=4))
def test_a_damaged_file_is_refused_or_read_but_never_breaks_the_reader(place: int, noise: bytes) -> None:
    body = bytearray(whole())
    place %= len(body)
    body[place : place + len(noise)] = noise
    assert faults_told(bytes(body)) != 0


ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**60), 2**60) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3),
    max_leaves=6,
)


@settings(max_examples=50, deadline=None)
@given(st.data())
def test_any_value_of_another_type_at_any_place_is_refused_or_read(data: st.DataObject) -> None:
    file: Any = orjson.loads(whole())
    part, path = file, 0
    while path < 8 and isinstance(part, dict | list) and part:
        keys: list[Any] = list(part) if isinstance(part, dict) else list(range(len(part)))
        key = data.draw(st.sampled_from(keys))
        if (path and data.draw(st.booleans())) or not isinstance(part[key], dict | list):
            part[key] = data.draw(ANY_JSON)
            break
        part, path = part[key], path + 1
    assert faults_told(orjson.dumps(file)) != 0
