"""Who sits at which bench."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from math import ceil
from random import Random

from quizroom.room import rounds, stations
from quizroom.room.answers import canonical, is_known
from quizroom.room.bench_commands import (
    AnswerForBench,
    BenchCommand,
    DrawBenches,
    RenameBench,
    SeatAtBench,
    TakeBench,
)
from quizroom.room.bench_events import BenchAnswered, BenchesDrawn, BenchSeat, BenchTaken
from quizroom.room.bench_renaming import rename
from quizroom.room.bench_state import LEAST_AT_A_BENCH, LONGEST_BENCH, MOST_AT_A_BENCH, BenchRules
from quizroom.room.events import Event, RoundOpened, SeatEntered
from quizroom.room.group import opener, present
from quizroom.room.handles import same_handle, tidy_handle
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.station_events import StationsOpened


def decide(room: Room, command: BenchCommand, now: datetime) -> tuple[Event, ...]:
    """The events of an order about benches."""
    rules = room.plan.benches
    if rules is None:
        raise Refused("no_benches")
    if room.phase == "finished":
        raise Refused("finished")
    match command:
        case TakeBench():
            if rules.how == "drawn":
                raise Refused("benches_drawn")
            return _seated(room, command.player, command.bench)
        case SeatAtBench():
            seated = _seated(room, command.player, command.bench)
            return tuple(replace(event, by=command.by, at=now) for event in seated)
        case RenameBench():
            return rename(room, command, now)
        case DrawBenches():
            return _drawn(room, rules, command, now)
        case AnswerForBench():
            return _answered(room, rules, command, now)


def with_drawn_benches(room: Room, events: tuple[Event, ...]) -> tuple[Event, ...]:
    """The events with what benches follow from them.

    Where benches are drawn they are drawn when the first round opens, unless that has been done, and who
    comes later sits where there are fewest.
    """
    rules = room.plan.benches
    if rules is None or rules.how != "drawn":
        return events
    if any(isinstance(event, (RoundOpened, StationsOpened)) for event in events) and not room.benches:
        by_plan = DrawBenches(seed=room.plan.seed, by=opener_or_host(room))
        return (*_drawn(room, rules, by_plan, None), *events)
    entered = [event.player for event in events if isinstance(event, SeatEntered)]
    if entered and room.benches:
        return (*events, *(BenchTaken(player=player, bench=_smallest(room)) for player in entered))
    return events


def opener_or_host(room: Room) -> str:
    """Who may draw benches: the opener of a group; empty for the host, who has no seat."""
    return "" if room.run is None else opener(room)


def names(room: Room) -> tuple[str, ...]:
    """The names of all benches at which somebody sits, in the order in which they were founded."""
    return tuple(dict.fromkeys(room.benches.values()))


def members(room: Room, bench: str) -> tuple[str, ...]:
    """Who sits at a bench."""
    return tuple(player for player in room.players if room.benches.get(player) == bench)


def how_many(players: int, size: int) -> int:
    """How many benches for so many players: near the size wished, none above six, none below three.

    Where these cannot all hold (five at sizes of three) no bench is above six.
    """
    least = ceil(players / MOST_AT_A_BENCH)
    most = max(least, players // LEAST_AT_A_BENCH)
    return max(1, min(most, max(least, round(players / size))))


def drawn(players: Iterable[str], *, size: int, seed: int) -> tuple[BenchSeat, ...]:
    """Benches whose sizes differ by one at most."""
    order = sorted(players)
    Random(seed).shuffle(order)  # noqa: S311 - a draw among friends, no secret
    count = how_many(len(order), size)
    return tuple(
        BenchSeat(player=player, bench=f"Bench {place % count + 1}") for place, player in enumerate(order)
    )


def _answered(room: Room, rules: BenchRules, command: AnswerForBench, now: datetime) -> tuple[Event, ...]:
    bench = room.benches.get(command.player, "")
    if not rules.answers or not bench:
        raise Refused("no_benches")
    if room.stations is not None and command.round > len(room.rounds):
        return stations.submit_for_bench(room, command, bench, now)
    asked = rounds.asked_round(room, command.player, command.round)
    choice, typed = said = canonical(asked.item, command.choice, command.typed)
    if is_known(asked.bench_answers.get(bench), said):
        return ()
    rounds.refuse_unfit(room, asked, command.player, said, now)
    if command.player not in asked.answers:
        raise Refused("first_alone")
    return (
        BenchAnswered(
            bench=bench, player=command.player, round=command.round, choice=choice, typed=typed, at=now
        ),
    )


def _seated(room: Room, player: str, wish: str) -> tuple[BenchTaken, ...]:
    if player not in room.players:
        raise Refused("no_such_player")
    bench = _name(room, wish)
    if room.benches.get(player, "") == bench:
        return ()
    return (BenchTaken(player=player, bench=bench),)


def _name(room: Room, wish: str) -> str:
    # Whoever writes the name in another case means the bench that is there.
    tidy = tidy_handle(wish)
    known = next((bench for bench in names(room) if same_handle(bench, tidy)), tidy)
    if len(known) > LONGEST_BENCH or (known and not any(c.isalnum() for c in known)):
        raise Refused("bad_bench")
    return known


def _drawn(room: Room, rules: BenchRules, command: DrawBenches, now: datetime | None) -> tuple[Event, ...]:
    if command.by != opener_or_host(room):
        raise Refused("not_opener")
    seats = drawn(present(room), size=rules.size, seed=command.seed)
    if {seat.player: seat.bench for seat in seats} == dict(room.benches):
        return ()
    return (BenchesDrawn(seats=seats, by=command.host, at=now),)


def _smallest(room: Room) -> str:
    return min(names(room), key=lambda bench: len(members(room, bench)))
