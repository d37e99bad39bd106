"""Orders about rounds: open, answer, pause, lengthen, close, explain, strike, end."""

from datetime import datetime, timedelta

from quizroom.knowledge.terms import normalise
from quizroom.room import stations
from quizroom.room.answers import Said, canonical, is_known, refuse_misfit
from quizroom.room.clock import deadline, is_over, limit_ms, milliseconds_between
from quizroom.room.commands import (
    AddTime,
    CloseRound,
    GiveBackTime,
    OpenRound,
    PauseRound,
    RestoreItem,
    ResumeRound,
    RuleOnWords,
    ShowRecord,
    StrikeItem,
    SubmitAnswer,
)
from quizroom.room.events import (
    AnswerAccepted,
    Event,
    ItemRestored,
    ItemStruck,
    RecordShown,
    ReviewEnded,
    RoundClosed,
    RoundOpened,
    RoundPaused,
    RoundResumed,
    TimeAdded,
    WordsRuled,
)
from quizroom.room.opened import opened_round
from quizroom.room.own_time import takes_answer
from quizroom.room.refusals import Refused
from quizroom.room.state import TIMED, Certainty, Phase, Room, Round
from quizroom.room.talk_events import AgainClosed
from quizroom.room.time_factors import give_back_own_time

LONGEST_LIMIT = timedelta(hours=2)
"""An open round with a clock may be lengthened up to this, lest a slip of the hand stops the class."""


def submit_answer(room: Room, command: SubmitAnswer, now: datetime) -> tuple[Event, ...]:
    """Take a player's answer for the open round, or at a station; the same answer again changes nothing.

    Even after closing: whoever missed the acknowledgement must not be told that the answer came too late.
    """
    if room.stations is not None and command.round > len(room.rounds):
        return stations.submit(room, command, now)
    asked = asked_round(room, command.player, command.round)
    said = canonical(asked.item, command.choice, command.typed)
    certainty = command.certainty if room.plan.certainty else None
    if is_known(asked.answers.get(command.player), said, certainty):
        return ()
    refuse_unfit(room, asked, command.player, said, now)
    if room.benches.get(command.player, "") in asked.bench_answers:
        raise Refused("bench_has_answered")
    return (accepted(command, said, certainty, now),)


def accepted(
    command: SubmitAnswer, said: Said, certainty: Certainty | None, now: datetime, *, again: bool = False
) -> AnswerAccepted:
    """That this has been taken, as a first answer or as one `again`."""
    choice, typed = said
    return AnswerAccepted(
        player=command.player,
        round=command.round,
        choice=choice,
        typed=typed,
        at=now,
        certainty=certainty,
        again=again,
    )


def asked_round(room: Room, player: str, number: int) -> Round:
    """The round that a player of this room answers."""
    if player not in room.players:
        raise Refused("no_such_player")
    return opened_round(room, number)


def refuse_unfit(room: Room, asked: Round, player: str, said: Said, now: datetime) -> None:
    """Let an answer pass that comes in time, from a player of the round, and fits its item."""
    _refuse_late(room, asked, player, now)
    refuse_misplaced(room, asked, player, said)


def refuse_misplaced(room: Room, asked: Round, player: str, said: Said) -> None:
    """Let an answer pass that comes from a player of the round and fits its item."""
    if asked.number < room.players[player].from_round:
        raise Refused("no_such_round")
    refuse_misfit(asked.item, said)


def open_next(room: Room, command: OpenRound, now: datetime) -> tuple[Event, ...]:
    """Open the next round, if the one before it has been closed."""
    if command.round <= len(room.rounds):
        return ()
    if room.phase in ("preparing", "finished"):
        raise Refused("door_shut" if room.phase == "preparing" else "finished")
    if room.phase in TIMED or stations.are_open(room):
        raise Refused("round_is_open")
    if room.stations is not None:
        return stations.show_next(room, command.round, now)
    if not room.ahead:
        raise Refused("no_items_left")
    if command.round != len(room.rounds) + 1:
        raise Refused("no_such_round")
    closes_at = deadline(now, limit_ms(room.plan, room.ahead[0]))
    return (RoundOpened(round=command.round, at=now, closes_at=closes_at),)


def pause(room: Room, command: PauseRound, now: datetime) -> tuple[Event, ...]:
    """Stop the clock of the open round, or of the talk over it."""
    current = _timed_round(room, command.round)
    if current.paused:
        return ()
    left = None if current.closes_at is None else milliseconds_between(now, current.closes_at)
    return (RoundPaused(left_ms=left, at=now),)


def resume(room: Room, command: ResumeRound, now: datetime) -> tuple[Event, ...]:
    """Let the clock of the paused round run on."""
    current = _timed_round(room, command.round)
    if not current.paused:
        return ()
    return (RoundResumed(closes_at=deadline(now, current.left_ms), at=now),)


def add_time(room: Room, command: AddTime) -> tuple[Event, ...]:
    """Lengthen the open round, or the talk over it; an untimed one has nothing to lengthen."""
    if any(command.order in each.orders for each in room.rounds):
        return ()
    current = _timed_round(room, len(room.rounds))
    if current.limit_ms is None:
        raise Refused("bad_time")
    longer = timedelta(milliseconds=current.limit_ms, seconds=command.seconds)
    if command.seconds <= 0 or longer > LONGEST_LIMIT:
        raise Refused("bad_time")
    return (TimeAdded(ms=command.seconds * 1000, cause="host", order=command.order),)


def give_back(room: Room, command: GiveBackTime, now: datetime) -> tuple[Event, ...]:
    """Return to a running clock the time that players lost while no server was there."""
    if room.phase not in TIMED or command.ms <= 0:
        return give_back_own_time(room, command.ms, command.order, now)
    current = room.rounds[-1]
    if current.paused or current.closes_at is None or (command.order and command.order in current.orders):
        return ()
    return (TimeAdded(ms=command.ms, cause="outage", order=command.order),)


def close(room: Room, command: CloseRound, now: datetime) -> tuple[Event, ...]:
    """End answering. The alarm may do so only once the deadline and its grace are over."""
    if command.round < len(room.rounds) or (room.rounds and room.rounds[-1].closed_at is not None):
        return ()
    current = _open_round(room, command.round)
    if not command.by_host and not is_over(current, now):
        raise Refused("too_early")
    return (RoundClosed(round=current.number, cause="host" if command.by_host else "time", at=now),)


def show_record(room: Room, command: ShowRecord, now: datetime) -> tuple[Event, ...]:
    """Show the record of the closed round."""
    if opened_round(room, command.round).explained_at is not None:
        return ()
    if room.phase != "closed" or command.round != len(room.rounds):
        raise Refused("not_closed")
    return (RecordShown(round=command.round, at=now),)


def strike(room: Room, command: StrikeItem, now: datetime) -> tuple[Event, ...]:
    """Take an opened item out of all marks, during the round or any time after."""
    if opened_round(room, command.round).struck:
        return ()
    return (ItemStruck(round=command.round, at=now, by=command.by),)


def restore(room: Room, command: RestoreItem, now: datetime) -> tuple[Event, ...]:
    """Let a struck item count again."""
    if not opened_round(room, command.round).struck:
        return ()
    return (ItemRestored(round=command.round, at=now, by=command.by),)


def rule_on_words(room: Room, command: RuleOnWords, now: datetime) -> tuple[Event, ...]:
    """Accept or refuse typed words for all players, during the round or any time after."""
    current, words = opened_round(room, command.round), normalise(command.words)
    if current.item.key or not words:
        raise Refused("bad_choice")
    if current.rulings.get(words) == command.accept:
        return ()
    return (WordsRuled(round=command.round, words=words, accept=command.accept, at=now, by=command.by),)


def end(room: Room, now: datetime) -> tuple[Event, ...]:
    """Finish the review; answers of an open round are kept and marked."""
    if room.phase == "finished":
        return ()
    if room.stations is not None:
        return stations.end(room, now)
    ended = ReviewEnded(at=now)
    if room.phase == "answering":
        return (RoundClosed(round=len(room.rounds), cause="end", at=now), ended)
    if room.phase == "answering again":
        return (AgainClosed(round=len(room.rounds), cause="end", at=now), ended)
    return (ended,)


def _refuse_late(room: Room, asked: Round, player: str, now: datetime) -> None:
    is_open = room.phase == "answering" and asked.number == len(room.rounds)
    # The server's time of receipt counts; the grace is for the way over the network.
    if (not is_open or is_over(asked, now)) and not takes_answer(room, asked, player, now, again=False):
        raise Refused("too_late")


def _open_round(room: Room, number: int) -> Round:
    return _round_in(room, ("answering",), number)


def _timed_round(room: Room, number: int) -> Round:
    return _round_in(room, TIMED, number)


def _round_in(room: Room, phases: tuple[Phase, ...], number: int) -> Round:
    if room.phase not in phases or number != len(room.rounds):
        raise Refused("not_answering")
    return room.rounds[-1]
