"""Properties of every evening of a study group, whatever happens in whatever order."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from hypothesis import example, given, settings
from hypothesis import strategies as st

from quizroom.room.commands import Command, OpenDoor
from quizroom.room.events import Event, RecordShown, RoundClosed, RoundOpened
from quizroom.room.folding import replay
from quizroom.room.group import opener, present
from quizroom.room.group_commands import GoOn, ReturnToSeat, SayReady
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from tests.room.group_histories import (
    GROUP,
    Move,
    answer_of,
    bench_group_plan,
    evenings,
    gathered_group,
    group_plan,
    lived,
    moved_on,
    together,
)
from tests.room.histories import carried_out
from tests.room.samples import NOON, folded, preparation, seat

often = settings(max_examples=150, deadline=None)
plans = st.sampled_from(
    [group_plan(), group_plan(reading_s=None), group_plan(timing="untimed"), bench_group_plan()]
)


AT_ONE_BENCH = [Move("bench", 0, 1, 0.0), Move("bench", 1, 1, 0.0)]
"""Two of one bench: the first hands in for it before the second has answered."""


@often
@given(evenings(), plans)
@example(AT_ONE_BENCH, bench_group_plan())
def test_from_wherever_it_is_a_group_that_plays_on_comes_to_the_end(evening: list[Move], by: Plan) -> None:
    steps = list(lived(evening, by))
    room, now = (steps[-1].room, steps[-1].at) if steps else (gathered_group(by), NOON)
    for _ in range(200):
        if room.phase == "finished":
            return
        now += timedelta(milliseconds=100)
        room = played_on(room, now)
    raise AssertionError(f"still {room.phase} in round {len(room.rounds)}: {room.run}")


def played_on(room: Room, now: datetime) -> Room:
    """Everybody comes back, goes on, answers what is open, is ready; and the watch looks."""
    for player in room.players:
        number = len(room.rounds)
        orders: list[Command] = [ReturnToSeat(player=player), GoOn(player=player, round=number)]
        if room.phase == "answering":
            orders += [answer_of(room, player), together(room, player)]
        elif room.phase != "closed":
            orders.append(SayReady(player=player, round=number, alone=True))
        for order in orders:
            room = carried_out(room, order, now).room
    step = moved_on(room, now)
    return room if step is None else carried_out(room, step, now).room


@often
@given(evenings(), plans)
def test_no_record_is_skipped_and_none_is_shown_twice(evening: list[Move], by: Plan) -> None:
    told = [
        (type(event), getattr(event, "round", 0))
        for step in lived(evening, by)
        for event in step.events
        if isinstance(event, RoundOpened | RoundClosed | RecordShown)
    ]
    kinds = (RoundOpened, RoundClosed, RecordShown)
    assert told == [(kinds[place % 3], place // 3 + 1) for place in range(len(told))]


@often
@given(evenings(), plans)
def test_whatever_was_answered_stays_whoever_comes_and_goes(evening: list[Move], by: Plan) -> None:
    for step in lived(evening, by):
        for before, now in zip(step.before.rounds, step.room.rounds, strict=False):
            kept = {
                player: before.answers[player] for player in before.answers if player in step.room.players
            }
            assert kept.keys() <= now.answers.keys()
            changed = [player for player in kept if kept[player] != now.answers[player]]
            assert changed in ([], [getattr(step.command, "player", "")])


@often
@given(evenings(), plans)
def test_two_watches_do_what_one_does(evening: list[Move], by: Plan) -> None:
    for step in lived(evening, by):
        wish = moved_on(step.room, step.at)
        if wish is not None:
            once = carried_out(step.room, wish, step.at)
            assert once.refused is None
            assert once.events
            assert carried_out(once.room, wish, step.at + timedelta(seconds=5)).events == ()


@often
@given(evenings(), plans)
def test_a_round_closes_early_only_if_all_who_are_there_have_answered(evening: list[Move], by: Plan) -> None:
    for step in lived(evening, by):
        for event in step.events:
            if isinstance(event, RoundClosed) and event.cause == "all":
                assert present(step.before)
                current = step.before.rounds[-1]
                assert benches_of(step.before) <= current.bench_answers.keys()
                for player in set(present(step.before)) - current.answers.keys():
                    assert step.before.benches.get(player) in current.bench_answers


@often
@given(evenings(), plans)
def test_replaying_the_log_of_an_evening_gives_the_live_room(evening: list[Move], by: Plan) -> None:
    log = list(beginning(by))
    assert replay(log) == gathered_group(by)
    for step in lived(evening, by):
        log += step.events
        assert replay(log) == step.room


def beginning(by: Plan) -> Iterator[Event]:
    """The log of a group that has just come in."""
    laid_out = prepare("room-1", preparation(*gathered_group(by).ahead, by=by), NOON)
    yield from laid_out
    room = replay(laid_out)
    assert room is not None
    orders: list[Command] = [OpenDoor(door_code="CDFHJ"), *map(seat, GROUP)]
    for command in orders:
        events = decide(room, command, NOON)
        yield from events
        room = folded(room, events)


@often
@given(evenings(), plans)
def test_nobody_who_is_away_is_ready_or_opener_by_that(evening: list[Move], by: Plan) -> None:
    for step in lived(evening, by):
        run = step.room.run
        assert run is not None
        assert run.away <= step.room.players.keys()
        assert run.ready <= step.room.players.keys()
        assert opener(step.room) not in run.away
        assert run.empty_since is None or not present(step.room)


def benches_of(room: Room) -> set[str]:
    """The benches of those who are there, where benches hand in."""
    if room.plan.benches is None:
        return set()
    return {room.benches[player] for player in present(room) if player in room.benches}
