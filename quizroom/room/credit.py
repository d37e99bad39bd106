"""Who players are on a class roster: one seat an entry, few tries, and the host has the last word."""

from dataclasses import replace
from datetime import datetime

from quizroom.room.credit_commands import AssignEntry, ClaimEntry, CreditCommand, MissClaim, SetRoster
from quizroom.room.credit_events import ClaimMissed, CreditEvent, EntryAssigned, EntryClaimed, RosterSet
from quizroom.room.refusals import Refused
from quizroom.room.state import Room

MOST_MISSED_CLAIMS = 5
"""A slip of the thumb or two is forgiven; ids cannot be found out by trying (the project's own choice)."""


def decide(room: Room, command: CreditCommand, now: datetime) -> tuple[CreditEvent, ...]:
    """The events of such an order; claims are taken in every phase, after the review too."""
    if isinstance(command, SetRoster):
        return _set_roster(room, command, now)
    if not room.plan.roster:
        raise Refused("not_for_credit")
    player = room.players.get(command.player)
    if player is None or not player.key_hash:  # a former player has asked to be nobody
        raise Refused("no_such_player")
    match command:
        case ClaimEntry():
            return _claim(room, command, now)
        case MissClaim():
            return _miss(room, command, now)
        case AssignEntry():
            return _assign(room, command, now)


def may_choose_roster(room: Room) -> bool:
    """Whether it is still open if the review is for credit: a host leads it, and no round has been opened."""
    return room.phase in ("preparing", "gathering") and room.plan.group is None


def tries_left(room: Room, player: str) -> int:
    """How often a player may still try ids."""
    return max(0, MOST_MISSED_CLAIMS - len(room.missed_claims.get(player, ())))


def holder_of(room: Room, entry: str) -> str | None:
    """The player who has claimed an entry, if anybody has."""
    return next((player for player, claimed in room.claims.items() if claimed == entry), None)


def after(room: Room, event: CreditEvent) -> Room:
    """The room with what is now known of its players."""
    match event:
        case EntryClaimed() | EntryAssigned():
            free = without_player(room, event.player)
            return replace(free, claims=_with(free, event.player, event.entry)) if event.entry else free
        case ClaimMissed():
            missed = (*room.missed_claims.get(event.player, ()), event.order)
            return replace(room, missed_claims={**room.missed_claims, event.player: missed})
        case RosterSet():
            plan = replace(room.plan, roster=event.roster)
            return replace(room, plan=plan, claims={}, missed_claims={})


def without_player(room: Room, player: str) -> Room:
    """The room in which nothing is known of who this player is."""
    if player not in room.claims and player not in room.missed_claims:
        return room
    return replace(
        room,
        claims={one: entry for one, entry in room.claims.items() if one != player},
        missed_claims={one: missed for one, missed in room.missed_claims.items() if one != player},
    )


def _with(room: Room, player: str, entry: str) -> dict[str, str]:
    others = {one: claimed for one, claimed in room.claims.items() if claimed != entry}
    return {**others, player: entry}


def _set_roster(room: Room, command: SetRoster, now: datetime) -> tuple[CreditEvent, ...]:
    if not may_choose_roster(room):
        raise Refused("wrong_phase")
    if room.plan.roster == command.roster:
        return ()
    return (RosterSet(roster=command.roster, at=now),)


def _claim(room: Room, command: ClaimEntry, now: datetime) -> tuple[CreditEvent, ...]:
    mine = room.claims.get(command.player)
    if mine == command.entry:
        return ()
    if mine is not None:
        raise Refused("has_claimed")
    _refuse_without_tries(room, command.player)
    if holder_of(room, command.entry) is not None:
        raise Refused("id_is_taken")
    return (EntryClaimed(player=command.player, entry=command.entry, at=now),)


def _miss(room: Room, command: MissClaim, now: datetime) -> tuple[CreditEvent, ...]:
    if command.player in room.claims:
        raise Refused("has_claimed")
    if command.order in room.missed_claims.get(command.player, ()):
        return ()
    _refuse_without_tries(room, command.player)
    return (ClaimMissed(player=command.player, order=command.order, at=now),)


def _assign(room: Room, command: AssignEntry, now: datetime) -> tuple[CreditEvent, ...]:
    if command.entry and holder_of(room, command.entry) not in (None, command.player):
        raise Refused("id_is_taken")
    unchanged = room.claims.get(command.player, "") == command.entry
    if unchanged and command.player not in room.missed_claims:
        return ()
    return (EntryAssigned(player=command.player, entry=command.entry, at=now, by=command.by),)


def _refuse_without_tries(room: Room, player: str) -> None:
    if tries_left(room, player) == 0:
        raise Refused("no_tries_left")
