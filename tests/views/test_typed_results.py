"""What a closed round shows of typed words, and what it never shows."""

import orjson
import pytest

from quizroom.protocol.codec import write
from quizroom.room.commands import RuleOnWords, ShowRecord
from quizroom.views.result_model import TypedResult
from quizroom.views.results import UNSPELLED
from tests.room.sample_items import free_list, typed
from tests.room.samples import CLOSE, answering, ordered, writes
from tests.views.seen import public, result

PLAYERS = ("ada", "bo", "cem", "dele")


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
        assert b"zzrude" not in orjson.dumps(write(public(phase))).lower()


def test_unknown_words_are_counted_together() -> None:
    room = ordered(answering(typed()), writes("ada", "qqqq"), writes("bo", "wwww"), CLOSE)
    assert result(room).typed == (TypedResult(text=UNSPELLED, verdict="wrong", count=2, share=1.0),)


def test_words_that_the_host_accepts_count_but_are_still_not_spelled_out() -> None:
    ruling = RuleOnWords(round=1, words="zzrude", accept=True)
    room = ordered(answering(free_list()), writes("ada", "zzrude"), CLOSE, ruling, ShowRecord(round=1))
    assert b"zzrude" not in orjson.dumps(write(public(room))).lower()
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
