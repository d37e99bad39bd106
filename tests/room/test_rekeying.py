"""The host keys an item anew: what becomes of marks and views, that it can be undone, and what it leaves."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.analysis.choices import choices_of
from quizroom.analysis.misses import misses, played_rounds
from quizroom.marking import marks_of_room
from quizroom.room.change_commands import RekeyItem
from quizroom.room.change_events import ItemRekeyed, KeyRestored
from quizroom.room.commands import EndReview, StrikeItem
from quizroom.room.events import Event
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.views.desk import desk_view
from quizroom.views.history import past_review
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.histories import History, histories, laying_out, played
from tests.room.orders import rekey_order
from tests.room.refusing import code_of
from tests.room.sample_items import matching, one_best, typed
from tests.room.samples import CLOSE, NOON, RECORD, after, answering, folded, ordered, prepared, says, writes


def keyed(*letters: str, reason: str = "", round_: int = 1) -> RekeyItem:
    return RekeyItem(round=round_, key=letters, reason=reason, by="M. Sorrel")


def classroom() -> Room:
    """Ada chose the key, Bo an option that the host keys later; the round is closed."""
    return ordered(answering(one_best(), one_best("2")), says("ada", "B"), says("bo", "A"), CLOSE)


def mark(room: Room, player: str) -> float:
    return marks_of_room(room).totals[player].marks


def test_another_option_keyed_besides_is_right_for_everybody_who_chose_it() -> None:
    room = ordered(classroom(), keyed("A", "B"))
    assert (mark(room, "ada"), mark(room, "bo")) == (1, 1)


def test_another_option_keyed_instead_takes_the_mark_from_the_dealt_one() -> None:
    room = ordered(classroom(), keyed("A"))
    assert (mark(room, "ada"), mark(room, "bo")) == (0, 1)


def test_a_key_may_be_changed_while_the_round_is_open_and_after_the_review() -> None:
    open_ = ordered(answering(one_best()), keyed("A"), says("bo", "A"), CLOSE)
    assert mark(open_, "bo") == 1
    assert mark(ordered(classroom(), EndReview(), keyed("A")), "bo") == 1


def test_the_last_key_counts_and_each_begins_from_the_dealt_one() -> None:
    room = ordered(classroom(), keyed("A"), keyed("B", "C"))
    assert (mark(room, "ada"), mark(room, "bo")) == (1, 0)
    assert room.rounds[0].dealt == one_best()
    assert "host" not in room.rounds[0].item.options[0].reason.text


@pytest.mark.parametrize("undoing", [keyed(), keyed("B")])
def test_no_key_or_the_dealt_one_takes_a_change_back(undoing: RekeyItem) -> None:
    room = ordered(classroom(), keyed("A"))
    assert decide(room, undoing, NOON) == (KeyRestored(round=1, by="M. Sorrel", at=NOON),)
    back = ordered(room, undoing)
    assert (back.rounds, marks_of_room(back)) == (classroom().rounds, marks_of_room(classroom()))


@pytest.mark.parametrize("again", [keyed("A", reason="My book."), keyed("A", reason=" My  book. ")])
def test_the_same_key_again_changes_nothing(again: RekeyItem) -> None:
    assert decide(ordered(classroom(), keyed("A", reason="My book.")), again, NOON) == ()
    assert decide(classroom(), keyed("B"), NOON) == decide(classroom(), keyed(), NOON) == ()


@pytest.mark.parametrize(
    "command,code",
    [
        (keyed("E"), "bad_key"),
        (RekeyItem(round=1, terms=("axillary nerve",)), "bad_key"),
        (keyed("A", reason="x" * 201), "words_too_long"),
        (keyed("A", round_=2), "no_such_round"),
        (keyed("A", round_=0), "no_such_round"),
    ],
)
def test_what_does_not_fit_is_refused(command: RekeyItem, code: str) -> None:
    assert code_of(classroom(), command) == code


def test_terms_may_be_keyed_for_typed_answers_but_none_longer_than_an_answer() -> None:
    room = ordered(answering(typed()), writes("ada", "axillary nerve"), writes("bo", "radial nerve"), CLOSE)
    assert mark(ordered(room, RekeyItem(round=1, terms=("radial nerve",))), "bo") == 1
    assert code_of(room, RekeyItem(round=1, terms=("x" * 81,))) == "bad_key"


def test_everybody_is_told_once_the_round_is_closed_and_reasons_follow() -> None:
    room = ordered(classroom(), keyed("A", "B", reason="My book says so."))
    note = "Your host keyed this item anew. As dealt the key was B: axillary nerve."
    result = public_view(room, marks_of_room(room), NOON).result
    assert result is not None
    assert (result.rekeyed, [row.is_key for row in result.options]) == (note, [True, True, False, False])
    shown = ordered(room, RECORD)
    own = own_view(shown, "bo", marks_of_room(shown), NOON).result
    assert own is not None
    assert own.verdict == "right"
    assert own.reasons[0].right
    assert own.reasons[0].reason.startswith("Your host keyed this answer. As dealt: ")
    past = past_review(shown, "bo")
    assert past is not None
    assert (past.rounds[0].mark, past.rounds[0].key) == (1.0, ("radial nerve", "axillary nerve"))
    item = desk_view(shown, marks_of_room(shown), NOON).items[0]
    assert (item.key, item.dealt_key) == (("A", "B"), "B: axillary nerve")


def test_what_was_keyed_right_is_no_miss_and_no_wrong_choice_of_the_class() -> None:
    # the item ahead asks the same, so that nothing may be told of this one before the review is over
    room = ordered(classroom(), RECORD, EndReview())
    assert len(misses(played_rounds(room, "bo"))) == 1
    assert choices_of(later(room))[0].wrong == {"radial nerve": 1}
    keyed_besides = ordered(room, keyed("A", "B"))
    assert misses(played_rounds(keyed_besides, "bo")) == ()
    assert (choices_of(later(keyed_besides))[0].right, choices_of(later(keyed_besides))[0].wrong) == (2, {})


def test_an_item_whose_dealt_key_was_taken_away_teaches_nobody_anything() -> None:
    room = ordered(classroom(), RECORD, EndReview(), keyed("A"))
    assert played_rounds(room, "ada") == played_rounds(room, "bo") == ()
    assert choices_of(later(room)) == ()


def later(room: Room) -> Room:
    """The same with answers that came too late to be rapid guesses."""
    first = room.rounds[0]
    answers = {player: replace(one, at=after(20)) for player, one in first.answers.items()}
    return replace(room, rounds=(replace(first, answers=answers), *room.rounds[1:]))


def test_a_matching_is_keyed_row_by_row() -> None:
    room = ordered(answering(matching()), says("ada", "D", "A", "B"), says("bo", "D", "C", "B"), CLOSE)
    room = ordered(room, keyed("D", "C", "B"), RECORD)
    assert [mark(room, "ada"), mark(room, "bo")] == pytest.approx([2 / 3, 1], abs=1e-3)
    own = own_view(room, "ada", marks_of_room(room), NOON).result
    assert own is not None
    assert [one.right for one in own.reasons] == [True, False, True]
    assert "Your host keyed C here." in own.reasons[1].reason


def test_a_struck_item_may_be_keyed_anew_and_stays_struck() -> None:
    room = ordered(classroom(), StrikeItem(round=1), keyed("A"))
    assert room.rounds[0].struck
    assert marks_of_room(room).totals["bo"].of == 0


@settings(max_examples=40, deadline=None)
@given(histories(), st.integers(0, 5), st.integers(0, 63), st.data())
def test_keying_anew_and_undoing_it_equals_never_having_done_it(
    history: History, one: int, other: int, data: st.DataObject
) -> None:
    events: list[Event] = list(prepare("room-1", laying_out(), NOON))
    room, places = prepared(), [0]
    for step in played([order for order in history if order.kind not in ("rekey", "settle")]):
        events += step.events
        room = step.room
        wish = rekey_order(room, one, other, 0)
        assert isinstance(wish, RekeyItem)
        done = decide(room, wish, NOON) if room.rounds and code_of(room, wish) is None else ()
        if done and isinstance(done[0], ItemRekeyed):
            places.append(len(events))
    if places == [0]:
        return
    place = data.draw(st.sampled_from(places[1:]))
    before = folded_log(events[:place])
    number = len(before.rounds)
    wish = rekey_order(before, one, other, 0)
    log = [*events[:place], *decide(before, wish, NOON), *events[place:]]
    meddled = folded_log([*log, KeyRestored(round=number, by="T. Bracken", at=NOON)])
    never = folded_log(events)
    assert bare(meddled) == bare(never)
    assert marks_of_room(meddled) == marks_of_room(never)
    assert [one.kind for one in meddled.changes if one not in never.changes][-1] == "key_restored"


def bare(room: Room) -> Room:
    """The room without how it came about."""
    return replace(room, version=0, changes=())


def folded_log(events: list[Event]) -> Room:
    return folded(prepared(*laying_out().items, by=laying_out().plan), events[1:])
