"""Reviews without a host: what is due, and what players may order.

Nobody leads. Whoever watches the room asks `due_step` and orders just that; the room itself
decides anew whether it is due, so that it does not matter how many watch.
"""

from datetime import datetime, timedelta

from quizroom.room import rounds, seating
from quizroom.room.clock import is_over
from quizroom.room.commands import OpenRound, PauseRound, RemovePlayer, RenamePlayer, ResumeRound, ShowRecord
from quizroom.room.events import Event, RecordShown, RoundClosed
from quizroom.room.group_commands import (
    AskPause,
    GoOn,
    GroupCommand,
    LeaveSeat,
    MoveOn,
    RenameSelf,
    ReturnToSeat,
    SayReady,
    SendOut,
    Step,
)
from quizroom.room.group_events import PauseAsked, PauseEnded, PlayerLeft, PlayerReady, PlayerReturned
from quizroom.room.group_state import LEAST_GROUP, GroupRun
from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round

ABANDONED_AFTER = timedelta(minutes=10)
"""A room in which nobody has been for so long ends by itself."""


def decide(room: Room, command: GroupCommand, now: datetime) -> tuple[Event, ...]:
    """The events of an order to a review without a host."""
    if isinstance(command, MoveOn):
        return move_on(room, command, now)
    run = room.run
    if run is None:
        raise Refused("led_by_host")
    if command.player not in room.players:
        raise Refused("no_such_player")
    match command:
        case SayReady():
            return _say_ready(room, run, command, now)
        case AskPause():
            return _ask_pause(room, run, command, now)
        case GoOn():
            return _go_on(room, run, command, now)
        case LeaveSeat():
            gone = command.player in run.away or room.phase == "finished"
            return () if gone else (PlayerLeft(player=command.player, at=now),)
        case ReturnToSeat():
            away = command.player in run.away and room.phase != "finished"
            return (PlayerReturned(player=command.player, at=now),) if away else ()
        case RenameSelf():
            return seating.rename(room, RenamePlayer(player=command.player, handle=command.handle))
        case SendOut():
            return _send_out(room, command, now)


def due_step(room: Room, now: datetime) -> Step | None:
    """What the room does next by itself, if its time has come."""
    run = room.run
    if run is None or room.phase == "finished":
        return None
    if _is_given_up(room, run, now):
        return "end_review"
    if room.phase == "closed":
        return "show_record"
    if run.paused or not present(room):
        return "close_round" if _time_is_over(room, now) else None
    if room.phase == "answering":
        return "close_round" if _time_is_over(room, now) or not waited_for(room) else None
    if room.phase == "preparing" or not _is_ready(room, run, now):
        return None
    return "open_round" if room.ahead else "end_review"


def move_on(room: Room, command: MoveOn, now: datetime) -> tuple[Event, ...]:
    """Take the step if it is due."""
    if command.round != len(room.rounds) or due_step(room, now) != command.step:
        return ()
    match command.step:
        case "open_round":
            return rounds.open_next(room, OpenRound(round=command.round + 1), now)
        case "close_round":
            closed = RoundClosed(
                round=command.round, cause="time" if _time_is_over(room, now) else "all", at=now
            )
            # Nobody talks between the two, so pages need not show the key by itself.
            return (closed, RecordShown(round=command.round, at=now))
        case "show_record":
            return rounds.show_record(room, ShowRecord(round=command.round), now)
        case "end_review":
            return rounds.end(room, now)


def present(room: Room) -> tuple[str, ...]:
    """The players who are there, in the order in which they came."""
    away = frozenset[str]() if room.run is None else room.run.away
    return tuple(player for player in room.players if player not in away)


def opener(room: Room) -> str:
    """Who may send others out: whoever has been there longest, and so the one who opened the room."""
    return next(iter(present(room)), "")


def waited_for(room: Room) -> tuple[str, ...]:
    """The players who are there and whose answer, or whose being ready, the room waits for."""
    ready = frozenset[str]() if room.run is None else room.run.ready
    if room.phase != "answering":
        return tuple(player for player in present(room) if player not in ready)
    return tuple(player for player in present(room) if _lacks_answer(room, room.rounds[-1], player))


def _lacks_answer(room: Room, current: Round, player: str) -> bool:
    rules, bench = room.plan.benches, room.benches.get(player)
    if bench in current.bench_answers:
        # The bench's answer shuts out its members' own, so a round without a clock would wait for ever.
        return False
    hands_in = rules is not None and rules.answers and bench is not None
    return hands_in or player not in current.answers


def _is_ready(room: Room, run: GroupRun, now: datetime) -> bool:
    if room.phase == "explained" and run.reading_until is not None and now >= run.reading_until:
        return True
    enough = room.phase != "gathering" or run.alone or len(present(room)) >= LEAST_GROUP
    return enough and not waited_for(room)


def _time_is_over(room: Room, now: datetime) -> bool:
    return room.phase == "answering" and is_over(room.rounds[-1], now)


def _is_given_up(room: Room, run: GroupRun, now: datetime) -> bool:
    if run.empty_since is not None and now - run.empty_since >= ABANDONED_AFTER:
        return True
    rules, since = room.plan.group, room.prepared_at
    return rules is not None and since is not None and now - since >= timedelta(hours=rules.hours)


def _say_ready(room: Room, run: GroupRun, command: SayReady, now: datetime) -> tuple[Event, ...]:
    if command.round < len(room.rounds) or room.phase == "finished":
        return ()
    if command.round != len(room.rounds) or room.phase not in ("gathering", "explained"):
        raise Refused("wrong_phase")
    if command.player in run.ready and (run.alone or not command.alone):
        return ()
    ready = PlayerReady(player=command.player, round=command.round, alone=command.alone, at=now)
    return (ready,)


def _ask_pause(room: Room, run: GroupRun, command: AskPause, now: datetime) -> tuple[Event, ...]:
    if command.round < len(room.rounds) or run.paused or room.phase == "finished":
        return ()
    if command.round != len(room.rounds) or room.phase not in ("answering", "explained"):
        raise Refused("wrong_phase")
    asked = PauseAsked(player=command.player, at=now)
    if room.phase == "explained":
        return (asked,)
    return (asked, *rounds.pause(room, PauseRound(round=command.round), now))


def _go_on(room: Room, run: GroupRun, command: GoOn, now: datetime) -> tuple[Event, ...]:
    if command.round != len(room.rounds) or not run.paused or room.phase == "finished":
        return ()
    ended = PauseEnded(player=command.player, at=now)
    if room.phase == "explained":
        return (ended,)
    return (ended, *rounds.resume(room, ResumeRound(round=command.round), now))


def _send_out(room: Room, command: SendOut, now: datetime) -> tuple[Event, ...]:
    if command.by != opener(room) or command.by == command.player:
        raise Refused("not_opener")
    return seating.remove(room, RemovePlayer(player=command.player), now)
