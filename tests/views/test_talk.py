"""What is seen of a talk at the desk, on the wall and at a seat."""

from dataclasses import replace

import pytest

from quizroom.room.bench_state import BenchRules
from quizroom.room.commands import CloseRound, OpenRound, ShowRecord, ShowResult, StrikeItem
from quizroom.room.state import Room
from quizroom.room.talk_commands import AddTwin, CloseAgain, LetTalk, OpenAgain
from quizroom.views.own_model import AnswerFace
from quizroom.views.talk_model import RightFace, SecondShare
from tests.room.sample_items import one_best, ordering, typed
from tests.room.samples import CLOSE, answering, ordered, plan, says, writes
from tests.views.seen import desk, own, public

HOLDING = replace(plan(standings=True), holds_results=True)
TALK = LetTalk(round=1)
AGAIN, CLOSE_AGAIN = OpenAgain(round=1, by_host=True), CloseAgain(round=1, by_host=True)


def closed(right: int, wrong: int) -> Room:
    players = [f"p{number}" for number in range(right + wrong)]
    said = [says(player, "B" if place < right else "A") for place, player in enumerate(players)]
    return ordered(answering(by=HOLDING, players=players), *said, CLOSE)


def answering_again() -> Room:
    room = ordered(answering(by=HOLDING), says("ada", "A"), says("bo", "B"), CLOSE, TALK, AGAIN)
    return ordered(room, replace(says("ada", "B"), again=True))


def answered_again() -> Room:
    return ordered(answering_again(), replace(says("bo", "B"), again=True), CLOSE_AGAIN)


@pytest.mark.parametrize(
    "right, wrong, advised, first",
    [
        (1, 9, "explain", ("show_record", "show_result", "let_talk")),
        (5, 5, "talk", ("let_talk", "show_result", "show_record")),
        (9, 1, "go on", ("show_result", "show_record", "let_talk")),
        (0, 0, None, ("show_result", "show_record", "let_talk")),
    ],
)
def test_the_step_that_is_advised_is_the_next_and_the_others_stand_beside(
    right: int, wrong: int, advised: str | None, first: tuple[str, ...]
) -> None:
    view = desk(closed(right, wrong))
    (panel,) = view.talks
    assert (panel.advice, panel.first.right, panel.first.of) == (advised, right, right + wrong)
    assert view.actions[:3] == first


@pytest.mark.parametrize(
    "room, actions",
    [
        (ordered(closed(5, 5), TALK), ("open_again", "pause_round", "add_time", "strike_item", "end_review")),
        (answering_again(), ("close_again", "pause_round", "add_time", "strike_item", "end_review")),
        (
            answered_again(),
            ("show_result", "show_record", "ask_twin", "open_round", "strike_item", "end_review"),
        ),
        (
            ordered(answered_again(), ShowResult(round=1), ShowRecord(round=1)),
            ("open_round", "ask_twin", "strike_item", "end_review"),
        ),
        (
            ordered(answered_again(), StrikeItem(round=1)),
            ("show_result", "show_record", "open_round", "restore_item", "end_review"),
        ),
    ],
)
def test_the_desk_offers_the_steps_of_a_talk(room: Room, actions: tuple[str, ...]) -> None:
    assert desk(room).actions == actions


def test_no_talk_is_offered_where_results_are_out_or_benches_hand_in_together() -> None:
    at_benches = replace(HOLDING, benches=BenchRules(how="choice", answers=True))
    for room in (ordered(answering(), CLOSE), ordered(answering(by=at_benches), CLOSE)):
        assert desk(room).talks == ()
        assert "let_talk" not in desk(room).actions


def test_the_clock_is_that_of_the_talk_and_then_of_the_second_answering() -> None:
    room = ordered(closed(5, 5), TALK)
    clock = public(room).clock
    assert clock is not None
    assert (public(room).phase, clock.limit_ms) == ("talking", 120_000)
    assert desk(room).items[0].seconds == 30
    clock = public(answering_again()).clock
    assert clock is not None
    assert (public(answering_again()).phase, clock.limit_ms) == ("answering again", 30_000)
    assert public(answered_again()).clock is None


def test_second_answers_are_counted_by_themselves_and_told_only_to_the_desk() -> None:
    room = answering_again()
    view = public(room)
    assert (view.answered, view.result, view.second, view.standings) == (None, None, None, None)
    assert desk(room).answered == 1
    assert [(row.handle, row.answered) for row in desk(room).roster] == [("Ada", True), ("Bo", False)]
    second = desk(room).talks[0].second
    assert second is not None
    assert (second.answered, second.right, second.options[1]) == (
        1,
        1,
        SecondShare(letter="B", count=1, share=1.0),
    )
    assert desk(room).talks[0].change is None


def test_a_seat_sees_its_own_first_and_second_answer_and_no_verdict() -> None:
    view = own(answering_again())
    assert view.answer == AnswerFace(round=1, choice=("A",), typed=())
    assert view.second == AnswerFace(round=1, choice=("B",), typed=())
    assert (view.result, view.rounds, view.place) == (None, (), None)
    assert own(answering_again(), "bo").second is None


def test_the_result_shows_both_and_the_marks_are_those_of_the_first() -> None:
    room = ordered(answered_again(), ShowResult(round=1))
    view = public(room)
    assert view.result is not None
    assert view.second is not None
    assert [one.share for one in view.result.options] == [0.5, 0.5, 0.0, 0.0]
    assert [one.share for one in view.second.options] == [0.0, 1.0, 0.0, 0.0]
    assert (view.second.first_right, view.second.right, view.second.answered) == (1, 2, 2)
    mine = own(room).result
    assert mine is not None
    assert (mine.verdict, mine.second, own(room).marks) == ("wrong", "right", 0.0)
    change = desk(room).talks[0].change
    assert change is not None
    assert (change.right_right, change.wrong_right, change.gain) == (1, 1, 1.0)


def test_nobody_answering_again_is_shown_as_nobody() -> None:
    room = ordered(answering(by=HOLDING), says("ada", "A"), CLOSE, TALK, AGAIN, CLOSE_AGAIN)
    second = public(ordered(room, ShowResult(round=1))).second
    assert second is not None
    assert (second.answered, second.options) == (0, ())


def test_places_and_typed_words_are_shown_twice_as_well() -> None:
    room = ordered(answering(ordering(), by=HOLDING), says("ada", *"ABCD"), CLOSE, TALK, AGAIN)
    room = ordered(room, replace(says("ada", *"BACD"), again=True), CLOSE_AGAIN, ShowResult(round=1))
    second = public(room).second
    assert second is not None
    assert (len(second.rows), second.options) == (4, ())
    room = ordered(answering(typed(), by=HOLDING), writes("ada", "rude words"), CLOSE, TALK, AGAIN)
    room = ordered(
        room, replace(writes("ada", "axillary nerve"), again=True), CLOSE_AGAIN, ShowResult(round=1)
    )
    second = public(room).second
    assert second is not None
    assert [(one.text, one.verdict) for one in second.typed] == [("axillary nerve", "right")]


def test_a_twin_is_marked_for_the_host_and_told_of_with_its_round() -> None:
    room = ordered(answered_again(), AddTwin(round=1, item=one_best("twin")))
    assert [item.twin_of for item in desk(room).items][:2] == [None, 1]
    assert "ask_twin" not in desk(room).actions
    room = ordered(room, ShowResult(round=1), OpenRound(round=2), says("ada", "B", round_=2))
    room = ordered(room, CloseRound(round=2, by_host=True))
    assert desk(room).items[1].twin_of == 1
    assert desk(room).talks[0].twin == RightFace(right=1, of=1, share=1.0)
