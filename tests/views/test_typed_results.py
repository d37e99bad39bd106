"""What a closed round shows of typed words, and what it never shows."""

import orjson
import pytest

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import write
from quizroom.room.commands import CloseRound, RuleOnWords, ShowRecord
from quizroom.room.state import Room
from quizroom.views.public import public_view
from quizroom.views.public_model import PublicView
from quizroom.views.result_model import ResultFace, TypedResult
from quizroom.views.results import UNSPELLED
from tests.room.sample_items import free_list, typed
from tests.room.samples import answering, ordered, writes
from tests.views.twins import NOW

CLOSE = CloseRound(round=1, by_host=True)


PLAYERS = ("ada", "bo", "cem", "dele")


def seen(room: Room) -> PublicView:
    return public_view(room, marks_of_room(room), NOW)


def result(room: Room) -> ResultFace:
    found = seen(room).result
    assert found is not None
    return found


def test_typed_words_are_gathered_by_what_they_mean() -> None:
    room = ordered(
        answering(typed(), players=PLAYERS),
        writes("ada", "Axillary nerve"),
        writes("bo", "circumflex nerve"),
        writes("cem", "axilary nerve"),
        writes("dele", "radial nerve"),
        CLOSE,
    )
    assert result(room).typed == (
        TypedResult(text="axillary nerve", verdict="right", count=2, share=0.5),
        TypedResult(text="axillary nerve", verdict="half", count=1, share=0.25),
        TypedResult(text="radial nerve", verdict="wrong", count=1, share=0.25),
    )
    assert result(room).key_text == ("axillary nerve",)


@pytest.mark.parametrize(
    "word", ["zzrude", "Zzrude nerve", "axillary zzrude", "biceps zzrude", "brachizzrude"]
)
def test_words_that_are_no_term_never_reach_the_wall(word: str) -> None:
    room = ordered(answering(free_list(), players=PLAYERS), writes("ada", word), writes("bo", "brachialis"))
    for phase in (room, closed := ordered(room, CLOSE), ordered(closed, ShowRecord(round=1))):
        assert b"zzrude" not in orjson.dumps(write(seen(phase))).lower()


def test_unknown_words_are_counted_together() -> None:
    room = ordered(answering(typed()), writes("ada", "qqqq"), writes("bo", "wwww"), CLOSE)
    assert result(room).typed == (TypedResult(text=UNSPELLED, verdict="wrong", count=2, share=1.0),)


def test_words_that_the_host_accepts_count_but_are_still_not_spelled_out() -> None:
    ruling = RuleOnWords(round=1, words="zzrude", accept=True)
    room = ordered(answering(free_list()), writes("ada", "zzrude"), CLOSE, ruling, ShowRecord(round=1))
    assert b"zzrude" not in orjson.dumps(write(seen(room))).lower()
    assert result(room).typed == (TypedResult(text=UNSPELLED, verdict="right", count=1, share=1.0),)


def test_in_a_list_people_are_counted_and_no_share_is_above_one() -> None:
    room = ordered(
        answering(free_list(), players=PLAYERS),
        writes("ada", "hippocampus", "stapes", "pancreas"),
        writes("bo", "cochlea", "biceps brachii"),
        CLOSE,
    )
    rows = {one.text: (one.count, one.share) for one in result(room).typed}
    assert rows[UNSPELLED] == (2, 1.0)
    assert rows["biceps brachii"] == (1, 0.5)
