"""Talking over a round whose result is held, answering it again, and its twin."""

from dataclasses import replace

import pytest

from quizroom.marking import Total, marks_of_room
from quizroom.room.bench_state import BenchRules
from quizroom.room.clock import began_at, is_over
from quizroom.room.commands import (
    AddTime,
    Command,
    EndReview,
    GiveBackTime,
    OpenRound,
    PauseRound,
    RemovePlayer,
    ResumeRound,
    ShowRecord,
    ShowResult,
    SubmitAnswer,
)
from quizroom.room.events import AnswerAccepted, DoorOpened, RoundOpened
from quizroom.room.group_state import GroupRules
from quizroom.room.laying_out import prepare
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.owner_events import PlayerForgotten
from quizroom.room.owners import redacted
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.room.talk import order_when_over
from quizroom.room.talk_commands import AddTwin, CloseAgain, LetTalk, OpenAgain
from tests.room.sample_items import one_best, typed
from tests.room.samples import CLOSE, NOON, after, answering, ordered, plan, preparation, says, seat, writes

TALK = LetTalk(round=1)
AGAIN = OpenAgain(round=1, by_host=True)
CLOSE_AGAIN = CloseAgain(round=1, by_host=True)
TWIN = AddTwin(round=1, item=one_best("twin"))
HOLDING = replace(plan(), holds_results=True)


def again(player: str, *letters: str, round_: int = 1) -> SubmitAnswer:
    return replace(says(player, *letters, round_=round_), again=True)


def closed() -> Room:
    return ordered(answering(by=HOLDING), says("ada", "A"), says("bo", "B"), CLOSE)


def talking() -> Room:
    return ordered(closed(), TALK, at=after(10))


def answering_again() -> Room:
    return ordered(talking(), AGAIN, at=after(60))


def answered_again() -> Room:
    return ordered(answering_again(), again("ada", "B"), again("bo", "B"), CLOSE_AGAIN, at=after(70))


def code_of(room: Room, command: Command, seconds: float = 61) -> str:
    with pytest.raises(Refused) as refused:
        decide(room, command, after(seconds))
    return refused.value.code


def test_neighbours_talk_for_two_minutes_unless_the_host_says_otherwise() -> None:
    room = talking()
    assert (room.phase, room.rounds[0].closes_at, room.rounds[0].limit_ms) == ("talking", after(130), 120_000)
    assert room.rounds[0].first_limit_ms == 30_000
    assert ordered(closed(), LetTalk(round=1, seconds=45)).rounds[0].closes_at == after(45)
    for seconds in (0, -1, 601):
        assert code_of(closed(), LetTalk(round=1, seconds=seconds)) == "bad_time"


def test_the_clock_of_the_talk_is_paused_lengthened_and_given_back_like_any_other() -> None:
    room = ordered(talking(), AddTime(seconds=30, order="a"), at=after(20))
    assert room.rounds[0].closes_at == after(160)
    paused = ordered(room, PauseRound(round=1), at=after(60))
    assert paused.rounds[0].left_ms == 100_000
    assert ordered(paused, ResumeRound(round=1), at=after(90)).rounds[0].closes_at == after(190)
    back = ordered(room, GiveBackTime(ms=4000))
    assert (back.rounds[0].closes_at, back.rounds[0].limit_ms) == (after(164), 150_000)
    assert began_at(back.rounds[0]) == after(10)


def test_the_alarm_ends_the_talk_and_the_second_answering_when_their_time_is_over() -> None:
    room = talking()
    order = order_when_over(room)
    assert order == OpenAgain(round=1, by_host=False)
    assert [is_over(room.rounds[0], after(second)) for second in (130.7, 130.75)] == [False, True]
    assert code_of(room, order, 130.7) == "too_early"
    room = ordered(room, order, at=after(130.75))
    assert (room.phase, room.rounds[0].closes_at) == ("answering again", after(160.75))
    order = order_when_over(room)
    assert order == CloseAgain(round=1, by_host=False)
    assert code_of(room, order, 161) == "too_early"
    room = ordered(room, order, at=after(161.5))
    assert (room.phase, room.rounds[0].again_closed_at) == ("closed", after(161.5))
    assert order_when_over(room) is None


def test_the_second_answering_has_the_time_of_the_item_or_none() -> None:
    assert answering_again().rounds[0].closes_at == after(90)
    untimed = replace(plan(timing="untimed"), holds_results=True)
    room = ordered(answering(by=untimed), CLOSE, TALK, AGAIN)
    assert (room.rounds[0].closes_at, room.rounds[0].limit_ms) == (None, None)


def test_second_answers_stand_beside_the_first_and_earn_nothing() -> None:
    room = answered_again()
    assert {player: one.choice for player, one in room.rounds[0].answers.items()} == {
        "ada": ("A",),
        "bo": ("B",),
    }
    assert {player: one.choice for player, one in room.rounds[0].second_answers.items()} == {
        "ada": ("B",),
        "bo": ("B",),
    }
    marks = marks_of_room(ordered(room, ShowResult(round=1)))
    assert marks.totals == {"ada": Total(marks=0.0, of=1), "bo": Total(marks=1.0, of=1)}
    assert marks.seconds[0] is not None
    assert marks.seconds[0].marks == {"ada": 1.0, "bo": 1.0}
    assert marks_of_room(room, marks_of_room(room)).seconds[0] is not None


def test_a_second_answer_may_be_changed_and_repeated_even_when_it_is_too_late() -> None:
    room = ordered(answering_again(), again("ada", "B"), at=after(61))
    assert decide(room, again("ada", "B"), after(62)) == ()
    room = ordered(room, again("ada", "C"), CLOSE_AGAIN, at=after(63))
    assert room.rounds[0].second_answers["ada"].choice == ("C",)
    assert decide(room, again("ada", "C"), after(500)) == ()
    assert code_of(room, again("ada", "B"), 500) == "too_late"


def test_a_first_answer_that_comes_again_in_the_second_answering_is_no_second_one() -> None:
    room = answering_again()
    assert decide(room, says("ada", "A"), after(61)) == ()
    assert code_of(room, says("ada", "B")) == "too_late"
    assert room.rounds[0].second_answers == {}


@pytest.mark.parametrize("room", [answering(by=HOLDING), closed(), talking(), answered_again()])
def test_second_answers_are_taken_in_their_own_time_alone(room: Room) -> None:
    assert code_of(room, again("ada", "D")) == "too_late"


def test_who_missed_the_first_answering_may_answer_again_but_not_who_came_later() -> None:
    room = ordered(answering(by=HOLDING), says("bo", "B"), CLOSE, TALK, seat("cem"), AGAIN)
    assert set(ordered(room, again("ada", "B")).rounds[0].second_answers) == {"ada"}
    assert code_of(room, again("cem", "B"), 1) == "no_such_round"


def test_certainty_is_asked_again() -> None:
    sure = replace(HOLDING, certainty=True)
    room = ordered(answering(by=sure), replace(says("ada", "A"), certainty=1), CLOSE, TALK, AGAIN)
    room = ordered(room, replace(again("ada", "B"), certainty=3))
    assert (room.rounds[0].answers["ada"].certainty, room.rounds[0].second_answers["ada"].certainty) == (1, 3)


def test_who_is_sent_out_takes_the_second_answer_along() -> None:
    room = ordered(answered_again(), RemovePlayer(player="ada"))
    assert set(room.rounds[0].second_answers) == {"bo"}


def test_there_is_no_talk_once_the_result_is_out() -> None:
    assert code_of(ordered(answering(), CLOSE), TALK) == "result_is_out"
    assert code_of(ordered(closed(), ShowResult(round=1)), TALK) == "result_is_out"
    assert code_of(ordered(closed(), ShowRecord(round=1)), TALK) == "not_closed"
    assert code_of(answering(by=HOLDING), TALK) == "not_closed"


def test_benches_that_hand_in_together_have_talked_and_others_may() -> None:
    for answers, phase in ((True, ""), (False, "talking")):
        at_benches = replace(HOLDING, benches=BenchRules(how="choice", answers=answers))
        room = ordered(answering(by=at_benches), CLOSE)
        if phase:
            assert ordered(room, TALK).phase == phase
        else:
            assert code_of(room, TALK) == "benches_talk"


def test_a_group_without_a_host_does_not_talk() -> None:
    group = replace(HOLDING, group=GroupRules(reading_s=None, hours=4))
    assert code_of(ordered(answering(by=group), CLOSE), TALK) == "wrong_phase"


@pytest.mark.parametrize("room", [talking(), answering_again()])
def test_while_they_talk_nothing_else_is_opened_or_shown(room: Room) -> None:
    assert code_of(room, OpenRound(round=2)) == "round_is_open"
    assert code_of(room, ShowResult(round=1)) == "not_closed"
    assert code_of(room, ShowRecord(round=1)) == "not_closed"


@pytest.mark.parametrize("room", [talking(), answering_again(), answered_again()])
def test_every_step_of_a_talk_repeated_changes_nothing(room: Room) -> None:
    commands: list[Command] = [CLOSE, TALK, *([AGAIN] if room.phase != "talking" else [])]
    for command in commands:
        assert decide(room, command, after(80)) == ()


def test_the_end_closes_the_second_answering_and_keeps_what_came() -> None:
    room = ordered(answering_again(), again("ada", "B"), EndReview(), at=after(65))
    assert (room.phase, room.rounds[0].again_closed_at) == ("finished", after(65))
    assert ordered(talking(), EndReview()).rounds[0].again_closed_at is None


def test_a_twin_comes_next_and_is_known_as_one() -> None:
    room = ordered(answered_again(), TWIN)
    assert (room.ahead[0].id, room.twins) == ("twin", {"twin": 1})
    assert decide(room, TWIN, after(80)) == ()
    opened = ordered(room, ShowResult(round=1), OpenRound(round=2))
    assert opened.rounds[1].item.id == "twin"
    assert decide(opened, TWIN, after(80)) == ()


def test_a_twin_needs_a_round_that_was_answered_again_and_is_the_last() -> None:
    assert code_of(closed(), TWIN) == "wrong_phase"
    assert code_of(answering_again(), TWIN) == "wrong_phase"
    assert code_of(ordered(answered_again(), OpenRound(round=2)), TWIN) == "wrong_phase"
    assert code_of(ordered(answered_again(), EndReview()), TWIN) == "finished"
    assert code_of(answered_again(), AddTwin(round=7, item=one_best())) == "no_such_round"
    assert ordered(ordered(answered_again(), ShowRecord(round=1)), TWIN).ahead[0].id == "twin"


def test_typed_second_answers_are_judged_by_the_same_rulings() -> None:
    room = ordered(answering(typed(), by=HOLDING), writes("ada", "radial nerve"), CLOSE, TALK, AGAIN)
    room = ordered(room, replace(writes("ada", "axillary nerve"), again=True), CLOSE_AGAIN)
    marks = marks_of_room(room)
    assert marks.seconds[0] is not None
    assert (marks.rounds[0].marks["ada"], marks.seconds[0].marks["ada"]) == (0.0, 1.0)


def test_words_of_a_second_answer_are_forgotten_with_their_player() -> None:
    first = answering(typed(), by=HOLDING)
    orders = (
        writes("ada", "axillary nerve"),
        CLOSE,
        TALK,
        AGAIN,
        replace(writes("ada", "my own secret"), again=True),
    )
    room = ordered(first, *orders)
    deed = decide(room, ForgetPlayer(player="ada"), after(70))[0]
    assert isinstance(deed, PlayerForgotten)
    assert ordered(room, ForgetPlayer(player="ada")).rounds[0].second_answers["ada"].typed == ("? 1",)
    said = AnswerAccepted(
        player="ada", round=1, choice=(), typed=("my own secret",), at=after(60), again=True
    )
    log = [*prepare("room-1", preparation(typed(), by=HOLDING), NOON)]
    log += [DoorOpened(door_code="CDFHJ", at=NOON), RoundOpened(round=1, at=NOON, closes_at=None), said]
    assert redacted(log, deed)[-1] == replace(said, typed=("? 1",))
