"""Time factors: the arithmetic of a player's own clock, and who may answer when."""

from dataclasses import replace
from datetime import timedelta

import orjson
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import write
from quizroom.room.bench_state import BenchRules
from quizroom.room.clock import GRACE_MS
from quizroom.room.commands import (
    AddTime,
    Command,
    EndReview,
    GiveBackTime,
    HoldResults,
    OpenDoor,
    OpenRound,
    PauseRound,
    ResumeRound,
    ShowRecord,
    ShowResult,
)
from quizroom.room.events import Event
from quizroom.room.folding import apply, replay
from quizroom.room.group_state import GroupRules
from quizroom.room.laying_out import prepare
from quizroom.room.own_time import OwnClock, may_have_own_time, own_clock, told_version
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.owner_events import PlayerForgotten
from quizroom.room.owners import redacted
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from quizroom.room.time_commands import BringTime, MakeTimeLink, SetTimeFactor
from quizroom.room.time_events import TimeFactorSet
from quizroom.room.time_state import FACTORS, FactorPercent, own_limit_ms
from quizroom.views.desk import desk_view
from quizroom.views.history import past_review
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.refusing import code_of
from tests.room.samples import CLOSE, NOON, after, answering, gathered, ordered, plan, preparation, says, seat

HOLDING = replace(plan(timing="fixed", seconds=40), holds_results=True)
TWICE = SetTimeFactor(player="ada", factor_percent=200)
ENDINGS = [
    ShowResult(round=1, ends_own_time=True),
    ShowRecord(round=1, ends_own_time=True),
    OpenRound(round=2, ends_own_time=True),
    EndReview(ends_own_time=True),
]
factors = st.sampled_from(FACTORS)


def open_round(factor: FactorPercent = 200, by: Plan = HOLDING) -> Room:
    """A round of 40 s in which Ada has this factor."""
    room = gathered(by=by)
    return ordered(room, SetTimeFactor(player="ada", factor_percent=factor), OpenRound(round=1))


def clock_of(room: Room, player: str = "ada") -> OwnClock:
    clock = own_clock(room, player)
    assert clock is not None
    return clock


def closed(room: Room, at: float = 40.75) -> Room:
    return ordered(room, replace(CLOSE, by_host=False), at=after(at))


@pytest.mark.parametrize("factor,seconds", [(100, 45), (150, 68), (200, 90)])
def test_the_lengths_are_those_of_the_published_example(factor: FactorPercent, seconds: int) -> None:
    # Trade handbook 5.3: a 25-word item with four options, 45 s, "68, 90 with multipliers".
    assert own_limit_ms(45_000, factor) == seconds * 1000


@given(st.integers(1, 7200), factors)
def test_a_length_is_whole_seconds_never_short_of_the_factor_and_less_than_one_above(
    seconds: int, factor: FactorPercent
) -> None:
    own = own_limit_ms(seconds * 1000, factor)
    assert own % 1000 == 0
    assert 0 <= own - seconds * 10 * factor < 1000


def test_only_whoever_has_a_factor_has_a_clock_of_their_own() -> None:
    room = open_round()
    assert clock_of(room) == OwnClock(limit_ms=80_000, closes_at=after(80), left_ms=None, paused=False)
    assert own_clock(room, "bo") is None
    assert own_clock(room, "nobody") is None
    assert own_clock(open_round(100), "ada") is None


@pytest.mark.parametrize("factor,last", [(150, 60), (200, 80)])
def test_the_round_closes_for_all_and_stays_open_for_one(factor: FactorPercent, last: int) -> None:
    room = closed(open_round(factor))
    assert room.phase == "closed"
    assert code_of(room, says("bo", "A"), at=after(40.8)) == "too_late"
    in_time = after(last) + timedelta(milliseconds=GRACE_MS - 1)
    answered = ordered(room, says("ada", "B"), at=in_time)
    assert answered.rounds[0].answers["ada"].at == in_time
    assert code_of(room, says("ada", "B"), at=after(last + GRACE_MS / 1000)) == "too_late"
    shown = ordered(answered, ShowResult(round=1))
    assert marks_of_room(shown).totals["ada"].marks == 1.0


def test_an_answer_between_deadline_and_alarm_is_taken_by_the_own_clock() -> None:
    room = open_round()
    assert code_of(room, says("bo", "B"), at=after(41)) == "too_late"
    assert ordered(room, says("ada", "B"), at=after(41)).rounds[0].answers.keys() == {"ada"}


@pytest.mark.parametrize("ends", ENDINGS)
def test_showing_going_on_or_ending_ends_it(ends: Command) -> None:
    room = ordered(closed(open_round()), ends, at=after(50))
    assert not may_have_own_time(room)
    assert code_of(room, says("ada", "B"), at=after(51)) == "too_late"
    assert own_clock(room, "bo") is None


def answering_again(at: float = 100) -> Room:
    """Ada has a factor; the first answers are in, neighbours have talked, second answers are taken."""
    room = ordered(open_round(), says("ada", "A"), CLOSE, LetTalk(round=1, seconds=60))
    return ordered(room, OpenAgain(round=1, by_host=True), at=after(at))


def test_talking_ends_it_and_second_answers_have_their_own() -> None:
    talking = ordered(closed(open_round()), LetTalk(round=1, seconds=60, ends_own_time=True), at=after(50))
    assert own_clock(talking, "ada") is None
    assert code_of(talking, says("ada", "B"), at=after(51)) == "too_late"
    room = answering_again()
    assert clock_of(room).closes_at == after(180)
    room = ordered(room, CloseAgain(round=1, by_host=False), at=after(140.75))
    second = replace(says("ada", "B"), again=True)
    assert code_of(room, replace(second, player="bo"), at=after(141)) == "too_late"
    assert code_of(room, says("ada", "C"), at=after(141)) == "too_late"  # first answers stay what they were
    answered = ordered(room, second, at=after(180.7))
    assert answered.rounds[0].second_answers["ada"].choice == ("B",)
    assert answered.rounds[0].answers["ada"].choice == ("A",)
    assert code_of(room, second, at=after(180.75)) == "too_late"


def test_a_second_clock_that_stood_at_the_closing_runs_on_from_there() -> None:
    room = ordered(answering_again(), PauseRound(round=1), at=after(130))
    room = ordered(room, CloseAgain(round=1, by_host=True), at=after(200))
    assert clock_of(room).closes_at == after(250)


def test_a_host_who_closes_early_takes_nothing_from_them() -> None:
    room = ordered(open_round(), CLOSE, at=after(10))
    assert clock_of(room).closes_at == after(80)


def test_a_clock_that_stood_at_the_closing_runs_on_from_there() -> None:
    room = ordered(open_round(), PauseRound(round=1), at=after(30))
    assert clock_of(room) == OwnClock(limit_ms=80_000, closes_at=None, left_ms=50_000, paused=True)
    assert ordered(room, says("ada", "B"), at=after(500)).rounds[0].answers.keys() == {"ada"}
    assert clock_of(ordered(room, CLOSE, at=after(100))).closes_at == after(150)


@given(st.lists(st.tuples(st.sampled_from("padw"), st.integers(1, 30)), max_size=8), factors)
@settings(max_examples=50, deadline=None)
def test_pauses_added_time_and_outages_move_the_own_deadline_as_they_move_the_common_one(
    steps: list[tuple[str, int]], factor: FactorPercent
) -> None:
    """Whatever happens, the own clock is the common one and the extra of the round's whole length."""
    room, now = open_round(factor), NOON
    for number, (step, seconds) in enumerate(steps):
        match step:
            case "p":
                room = ordered(room, PauseRound(round=1), at=now)
                now += timedelta(seconds=seconds)
                room = ordered(room, ResumeRound(round=1), at=now)
            case "a":
                room = ordered(room, AddTime(seconds=seconds, order=f"m{number}"), at=now)
            case "d":
                room = ordered(room, GiveBackTime(ms=seconds * 1000), at=now)
            case _:
                now += timedelta(milliseconds=seconds)
    current = room.rounds[0]
    assert current.limit_ms is not None
    assert current.closes_at is not None
    clock = own_clock(room, "ada")
    if factor == 100:
        assert clock is None
    else:
        assert clock is not None
        assert clock.limit_ms == own_limit_ms(current.limit_ms, factor)
        extra = timedelta(milliseconds=clock.limit_ms - current.limit_ms)
        assert clock.closes_at == current.closes_at + extra


@pytest.mark.parametrize("lost,until,ends", [(5000, 60, 85), (5000, 84, 85), (5000, 86, None), (0, 60, None)])
def test_an_outage_after_the_closing_gives_back_what_it_took(
    lost: int, until: float, ends: int | None
) -> None:
    room = closed(open_round(by=replace(HOLDING, players_take_time=False)))
    outage = GiveBackTime(ms=lost, order="outage 1")
    events = decide(room, outage, after(until))
    assert bool(events) == (ends is not None)
    back = ordered(room, outage, at=after(until))
    assert clock_of(back).closes_at == after(ends or 80)
    assert decide(back, outage, after(until)) == () if ends else True
    assert told_version(back) == told_version(room)


def test_a_factor_given_in_the_round_or_after_it_counts_at_once_and_can_be_taken_back() -> None:
    room = closed(answering(by=HOLDING))
    assert code_of(room, says("ada", "B"), at=after(50)) == "too_late"
    given_ = ordered(room, TWICE, at=after(50))
    assert clock_of(given_).closes_at == after(80)
    taken = ordered(given_, replace(TWICE, factor_percent=100), at=after(51))
    assert code_of(taken, says("ada", "B"), at=after(52)) == "too_late"
    assert decide(given_, TWICE, after(50)) == ()


def test_who_comes_late_has_the_same_own_deadline_and_none_in_a_round_before_theirs() -> None:
    room = ordered(open_round(), seat("cem"), at=after(20))
    twice = replace(TWICE, player="cem")
    assert clock_of(ordered(room, twice), "cem").closes_at == after(80)
    late = ordered(closed(open_round()), seat("cem"), twice, at=after(45))
    assert own_clock(late, "cem") is None
    assert code_of(late, replace(says("cem", "B")), at=after(46)) == "too_late"


def test_without_held_results_nobody_can_be_given_more_time() -> None:
    room = answering(by=replace(HOLDING, holds_results=False))
    for order in (TWICE, MakeTimeLink(link="x", factor_percent=150)):
        assert code_of(room, order) == "hold_results_first"
        assert code_of(ordered(room, HoldResults(on=True)), order) is None
    held = ordered(room, HoldResults(on=True), TWICE)
    assert code_of(held, HoldResults(on=False)) == "held_for_own_time"  # it would take Ada's time from her
    off = ordered(held, says("ada", "B"), HoldResults(on=False))
    assert own_clock(off, "ada") is None
    assert ordered(off, replace(TWICE, factor_percent=100)).players["ada"].factor_percent == 100


@pytest.mark.parametrize(
    "by",
    [
        replace(HOLDING, timing="untimed"),
        replace(HOLDING, benches=BenchRules(how="choice", answers=True)),
        replace(HOLDING, group=GroupRules(reading_s=60, hours=3)),
    ],
)
def test_there_are_reviews_in_which_no_factor_can_mean_anything(by: Plan) -> None:
    assert code_of(gathered(by=by), TWICE) == "no_own_time"
    assert code_of(gathered(by=by), MakeTimeLink(link="x", factor_percent=150)) == "no_own_time"


def test_benches_that_do_not_hand_in_together_change_nothing() -> None:
    by = replace(HOLDING, benches=BenchRules(how="choice", answers=False))
    assert clock_of(open_round(by=by)).closes_at == after(80)


def test_a_private_link_serves_one_seat_and_nobody_can_invent_one() -> None:
    room = ordered(gathered(by=HOLDING), MakeTimeLink(link="hash", factor_percent=150))
    bring = BringTime(player="ada", link="hash")
    assert code_of(room, replace(bring, link="guessed")) == "bad_time_link"
    brought = ordered(room, bring)
    assert brought.players["ada"].factor_percent == 150
    assert decide(brought, bring, NOON) == ()
    assert code_of(brought, replace(bring, player="bo")) == "bad_time_link"
    back = ordered(brought, SetTimeFactor(player="ada", factor_percent=100))
    assert ordered(back, bring).players["ada"].factor_percent == 100  # what the host took stays taken
    assert decide(room, MakeTimeLink(link="hash", factor_percent=200), NOON) == ()


def test_a_link_counts_again_as_soon_as_results_are_held() -> None:
    room = ordered(gathered(by=HOLDING), MakeTimeLink(link="hash", factor_percent=150))
    room = ordered(room, HoldResults(on=False), BringTime(player="ada", link="hash"), OpenRound(round=1))
    assert own_clock(room, "ada") is None
    assert clock_of(ordered(room, HoldResults(on=True))).closes_at == after(60)


@pytest.mark.parametrize("order", [TWICE, BringTime(player="ada", link="x")])
def test_a_finished_review_and_strangers_get_none(order: SetTimeFactor | BringTime) -> None:
    assert code_of(ordered(gathered(by=HOLDING), EndReview()), order) == "finished"
    assert code_of(gathered(by=HOLDING), replace(order, player="zed")) == "no_such_player"


def test_whoever_is_forgotten_had_no_factor_and_came_with_no_link() -> None:
    log = [*log_of(MakeTimeLink(link="hash", factor_percent=150), BringTime(player="ada", link="hash"))]
    room = replay(log)
    assert room is not None
    assert room.players["ada"].factor_percent == 150
    (forgotten,) = decide(room, ForgetPlayer(player="ada"), NOON)
    assert isinstance(forgotten, PlayerForgotten)
    past = redacted(log, forgotten)
    assert [one.factor_percent for one in past if isinstance(one, TimeFactorSet)] == [100]
    assert "hash" not in [one.link for one in past if isinstance(one, TimeFactorSet)]
    live = apply(room, forgotten)
    assert live.players["ada"].factor_percent == 100
    assert replay([*past, forgotten]) == live


def log_of(*orders: Command) -> list[Event]:
    """The log of a room with its door open and two players, and of these orders."""
    events: list[Event] = list(prepare("room-1", preparation(by=HOLDING), NOON))
    for order in (OpenDoor(door_code="CDFHJ"), seat("ada"), seat("bo"), *orders):
        room = replay(events)
        assert room is not None
        events += decide(room, order, NOON)
    return events


def test_the_own_export_names_the_factor_and_no_view_of_another_does() -> None:
    room = closed(open_round(150))
    past, others = past_review(room, "ada"), past_review(room, "bo")
    assert past is not None
    assert others is not None
    assert (past.time_factor, others.time_factor) == (1.5, 1.0)
    marks = marks_of_room(room)
    row = next(row for row in desk_view(room, marks, NOON).roster if row.player == "ada")
    assert (row.factor_percent, row.clock) == (150, own_view(room, "ada", marks, NOON).clock)
    for view in (public_view(room, marks, NOON), own_view(room, "bo", marks, NOON)):
        assert b"150" not in orjson.dumps(write(view))
