"""A review without a host, step by step."""

from datetime import datetime

import pytest

from quizroom.room.commands import CloseRound, Command
from quizroom.room.group import due_step, opener, present, waited_for
from quizroom.room.group_commands import (
    AskPause,
    GoOn,
    LeaveSeat,
    MoveOn,
    RenameSelf,
    ReturnToSeat,
    SayReady,
    SendOut,
)
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from tests.room.group_histories import GROUP, answer_of, gathered_group, group_plan, moved_on
from tests.room.refusing import code_of
from tests.room.samples import NOON, after, folded, gathered, ordered, seat


def watched(room: Room, at: datetime = NOON) -> Room:
    """The room after everything that is due has been done."""
    while (step := moved_on(room, at)) is not None:
        room = folded(room, decide(room, step, at))
    return room


def all_ready(room: Room, *players: str, at: datetime = NOON) -> Room:
    """The room after these players, or all, are ready, and what follows."""
    orders = [SayReady(player=player, round=len(room.rounds)) for player in players or GROUP]
    return watched(ordered(room, *orders, at=at), at)


def begun(by: Plan | None = None) -> Room:
    """A group whose first round opened at noon."""
    return all_ready(gathered_group(by))


def explained(by: Plan | None = None) -> Room:
    """The same once all have answered."""
    room = begun(by)
    return watched(ordered(room, *(answer_of(room, player) for player in GROUP)))


def test_the_first_round_opens_when_all_who_are_there_are_ready() -> None:
    room = all_ready(gathered_group(), "ada", "bo")
    assert (room.phase, waited_for(room)) == ("gathering", ("cem",))
    assert all_ready(room, "cem").phase == "answering"


def test_a_single_player_begins_only_after_saying_so() -> None:
    room = ordered(gathered_group(players=("ada",)), SayReady(player="ada", round=0))
    assert due_step(room, NOON) is None
    assert due_step(ordered(room, SayReady(player="ada", round=0, alone=True)), NOON) == "open_round"


def test_a_round_closes_and_is_explained_as_soon_as_all_have_answered() -> None:
    room = begun()
    room = ordered(room, answer_of(room, "ada"), answer_of(room, "bo"))
    assert due_step(room, after(1)) is None
    room = watched(ordered(room, answer_of(room, "cem")), after(2))
    assert room.phase == "explained"
    assert room.rounds[0].closed_at == room.rounds[0].explained_at == after(2)


def test_a_round_closes_when_its_time_and_the_grace_are_over() -> None:
    room = begun()
    assert due_step(room, after(45.7)) is None
    assert watched(room, after(45.75)).phase == "explained"


def test_the_record_stays_until_all_are_ready_or_the_reading_time_is_over() -> None:
    room = explained()
    assert due_step(room, after(59.9)) is None
    assert due_step(room, after(60)) == "open_round"
    assert all_ready(room, at=after(3)).phase == "answering"


def test_without_a_reading_time_the_record_waits_for_all() -> None:
    room = explained(group_plan(reading_s=None))
    assert due_step(room, after(3000)) is None
    assert len(all_ready(room, at=after(3000)).rounds) == 2


def test_a_player_who_left_is_not_waited_for_and_comes_back_to_the_same_answers() -> None:
    room = begun()
    room = ordered(room, answer_of(room, "cem"), LeaveSeat(player="cem"), answer_of(room, "ada"))
    assert due_step(room, after(5)) is None
    room = watched(ordered(room, answer_of(room, "bo")), after(6))
    assert room.phase == "explained"
    back = ordered(room, ReturnToSeat(player="cem"), at=after(7))
    assert present(back) == GROUP
    assert back.rounds[0].answers.keys() == set(GROUP)


def test_who_has_left_before_answering_does_not_hold_the_others_up() -> None:
    room = begun()
    room = ordered(room, answer_of(room, "ada"), answer_of(room, "bo"), LeaveSeat(player="cem"))
    assert due_step(room, after(5)) == "close_round"


def test_anybody_may_ask_for_a_pause_and_anybody_may_end_it() -> None:
    room = ordered(begun(), AskPause(player="bo", round=1), at=after(15))
    assert (room.rounds[0].paused, room.rounds[0].left_ms) == (True, 30_000)
    room = ordered(room, *(answer_of(room, player) for player in GROUP), at=after(500))
    assert due_step(room, after(500)) is None
    room = ordered(room, GoOn(player="cem", round=1), at=after(501))
    assert room.rounds[0].closes_at == after(531)
    assert due_step(room, after(501)) == "close_round"


def test_a_pause_at_the_record_keeps_what_was_left_of_the_reading_time() -> None:
    room = ordered(explained(), AskPause(player="ada", round=1), at=after(20))
    everybody_ready = ordered(room, *(SayReady(player=player, round=1) for player in GROUP), at=after(30))
    assert due_step(everybody_ready, after(900)) is None
    room = ordered(room, GoOn(player="ada", round=1), at=after(100))
    assert due_step(room, after(139.9)) is None
    assert due_step(room, after(140)) == "open_round"


def test_while_nobody_is_there_no_record_passes_unread() -> None:
    gone = [LeaveSeat(player=player) for player in GROUP]
    room = ordered(explained(), *gone, at=after(10))
    assert due_step(room, after(300)) is None
    room = ordered(room, ReturnToSeat(player="bo"), at=after(300))
    assert due_step(room, after(359)) is None
    assert due_step(room, after(360)) == "open_round"


def test_a_room_that_everybody_has_left_ends_by_itself_after_ten_minutes() -> None:
    room = ordered(begun(), *(LeaveSeat(player=player) for player in GROUP), at=after(10))
    assert watched(room, after(609)).phase == "explained"
    assert watched(room, after(610)).phase == "finished"


def test_a_room_into_which_nobody_has_come_ends_too() -> None:
    room = gathered_group(players=())
    assert due_step(room, after(599)) is None
    assert due_step(room, after(600)) == "end_review"


def test_an_evening_ends_after_its_hours() -> None:
    room = gathered_group(group_plan(hours=2))
    assert due_step(room, after(7199)) is None
    assert due_step(room, after(7200)) == "end_review"


def test_after_the_last_record_the_review_is_finished() -> None:
    room = explained()
    for _ in range(2):
        room = all_ready(room)
        room = watched(ordered(room, *(answer_of(room, player) for player in GROUP)))
    assert (room.phase, len(room.rounds)) == ("explained", 3)
    assert all_ready(room).phase == "finished"


def test_only_whoever_opened_the_room_may_send_others_out() -> None:
    room = gathered_group()
    assert code_of(room, SendOut(by="bo", player="cem")) == "not_opener"
    assert code_of(room, SendOut(by="ada", player="ada")) == "not_opener"
    assert list(ordered(room, SendOut(by="ada", player="bo")).players) == ["ada", "cem"]


def test_while_the_opener_is_away_the_next_one_may() -> None:
    room = ordered(gathered_group(), LeaveSeat(player="ada"))
    assert opener(room) == "bo"
    assert opener(ordered(room, ReturnToSeat(player="ada"))) == "ada"


def test_players_take_another_handle_by_themselves() -> None:
    room = ordered(gathered_group(), RenameSelf(player="bo", handle=" Teal  Talus "))
    assert room.players["bo"].handle == "Teal Talus"
    assert code_of(room, RenameSelf(player="cem", handle="teal talus")) == "handle_taken"


def test_who_comes_during_a_round_is_waited_for_and_one_who_is_new_at_the_record_too() -> None:
    room = ordered(begun(), seat("dele"))
    assert waited_for(room) == (*GROUP, "dele")
    late = ordered(explained(), seat("dele"))
    assert all_ready(late).phase == "explained"
    assert all_ready(late, *GROUP, "dele").phase == "answering"


@pytest.mark.parametrize(
    "command",
    [
        SayReady(player="ada", round=1),
        AskPause(player="ada", round=1),
        GoOn(player="ada", round=1),
        RenameSelf(player="ada", handle="Bo"),
        SendOut(by="ada", player="bo"),
    ],
)
def test_where_a_host_leads_none_of_this_is_taken(command: Command) -> None:
    assert code_of(gathered(), command) == "led_by_host"


def test_where_a_host_leads_nothing_is_due_by_itself() -> None:
    room = gathered()
    assert due_step(room, after(10**6)) is None
    assert decide(room, MoveOn(step="open_round", round=0), NOON) == ()


@pytest.mark.parametrize(
    "room,command",
    [
        (gathered_group(), AskPause(player="ada", round=0)),
        (begun(), SayReady(player="ada", round=1)),
        (begun(), SayReady(player="ada", round=2)),
    ],
)
def test_what_does_not_fit_the_moment_is_refused(room: Room, command: Command) -> None:
    assert code_of(room, command) == "wrong_phase"


def test_an_order_for_an_earlier_round_changes_nothing() -> None:
    room = begun()
    assert decide(room, SayReady(player="ada", round=0), NOON) == ()
    assert decide(room, CloseRound(round=1, by_host=False), after(46)) != ()
