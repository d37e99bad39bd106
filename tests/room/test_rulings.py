"""The host rules on typed words once for everybody who wrote them."""

import pytest

from quizroom.marking import Total, marks_of_room
from quizroom.room.commands import RuleOnWords, ShowRecord
from quizroom.room.events import WordsRuled
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.views.desk import desk_view
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.refusing import code_of
from tests.room.sample_items import free_list, one_best, typed
from tests.room.samples import CLOSE, NOON, answering, ordered, writes


def rule(words: str, *, accept: bool) -> RuleOnWords:
    return RuleOnWords(round=1, words=words, accept=accept)


def total(room: Room, player: str) -> float:
    totals = marks_of_room(room).totals
    assert isinstance(totals[player], Total)
    return totals[player].marks


def written(*words: str) -> Room:
    return ordered(answering(typed()), writes("ada", *words), writes("bo", words[0].upper()), CLOSE)


def test_accepted_words_are_right_for_everybody_who_wrote_them_however_spelt() -> None:
    room = written("nerve of the armpit")
    assert (total(room, "ada"), total(room, "bo")) == (0, 0)
    ruled = ordered(room, rule("Nerve of the armpit", accept=True))
    assert (total(ruled, "ada"), total(ruled, "bo")) == (1, 1)


def test_refused_words_are_wrong_even_if_the_spelling_rule_took_them() -> None:
    room = written("axilary nerve")
    assert total(room, "ada") > 0
    assert total(ordered(room, rule("axilary nerve", accept=False)), "ada") == 0


def test_the_last_ruling_counts() -> None:
    room = ordered(written("nerve x"), rule("nerve x", accept=True), rule("nerve x", accept=False))
    assert total(room, "ada") == 0


def test_a_repeated_ruling_changes_nothing() -> None:
    room = ordered(written("nerve x"), rule("nerve x", accept=True))
    assert decide(room, rule("NERVE  X", accept=True), NOON) == ()


def test_a_ruling_may_come_while_the_round_is_open_and_after_the_record() -> None:
    room = ordered(answering(typed()), writes("ada", "nerve x"))
    assert isinstance(decide(room, rule("nerve x", accept=True), NOON)[0], WordsRuled)
    late = ordered(room, CLOSE, ShowRecord(round=1), rule("nerve x", accept=True))
    assert total(late, "ada") == 1


def test_in_a_set_accepted_words_count_as_one_more_member() -> None:
    room = ordered(answering(free_list()), writes("ada", "brachialis", "long muscle"), CLOSE)
    before = total(room, "ada")
    assert total(ordered(room, rule("long muscle", accept=True)), "ada") == pytest.approx(2 / 3, abs=1e-3)
    assert before == 0


@pytest.mark.parametrize(
    "room,command,code",
    [
        (answering(one_best()), rule("axillary nerve", accept=True), "bad_choice"),
        (answering(typed()), rule(" . ", accept=True), "bad_choice"),
        (answering(typed()), RuleOnWords(round=2, words="x", accept=True), "no_such_round"),
    ],
)
def test_only_typed_words_of_an_opened_round_can_be_ruled_on(
    room: Room, command: RuleOnWords, code: str
) -> None:
    assert code_of(room, command) == code


def test_everybody_sees_what_follows_from_a_ruling() -> None:
    room = ordered(written("nerve x"), rule("nerve x", accept=True), ShowRecord(round=1))
    marks = marks_of_room(room)
    result = public_view(room, marks, NOON).result
    assert result is not None
    assert [(row.text, row.verdict, row.count) for row in result.typed] == [("axillary nerve", "right", 2)]
    own = own_view(room, "ada", marks, NOON).result
    assert own is not None
    assert (own.verdict, own.reasons[0].reason) == ("right", "Your host accepts this answer.")
    assert [row.ruled for row in desk_view(room, marks, NOON).items[0].typed] == [True]
