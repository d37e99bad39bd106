"""Flags: a player says that an answer looks wrong. They gather at the host's desk; nobody else sees them."""

from collections.abc import Iterator
from datetime import datetime

from quizroom.room.change_commands import FlagItem, SettleFlags, UnflagItem
from quizroom.room.change_events import FlagsSettled, FlagTakenBack, ItemFlagged
from quizroom.room.events import Event
from quizroom.room.flag_state import Flag
from quizroom.room.handles import tidy_handle
from quizroom.room.opened import opened_round
from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round

LONGEST_FLAG = 200
"""Characters."""
MOST_TIMES = 12
"""So often a player may put up, change or take back the flag of one round, lest it fill the log."""


def decide(room: Room, command: FlagItem | UnflagItem | SettleFlags, now: datetime) -> tuple[Event, ...]:
    """The events of such an order, from the opening of the round on and after the review too."""
    current = opened_round(room, command.round)
    match command:
        case FlagItem():
            return _flag(room, current, command, now)
        case UnflagItem():
            return _take_back(room, current, command, now)
        case SettleFlags():
            waiting = any(one.settled != command.settled for one in flags_up(current))
            settled = FlagsSettled(round=current.number, settled=command.settled, by=command.by, at=now)
            return (settled,) if waiting else ()


def flags_up(current: Round) -> Iterator[Flag]:
    """The flags of a round that were not taken back, in the order in which players first put one up."""
    return (one for one in current.flags.values() if one.up)


def _flag(room: Room, current: Round, command: FlagItem, now: datetime) -> tuple[Event, ...]:
    _refuse_stranger(room, current, command.player)
    # What cannot be seen is left out, as of handles.
    text = tidy_handle(command.text)
    if len(text) > LONGEST_FLAG:
        raise Refused("words_too_long")
    known = current.flags.get(command.player)
    if known is not None and known.up and (known.text, known.asked) == (text, command.asked):
        return ()
    _refuse_too_often(known)
    flagged = ItemFlagged(player=command.player, round=current.number, text=text, asked=command.asked, at=now)
    return (flagged,)


def _take_back(room: Room, current: Round, command: UnflagItem, now: datetime) -> tuple[Event, ...]:
    _refuse_stranger(room, current, command.player)
    known = current.flags.get(command.player)
    if known is None or not known.up:
        return ()
    # It counts as a change, but is never refused: a flag can always come down.
    return (FlagTakenBack(player=command.player, round=current.number, at=now),)


def _refuse_stranger(room: Room, current: Round, player: str) -> None:
    if player not in room.players:
        raise Refused("no_such_player")
    if current.number < room.players[player].from_round:
        raise Refused("no_such_round")
    if room.run is not None:
        raise Refused("no_desk")


def _refuse_too_often(known: Flag | None) -> None:
    if known is not None and known.times >= MOST_TIMES:
        raise Refused("flagged_too_often")
