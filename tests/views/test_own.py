"""What only one player sees."""

import pytest

from quizroom.room.commands import OpenRound, RemovePlayer, StrikeItem, SubmitAnswer
from quizroom.room.state import Room
from quizroom.views.own_model import AnswerFace, ChosenReason, OwnResult, OwnView
from tests.room.sample_items import free_list, one_best, pick_three
from tests.room.samples import CLOSE, RECORD, answering, gathered, ordered, plan, says, seat, writes
from tests.views.seen import own


def result(room: Room, player: str = "ada") -> OwnResult:
    found = own(room, player).result
    assert found is not None
    return found


def test_the_own_answer_is_there_at_once_and_the_result_after_closing() -> None:
    room = ordered(answering(), says("ada", "B"))
    assert own(room).answer == AnswerFace(round=1, choice=("B",), typed=())
    assert (own(room).result, own(room).marks, own(room).of) == (None, 0, 0)
    closed = ordered(room, CLOSE)
    assert (own(closed).marks, own(closed).of) == (1, 1)
    assert result(closed) == OwnResult(round=1, verdict="right", mark=1, reasons=())


@pytest.mark.parametrize(
    "letters,verdict,mark", [("ACE", "right", 1), ("AC", "part", 2 / 3), ("B", "wrong", 0), ("", "none", 0)]
)
def test_the_verdict_says_how_it_went(letters: str, verdict: str, mark: float) -> None:
    room = answering(pick_three(key="ACE"))
    room = ordered(room, *([says("ada", *letters)] if letters else []), CLOSE)
    assert (result(room).verdict, result(room).mark) == (verdict, mark)


def test_a_struck_item_and_a_round_before_ones_time_have_their_own_words() -> None:
    room = ordered(answering(), says("ada", "B"), CLOSE, seat("cem"))
    assert result(room, "cem").verdict == "not counted"
    assert own(room, "cem").of == 0
    assert result(ordered(room, StrikeItem(round=1))).verdict == "struck"


def test_the_reason_for_the_own_choice_comes_with_the_record() -> None:
    room = ordered(answering(one_best(key="B")), says("ada", "C"), CLOSE)
    assert result(room).reasons == ()
    (reason,) = result(ordered(room, RECORD)).reasons
    assert reason == ChosenReason(text="C: median nerve", right=False, reason="Because: median nerve.")
    assert result(ordered(room, RECORD), "bo").reasons == ()


def test_every_typed_word_gets_its_reason() -> None:
    room = ordered(
        answering(free_list()), writes("ada", "brachialis", "triceps brachii", "qqqq"), CLOSE, RECORD
    )
    reasons = result(room).reasons
    assert [(reason.text, reason.right) for reason in reasons] == [
        ("brachialis", True),
        ("triceps brachii", False),
        ("qqqq", False),
    ]
    assert reasons[1].reason == "It extends the elbow."


def test_an_own_place_is_told_once_a_round_is_closed_if_standings_are_on() -> None:
    room = ordered(answering(one_best(), one_best("2"), by=plan(standings=True)), says("bo", "B"))
    closed = ordered(room, CLOSE)
    assert (own(room).place, own(closed).place, own(closed, "bo").place) == (None, 2, 1)
    assert own(ordered(closed, OpenRound(round=2))).place is None
    assert own(ordered(answering(), CLOSE)).place is None


def test_a_removed_player_sees_that_and_nothing_else() -> None:
    room = ordered(answering(by=plan(standings=True)), says("ada", "B"), CLOSE, RemovePlayer(player="ada"))
    assert own(room) == OwnView(
        version=room.version,
        now=own(room).now,
        player="ada",
        handle="",
        removed=True,
        from_round=0,
        round=1,
        answer=None,
        result=None,
        marks=0,
        of=0,
        rounds=(),
        place=None,
        group=None,
        bench=None,
        flag=None,
        flags=(),
        factor_percent=100,
        factor_counts=False,
        clock=None,
        clock_again=False,
        kept=False,
    )


def test_past_rounds_are_told_as_they_now_stand() -> None:
    room = ordered(answering(one_best(), one_best("2")), says("ada", "B"), CLOSE, OpenRound(round=2))
    assert [(one.round, one.verdict, one.mark) for one in own(room).rounds] == [(1, "right", 1)]
    assert [one.verdict for one in own(ordered(room, StrikeItem(round=1))).rounds] == ["struck"]


def test_a_seat_before_the_first_round() -> None:
    view = own(gathered())
    assert (view.handle, view.removed, view.from_round, view.round) == ("Ada", False, 1, 0)
    assert (view.answer, view.result, view.place) == (None, None, None)


def test_the_answer_shown_is_the_last_one_taken() -> None:
    last = SubmitAnswer(player="ada", round=1, choice=("D", "A"))
    room = ordered(answering(pick_three()), says("ada", "B"), last)
    assert own(room).answer == AnswerFace(round=1, choice=("A", "D"), typed=())
