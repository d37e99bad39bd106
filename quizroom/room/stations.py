"""Stations: benches start at different items, and move on together at the bell.

While a block runs its items are no rounds yet: nothing of them is shown or marked. Afterwards the host shows
them one by one, and each becomes a round that has been answered and closed.
"""

from datetime import datetime, timedelta

from quizroom.questions.model import Item
from quizroom.room.answers import Said, canonical, is_known, refuse_misfit
from quizroom.room.bench_commands import AnswerForBench
from quizroom.room.clock import GRACE_MS, deadline, limit_ms, milliseconds_between
from quizroom.room.commands import AddTime, GiveBackTime, PauseRound, ResumeRound, SubmitAnswer
from quizroom.room.events import Event, ReviewEnded
from quizroom.room.refusals import Refused
from quizroom.room.state import TIMED, Answer, Certainty, Plan, Room, Stations
from quizroom.room.station_commands import OpenStations, RingBell, StationCommand
from quizroom.room.station_events import (
    BellRung,
    StationAnswered,
    StationShown,
    StationsOpened,
    StationTimeAdded,
)

FEWEST_ITEMS = 2
LONGEST_TURN = timedelta(hours=1)
"""A turn may be lengthened up to this, lest a slip of the hand stops the class."""


def decide(room: Room, command: StationCommand, now: datetime) -> tuple[Event, ...]:
    """The events of an order about stations."""
    match command:
        case OpenStations():
            return _open(room, command, now)
        case RingBell():
            return _ring(room, command, now)


def are_open(room: Room) -> bool:
    """Whether benches are at the stations now."""
    return room.stations is not None and not room.stations.over


def a_clock_may_run(room: Room) -> bool:
    """Whether an outage now would cost players time."""
    return room.phase in TIMED or are_open(room)


def items_to_come(room: Room) -> tuple[Item, ...]:
    """All items that are no rounds yet: at stations, and ahead."""
    block = room.stations
    return room.ahead if block is None else (*block.items[block.shown :], *room.ahead)


def may_be_opened(room: Room) -> bool:
    """Whether the host may open stations now."""
    rules, between = room.plan.benches, ("gathering", "closed", "explained")
    if rules is None or not rules.stations or room.run is not None or room.stations is not None:
        return False
    return room.phase in between and len(room.ahead) >= FEWEST_ITEMS


def is_due(room: Room, now: datetime) -> bool:
    """Whether the time of this turn and its grace are over."""
    block = room.stations
    if block is None or block.over or block.closes_at is None:
        return False
    return now >= block.closes_at + timedelta(milliseconds=GRACE_MS)


def submit(room: Room, command: SubmitAnswer, now: datetime) -> tuple[Event, ...]:
    """Take a player's answer at a station; the same again changes nothing, even after the bell."""
    block, index = _asked(room, command.player, command.round)
    said = canonical(block.items[index], command.choice, command.typed)
    certainty = command.certainty if room.plan.certainty else None
    if is_known(block.answers[index].get(command.player), said, certainty):
        return ()
    _refuse_out_of_place(room, command.player, index, now)
    refuse_misfit(block.items[index], said)
    if room.benches.get(command.player, "") in block.bench_answers[index]:
        raise Refused("bench_has_answered")
    return (_taken(command, said, block, now, certainty=certainty),)


def submit_for_bench(room: Room, command: AnswerForBench, bench: str, now: datetime) -> tuple[Event, ...]:
    """Take what a bench hands in together at its station, after the member has answered alone."""
    block, index = _asked(room, command.player, command.round)
    said = canonical(block.items[index], command.choice, command.typed)
    if is_known(block.bench_answers[index].get(bench), said):
        return ()
    _refuse_out_of_place(room, command.player, index, now)
    refuse_misfit(block.items[index], said)
    if command.player not in block.answers[index]:
        raise Refused("first_alone")
    return (_taken(command, said, block, now, bench=bench),)


def _taken(
    command: SubmitAnswer | AnswerForBench,
    said: Said,
    block: Stations,
    now: datetime,
    *,
    bench: str = "",
    certainty: Certainty | None = None,
) -> StationAnswered:
    return StationAnswered(
        player=command.player,
        bench=bench,
        round=command.round,
        choice=said[0],
        typed=said[1],
        at=now,
        took_ms=milliseconds_between(block.turn_at, now),
        certainty=certainty,
    )


def about_clock(room: Room, command: PauseRound | ResumeRound | AddTime | GiveBackTime) -> tuple[Event, ...]:
    """Lengthen the turn; the clock of stations is never paused, since all move by it."""
    block = room.stations
    if block is None or isinstance(command, (PauseRound, ResumeRound)):
        raise Refused("not_answering")
    if command.order and command.order in block.orders:
        return ()
    if isinstance(command, GiveBackTime):
        if command.ms <= 0 or block.closes_at is None:
            return ()
        return (StationTimeAdded(ms=command.ms, cause="outage", order=command.order),)
    if block.limit_ms is None or command.seconds <= 0:
        raise Refused("bad_time")
    if timedelta(milliseconds=block.limit_ms, seconds=command.seconds) > LONGEST_TURN:
        raise Refused("bad_time")
    return (StationTimeAdded(ms=command.seconds * 1000, cause="host", order=command.order),)


def show_next(room: Room, number: int, now: datetime) -> tuple[Event, ...]:
    """Show the next item of a block that is over."""
    if number != len(room.rounds) + 1:
        raise Refused("no_such_round")
    return (StationShown(round=number, at=now),)


def end(room: Room, now: datetime) -> tuple[Event, ...]:
    """Finish a review whose stations have not all been shown; what was answered is kept and marked."""
    block = room.stations
    if block is None:
        return (ReviewEnded(at=now),)
    bell = BellRung(turn=block.turn, cause="end", over=True, at=now, closes_at=None)
    rest = range(block.first + block.shown, block.first + len(block.items))
    shown = (StationShown(round=number, at=now) for number in rest)
    return (*(() if block.over else (bell,)), *shown, ReviewEnded(at=now))


def answers_now(room: Room) -> dict[str, Answer]:
    """Who has answered the item at which they now are."""
    block = room.stations
    if block is None:
        return {}
    places = {player: block.place_of(room.benches.get(player, "")) for player in room.players}
    return {
        player: block.answers[place][player]
        for player, place in places.items()
        if player in block.answers[place]
    }


def _turn_limit_ms(plan: Plan, items: tuple[Item, ...]) -> int | None:
    """Length of a turn in ms: that of the longest item, since all move on together."""
    limits = [limit_ms(plan, item) for item in items]
    return max((limit for limit in limits if limit is not None), default=None)


def _open(room: Room, command: OpenStations, now: datetime) -> tuple[Event, ...]:
    block = room.stations
    if command.round <= len(room.rounds) or (block is not None and block.first == command.round):
        return ()
    if room.plan.benches is None or not room.plan.benches.stations or room.run is not None:
        raise Refused("no_stations")
    if not may_be_opened(room):
        raise Refused("no_items_left" if len(room.ahead) < FEWEST_ITEMS else "wrong_phase")
    if command.round != len(room.rounds) + 1:
        raise Refused("no_such_round")
    closes_at = deadline(now, _turn_limit_ms(room.plan, room.ahead))
    return (StationsOpened(round=command.round, at=now, closes_at=closes_at),)


def _ring(room: Room, command: RingBell, now: datetime) -> tuple[Event, ...]:
    block = room.stations
    if block is None or block.over or command.turn < block.turn:
        return ()
    if command.turn != block.turn:
        raise Refused("not_answering")
    if not command.by_host and not is_due(room, now):
        raise Refused("too_early")
    over = block.turn == len(block.items)
    limit = None if over else _turn_limit_ms(room.plan, block.items)
    return (
        BellRung(
            turn=block.turn,
            cause="host" if command.by_host else "time",
            over=over,
            at=now,
            closes_at=deadline(now, limit),
        ),
    )


def _asked(room: Room, player: str, number: int) -> tuple[Stations, int]:
    if player not in room.players:
        raise Refused("no_such_player")
    block = room.stations
    if block is None or not 0 <= number - block.first < len(block.items):
        raise Refused("no_such_round")
    return block, number - block.first


def _refuse_out_of_place(room: Room, player: str, index: int, now: datetime) -> None:
    """Let pass who was there from the first turn on, and is now at this item in time."""
    block = room.stations
    if block is None or room.players[player].from_round > block.first:
        raise Refused("no_such_round")
    if block.over or block.place_of(room.benches.get(player, "")) != index or is_due(room, now):
        raise Refused("too_late")
