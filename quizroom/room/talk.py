"""Talking over a round and answering it again: peer instruction.

The first answers stay what they are, and alone count for marks; second answers stand beside them.
"""

from datetime import datetime, timedelta

from quizroom.room import rounds
from quizroom.room.answers import canonical, is_known
from quizroom.room.clock import deadline, is_over, limit_ms
from quizroom.room.commands import CloseRound, SubmitAnswer
from quizroom.room.events import Event
from quizroom.room.holding import is_held
from quizroom.room.opened import opened_round
from quizroom.room.own_time import takes_answer
from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round
from quizroom.room.talk_commands import LONGEST_TALK_S, AddTwin, CloseAgain, LetTalk, OpenAgain, TalkCommand
from quizroom.room.talk_events import AgainClosed, AgainOpened, TalkOpened, TwinAdded


def decide(room: Room, command: TalkCommand, now: datetime) -> tuple[Event, ...]:
    """The events of an order about talking and answering again."""
    current = opened_round(room, command.round)
    match command:
        case LetTalk():
            return _let_talk(room, current, command, now)
        case OpenAgain():
            return _open_again(room, current, command, now)
        case CloseAgain():
            return _close_again(room, current, command, now)
        case AddTwin():
            return _add_twin(room, current, command, now)


def submit_again(room: Room, command: SubmitAnswer, now: datetime) -> tuple[Event, ...]:
    """Take a player's second answer; the same again changes nothing, as with first ones."""
    asked = rounds.asked_round(room, command.player, command.round)
    said = canonical(asked.item, command.choice, command.typed)
    certainty = command.certainty if room.plan.certainty else None
    if is_known(asked.second_answers.get(command.player), said, certainty):
        return ()
    is_open = room.phase == "answering again" and asked.number == len(room.rounds)
    in_own_time = takes_answer(room, asked, command.player, now, again=True)
    if (not is_open or is_over(asked, now)) and not in_own_time:
        raise Refused("too_late")
    rounds.refuse_misplaced(room, asked, command.player, said)
    return (rounds.accepted(command, said, certainty, now, again=True),)


def may_talk(room: Room) -> bool:
    """Whether the class may now talk about the current round: its result is held, and none was had yet.

    Not where benches hand in together: they have talked already. Not without a host, who alone leads it.
    """
    return room.phase == "closed" and is_held(room) and _refusal(room, room.rounds[-1]) is None


def may_have_twin(room: Room) -> bool:
    """Whether a twin of the current round may be put next."""
    if room.phase not in ("closed", "explained"):
        return False
    current = room.rounds[-1]
    return current.again_closed_at is not None and not current.struck and not twin_is_there(room, current)


def twin_is_there(room: Room, current: Round) -> bool:
    """Whether the round has a twin that was opened or is ahead."""
    items = (*room.ahead, *(one.item for one in room.rounds))
    return any(room.twins.get(item.id) == current.number for item in items)


def order_when_over(room: Room) -> CloseRound | OpenAgain | CloseAgain | None:
    """What is to be ordered once the time of the current round's clock is over."""
    number = len(room.rounds)
    match room.phase:
        case "answering":
            return CloseRound(round=number, by_host=False)
        case "talking":
            return OpenAgain(round=number, by_host=False)
        case "answering again":
            return CloseAgain(round=number, by_host=False)
        case _:
            return None


def _let_talk(room: Room, current: Round, command: LetTalk, now: datetime) -> tuple[Event, ...]:
    if current.talked_at is not None:
        return ()
    if room.phase != "closed" or command.round != len(room.rounds):
        raise Refused("not_closed")
    refusal = _refusal(room, current)
    if refusal is not None:
        raise refusal
    if not 0 < command.seconds <= LONGEST_TALK_S:
        raise Refused("bad_time")
    until = now + timedelta(seconds=command.seconds)
    return (TalkOpened(round=command.round, at=now, closes_at=until),)


def _refusal(room: Room, current: Round) -> Refused | None:
    if room.run is not None:
        return Refused("wrong_phase")
    if room.plan.benches is not None and room.plan.benches.answers:
        return Refused("benches_talk")
    if current.talked_at is not None:
        return Refused("wrong_phase")
    return Refused("result_is_out") if current.shown_at is not None else None


def _open_again(room: Room, current: Round, command: OpenAgain, now: datetime) -> tuple[Event, ...]:
    if current.again_at is not None:
        return ()
    if room.phase != "talking" or command.round != len(room.rounds):
        raise Refused("wrong_phase")
    if not command.by_host and not is_over(current, now):
        raise Refused("too_early")
    return (
        AgainOpened(
            round=command.round,
            cause="host" if command.by_host else "time",
            at=now,
            closes_at=deadline(now, limit_ms(room.plan, current.item)),
        ),
    )


def _close_again(room: Room, current: Round, command: CloseAgain, now: datetime) -> tuple[Event, ...]:
    if current.again_closed_at is not None:
        return ()
    if room.phase != "answering again" or command.round != len(room.rounds):
        raise Refused("not_answering")
    if not command.by_host and not is_over(current, now):
        raise Refused("too_early")
    return (AgainClosed(round=command.round, cause="host" if command.by_host else "time", at=now),)


def _add_twin(room: Room, current: Round, command: AddTwin, now: datetime) -> tuple[Event, ...]:
    if twin_is_there(room, current):
        return ()
    if not may_have_twin(room) or command.round != len(room.rounds):
        raise Refused("finished" if room.phase == "finished" else "wrong_phase")
    return (TwinAdded(round=command.round, item=command.item, at=now),)
