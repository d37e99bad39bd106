"""What a closed round shows: at once its distribution and key, with the record its reasons."""

from hypothesis import given, settings

from quizroom.room.commands import ShowRecord, StrikeItem
from quizroom.room.state import Room
from quizroom.views.result_model import OptionResult
from tests.room.histories import History, histories, played
from tests.room.sample_items import one_best, pick_three
from tests.room.samples import CLOSE, answering, ordered, says, seat
from tests.views.seen import public, result

PLAYERS = ("ada", "bo", "cem", "dele")


def answered_round() -> Room:
    room = answering(one_best(key="B"), players=PLAYERS)
    return ordered(room, says("ada", "B"), says("bo", "C"), says("cem", "C"))


def test_an_open_round_has_no_result_and_no_record() -> None:
    view = public(answered_round())
    assert (view.result, view.records, view.answered, view.players) == (None, (), 3, 4)


def test_a_closed_round_shows_the_key_and_how_often_each_option_was_chosen() -> None:
    found = result(ordered(answered_round(), CLOSE))
    counts = [(option.letter, option.is_key, option.count, option.share) for option in found.options]
    assert counts == [("A", False, 0, 0), ("B", True, 1, 0.3333), ("C", False, 2, 0.6667), ("D", False, 0, 0)]
    assert (found.key_text, found.answered, found.of) == (("axillary nerve",), 3, 4)
    assert found.mean_mark == 0.3333


def test_reasons_and_records_come_when_the_record_is_shown_and_not_before() -> None:
    closed = ordered(answered_round(), CLOSE)
    explained = ordered(closed, ShowRecord(round=1))
    assert (reasons(closed), result(closed).why, public(closed).records) == ([None] * 4, None, ())
    assert "Because: median nerve." in reasons(explained)
    assert result(explained).why == "Because: the key is B."
    assert [record.name for record in public(explained).records] == ["Deltoid"]


def reasons(room: Room) -> list[str | None]:
    return [option.reason for option in result(room).options]


def test_an_option_of_a_set_is_counted_for_each_who_picked_it() -> None:
    room = ordered(answering(pick_three()), says("ada", "A", "B"), says("bo", "A", "C", "E"), CLOSE)
    assert [(option.letter, option.count, option.share) for option in result(room).options][:3] == [
        ("A", 2, 1.0),
        ("B", 1, 0.5),
        ("C", 1, 0.5),
    ]


def test_nobody_answered_is_a_result_too() -> None:
    found = result(ordered(answering(), CLOSE))
    assert (found.answered, found.of, found.mean_mark) == (0, 2, None)
    assert found.options[0] == OptionResult(
        letter="A", text="radial nerve", is_key=False, count=0, share=0.0, reason=None
    )


def test_who_came_after_closing_is_not_among_those_expected() -> None:
    assert result(ordered(answering(), CLOSE, seat("cem"))).of == 2


def test_a_struck_item_says_so() -> None:
    assert result(ordered(answered_round(), CLOSE, StrikeItem(round=1))).struck


@settings(max_examples=25, deadline=None)
@given(histories())
def test_no_more_have_answered_than_were_expected_and_shares_are_shares(history: History) -> None:
    for step in played(history):
        found = public(step.room).result
        if found is not None:
            assert public(step.room).answered == found.answered <= found.of <= len(step.room.players)
            assert all(0 <= option.share <= 1 for option in found.options)
            assert all(0 <= row.share <= 1 for row in found.rows)
            # An ordering and a matching tell their key place by place, all others among the options.
            told = tuple(option.letter for option in found.options if option.is_key)
            placed = tuple(row.letter for row in found.rows)
            assert told + placed == step.room.rounds[-1].item.key
