"""More time that players take by themselves: what WCAG 2.2, 2.2.1 asks, and who may end it."""

from dataclasses import replace
from datetime import datetime, timedelta

import orjson
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import write
from quizroom.room.bench_state import BenchRules
from quizroom.room.commands import (
    AddTime,
    Command,
    EndReview,
    GiveBackTime,
    HoldResults,
    OpenDoor,
    OpenRound,
    PauseRound,
    RemovePlayer,
    ResumeRound,
    ShowRecord,
    ShowResult,
)
from quizroom.room.events import Event
from quizroom.room.folding import apply, replay
from quizroom.room.laying_out import prepare
from quizroom.room.own_time import OwnClock, own_clock, told_version
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.owner_events import PlayerForgotten
from quizroom.room.owners import redacted
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from quizroom.room.time_commands import SetTimeFactor, TakeTime, TakeTimeAlways
from quizroom.room.time_state import FACTORS, MOST_TIMES, FactorPercent
from quizroom.views.desk import desk_view
from quizroom.views.history import past_review
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.refusing import code_of
from tests.room.samples import CLOSE, NOON, after, gathered, ordered, plan, preparation, says, seat

HOLDING = replace(plan(timing="fixed", seconds=40), holds_results=True)
ALWAYS = TakeTimeAlways(player="ada", on=True)
TEN_TIMES, TWENTY_SECONDS = 10, 20
"""What WCAG 2.2, 2.2.1 asks: ten times the length or ten extensions, and 20 seconds for each of them."""
Ending = ShowResult | ShowRecord | OpenRound | LetTalk | EndReview
ENDINGS: list[Ending] = [
    ShowResult(round=1),
    ShowRecord(round=1),
    OpenRound(round=2),
    LetTalk(round=1),
    EndReview(),
]


def open_round(*before: Command, by: Plan = HOLDING) -> Room:
    """A round of 40 s; Ada and Bo are in it."""
    return ordered(gathered(by=by), *before, OpenRound(round=1))


def taking(time: int = 1, *, again: bool = False) -> TakeTime:
    return TakeTime(player="ada", round=1, time=time, again=again)


def clock_of(room: Room) -> OwnClock:
    clock = own_clock(room, "ada")
    assert clock is not None
    return clock


def test_a_player_may_take_the_length_of_the_round_again_and_nobody_else_has_it() -> None:
    room = ordered(open_round(), taking(), at=after(10))
    assert clock_of(room) == OwnClock(limit_ms=80_000, closes_at=after(80), left_ms=None, paused=False)
    assert own_clock(room, "bo") is None
    closed = ordered(room, replace(CLOSE, by_host=False), at=after(40.75))
    assert code_of(closed, says("bo", "B"), at=after(50)) == "too_late"
    answered = ordered(closed, says("ada", "B"), at=after(80))
    assert marks_of_room(ordered(answered, ShowResult(round=1))).totals["ada"].marks == 1.0


@given(st.integers(5, 3600), st.sampled_from(FACTORS), st.sampled_from([[], [ALWAYS]]))
@settings(max_examples=50, deadline=None)
def test_whoever_takes_it_at_the_last_moment_ten_times_has_ten_times_as_long_and_time_to_take_it_again(
    seconds: int, factor: FactorPercent, first: list[Command]
) -> None:
    """WCAG 2.2, 2.2.1 "Extend": at least ten times, and at least 20 seconds for each."""
    give = SetTimeFactor(player="ada", factor_percent=factor)
    room = open_round(give, *first, by=replace(HOLDING, seconds=seconds))
    closes_at = after(seconds)
    for time in range(1, TEN_TIMES + 1):
        before = own_clock(room, "ada")
        last = closes_at if before is None or before.closes_at is None else before.closes_at
        room = ordered(room, taking(time), at=last - timedelta(seconds=1))
        longer = clock_of(room).closes_at
        assert longer is not None
        assert longer - last >= timedelta(seconds=max(seconds, TWENTY_SECONDS))
    assert clock_of(room).limit_ms >= (TEN_TIMES + 1) * seconds * 1000
    assert told_version(room) == told_version(open_round(by=HOLDING))


@given(st.integers(5, 3600), st.sampled_from(FACTORS))
@settings(max_examples=50, deadline=None)
def test_whoever_takes_it_always_has_ten_times_as_long_without_pressing_anything(
    seconds: int, factor: FactorPercent
) -> None:
    """WCAG 2.2, 2.2.1 "Adjust": before the limit is met, at least ten times its length."""
    by = replace(HOLDING, seconds=seconds)
    room = open_round(ALWAYS, SetTimeFactor(player="ada", factor_percent=factor), by=by)
    assert clock_of(room).limit_ms == TEN_TIMES * seconds * 1000
    assert clock_of(room).closes_at == after(TEN_TIMES * seconds)
    off = ordered(room, replace(ALWAYS, on=False))
    assert (own_clock(off, "ada") is None) == (factor == 100)


def test_always_holds_for_every_round_of_the_review_and_for_second_answers() -> None:
    room = ordered(open_round(ALWAYS), says("ada", "A"), CLOSE, LetTalk(round=1, seconds=60))
    assert own_clock(room, "ada") is None
    room = ordered(room, OpenAgain(round=1, by_host=True), at=after(100))
    assert clock_of(room).closes_at == after(500)
    room = ordered(room, CloseAgain(round=1, by_host=True), at=after(110))
    assert code_of(room, ShowRecord(round=1), at=after(120)) == "own_time_runs"
    room = ordered(room, replace(says("ada", "B"), again=True), at=after(400))
    room = ordered(room, ShowRecord(round=1), OpenRound(round=2), at=after(410))
    assert clock_of(room).limit_ms == 400_000


@pytest.mark.parametrize(
    "late,code", [(0, None), (19.9, None), (20.7, None), (20.75, "too_late"), (300, "too_late")]
)
def test_it_may_be_taken_until_20_seconds_after_the_own_clock_while_the_result_is_held(
    late: float, code: str | None
) -> None:
    room = ordered(open_round(), CLOSE, at=after(39))
    assert code_of(room, taking(), at=after(40 + late)) == code
    taken = ordered(room, taking(), at=after(50))
    assert clock_of(taken).closes_at == after(80)
    assert code_of(taken, taking(2), at=after(80 + late)) == code


@pytest.mark.parametrize("chosen,closes", [(50, after(400)), (59.9, after(400)), (60, None)])
def test_always_counts_for_the_round_in_which_it_is_chosen_only_as_long_as_time_may_be_taken(
    chosen: float, closes: datetime | None
) -> None:
    room = ordered(ordered(open_round(), CLOSE, at=after(39)), ALWAYS, at=after(chosen))
    clock = own_clock(room, "ada")
    assert (clock.closes_at if clock else None) == closes
    later = ordered(room, ShowResult(round=1, ends_own_time=True), OpenRound(round=2), at=after(100))
    assert clock_of(later).limit_ms == 400_000


def test_a_repeat_adds_nothing_and_no_time_can_be_left_out() -> None:
    room = ordered(open_round(), taking())
    assert decide(room, taking(), after(1)) == ()
    assert code_of(room, taking(3)) == "bad_time"
    room = ordered(room, *(taking(time) for time in range(2, MOST_TIMES + 1)))
    assert code_of(room, taking(MOST_TIMES + 1)) == "bad_time"
    assert decide(ordered(room, ALWAYS), ALWAYS, after(1)) == ()


def test_first_and_second_answers_have_their_own_times() -> None:
    room = ordered(open_round(), taking(), says("ada", "A"), CLOSE, LetTalk(round=1, seconds=60))
    assert code_of(room, taking(2)) == "too_late"
    room = ordered(room, OpenAgain(round=1, by_host=True), at=after(100))
    assert own_clock(room, "ada") is None
    assert code_of(room, taking(2)) == "too_late"  # it is late for the first answer
    room = ordered(room, taking(again=True), at=after(101))
    assert clock_of(room).closes_at == after(180)
    past = past_review(ordered(room, EndReview(ends_own_time=True), at=after(102)), "ada")
    assert past is not None
    assert [one.took_time for one in past.rounds] == [2]
    assert not past.always_took_time


def test_pauses_and_added_time_move_it_as_they_move_the_common_clock() -> None:
    room = ordered(open_round(), taking(), PauseRound(round=1), at=after(10))
    assert clock_of(room).left_ms == 70_000
    assert code_of(room, taking(2), at=after(1000)) is None
    room = ordered(room, ResumeRound(round=1), at=after(20))
    assert clock_of(room).closes_at == after(90)
    room = ordered(room, AddTime(seconds=20, order="x"), at=after(21))
    assert clock_of(room).limit_ms == 2 * 60_000
    assert clock_of(room).closes_at == after(130)


@pytest.mark.parametrize(
    "by,code",
    [
        (replace(HOLDING, players_take_time=False), "ask_host_for_time"),
        (replace(HOLDING, timing="untimed"), "no_own_time"),
        (replace(HOLDING, benches=BenchRules(how="choice", answers=True)), "no_own_time"),
    ],
)
def test_it_is_not_offered_where_the_host_keeps_it_or_it_means_nothing(by: Plan, code: str) -> None:
    room = gathered(by=by)
    assert code_of(room, ALWAYS) == code
    assert not public_view(room, marks_of_room(room), NOON).offers_time
    assert own_view(room, "ada", marks_of_room(room), NOON).time_to_take is None


def test_in_rounds_whose_result_is_not_held_it_is_the_hosts_alone() -> None:
    open_ = replace(HOLDING, holds_results=False)
    room = open_round(by=open_)
    assert code_of(room, taking()) == "ask_host_for_time"
    assert not public_view(room, marks_of_room(room), NOON).offers_time
    held = ordered(room, HoldResults(on=True))
    assert code_of(held, taking()) is None
    assert public_view(held, marks_of_room(held), NOON).offers_time
    chosen = ordered(room, ALWAYS)
    assert own_clock(chosen, "ada") is None
    assert clock_of(ordered(chosen, HoldResults(on=True))).limit_ms == 400_000


@pytest.mark.parametrize(
    "command,code",
    [
        (replace(taking(), player="zed"), "no_such_player"),
        (replace(ALWAYS, player="zed"), "no_such_player"),
        (replace(taking(), round=2), "no_such_round"),
    ],
)
def test_strangers_and_rounds_to_come_get_none(command: Command, code: str) -> None:
    assert code_of(open_round(), command) == code
    assert code_of(ordered(open_round(), EndReview()), command) == "finished"


def test_whoever_came_late_takes_none_in_a_round_before_theirs_and_none_after_the_result() -> None:
    room = ordered(ordered(open_round(), CLOSE, at=after(30)), seat("cem"), at=after(31))
    assert code_of(room, replace(taking(), player="cem"), at=after(32)) == "no_such_round"
    assert code_of(ordered(room, ShowResult(round=1)), taking(), at=after(33)) == "too_late"


@pytest.mark.parametrize("step", ENDINGS)
def test_no_step_ends_the_time_of_a_player_unless_it_says_so(step: Ending) -> None:
    room = ordered(ordered(open_round(), taking()), CLOSE, at=after(30))
    assert code_of(room, step, at=after(79.9)) == "own_time_runs"
    assert code_of(room, step, at=after(80)) is None
    assert code_of(room, replace(step, ends_own_time=True), at=after(50)) is None
    assert code_of(ordered(room, says("ada", "B")), step, at=after(50)) is None
    assert code_of(ordered(room, RemovePlayer(player="ada")), step, at=after(50)) is None
    assert code_of(ordered(open_round(), CLOSE), step, at=after(1)) is None


def test_a_repeat_of_a_step_is_not_refused_for_time_that_it_does_not_end() -> None:
    room = ordered(ordered(open_round(), taking()), CLOSE, at=after(30))
    assert decide(room, OpenRound(round=1), after(31)) == ()


def test_results_stay_held_while_somebody_has_more_time_in_the_open_round() -> None:
    room = ordered(open_round(), taking())
    assert code_of(room, HoldResults(on=False), at=after(1)) == "held_for_own_time"
    closed = ordered(room, CLOSE, at=after(30))
    assert code_of(closed, HoldResults(on=False), at=after(31)) is None
    assert clock_of(ordered(closed, HoldResults(on=False), at=after(31))).closes_at == after(80)


def test_the_desk_sees_it_the_player_sees_it_and_nobody_else_does() -> None:
    room = ordered(open_round(ALWAYS), taking(), CLOSE, at=after(30))
    marks = marks_of_room(room)
    rows = {row.player: row for row in desk_view(room, marks, NOON).roster}
    assert (rows["ada"].takes_time, rows["bo"].takes_time) == (True, False)
    assert rows["ada"].clock is not None
    own = own_view(room, "ada", marks, NOON).time_to_take
    assert own is not None
    assert (own.always, own.taken, own.most) == (True, 1, MOST_TIMES)
    without = ordered(open_round(), CLOSE, at=after(30))
    for player in ("", "bo"):
        told, plain = (_seen(one, player, after(31)) for one in (room, without))
        assert told == plain


def _seen(room: Room, player: str, now: datetime) -> bytes:
    """What the wall sees, or a player besides."""
    marks = marks_of_room(room)
    view = own_view(room, player, marks, now) if player else public_view(room, marks, now)
    return orjson.dumps(write(view))


def test_whoever_is_forgotten_took_no_time() -> None:
    log: list[Event] = list(prepare("room-1", preparation(by=HOLDING), NOON))
    for order in (OpenDoor(door_code="CDFHJ"), seat("ada"), seat("bo"), ALWAYS, OpenRound(round=1), taking()):
        room = replay(log)
        assert room is not None
        log += decide(room, order, NOON)
    room = replay(log)
    assert room is not None
    assert clock_of(room).limit_ms == 440_000
    (forgotten,) = decide(room, ForgetPlayer(player="ada"), NOON)
    assert isinstance(forgotten, PlayerForgotten)
    live = apply(room, forgotten)
    assert own_clock(live, "ada") is None
    assert live.rounds[0].times_taken == {}
    assert replay([*redacted(log, forgotten), forgotten]) == live


@pytest.mark.parametrize("until", [45, 58, 68])
def test_an_outage_gives_the_time_to_take_it_back_and_tells_nobody_whether_somebody_had_more(
    until: float,
) -> None:
    """It lasts 10 s: time may be taken until 60 s, then until 70; what was over stays over."""
    outage, rooms = GiveBackTime(ms=10_000, order="outage 1"), []
    for taken in ([], [ALWAYS], [taking()]):
        room = ordered(ordered(open_round(), *taken), CLOSE, at=after(30))
        rooms.append(ordered(room, outage, at=after(until)))
    asked = replace(taking(), player="bo")
    for room in rooms:
        assert (code_of(room, asked, at=after(69)), code_of(room, asked, at=after(71))) == (None, "too_late")
        assert _seen(room, "bo", after(until)) == _seen(rooms[0], "bo", after(until))
        assert told_version(room) == told_version(rooms[0])
