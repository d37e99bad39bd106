"""Keying an item anew, during its round or any time after."""

from datetime import datetime

from quizroom.knowledge.terms import normalise
from quizroom.questions.rekeying import LONGEST_REASON, Rekeying, fits, keeps_key, rekeyed
from quizroom.room.answers import IN_PLACES, LONGEST_WORDS
from quizroom.room.change_commands import RekeyItem
from quizroom.room.change_events import ItemRekeyed, KeyRestored
from quizroom.room.events import Event
from quizroom.room.opened import opened_round
from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round


def rekey(room: Room, command: RekeyItem, now: datetime) -> tuple[Event, ...]:
    """Key an item as the host wishes; what was keyed so already stays as it is."""
    current = opened_round(room, command.round)
    dealt = current.dealt or current.item
    wish = Rekeying(
        key=command.key if dealt.format in IN_PLACES else tuple(sorted(command.key)),
        terms=tuple(" ".join(term.split()) for term in command.terms if normalise(term)),
        reason=" ".join(command.reason.split()),
    )
    if not wish.key and not wish.terms:
        return _as_dealt(current, command, now)
    if not fits(dealt, wish) or any(len(term) > LONGEST_WORDS for term in wish.terms):
        raise Refused("bad_key")
    if len(wish.reason) > LONGEST_REASON:
        raise Refused("words_too_long")
    wished = rekeyed(dealt, wish)
    if (wished.key, set(wished.accepted)) == (dealt.key, set(dealt.accepted)):
        return _as_dealt(current, command, now)
    if wished == current.item:
        return ()
    event = ItemRekeyed(
        round=command.round, key=wish.key, terms=wish.terms, reason=wish.reason, by=command.by, at=now
    )
    return (event,)


def keeps_dealt_key(current: Round) -> bool:
    """Whether what was right as dealt is right still, whatever else the host keyed."""
    return current.dealt is None or keeps_key(current.dealt, current.item)


def _as_dealt(current: Round, command: RekeyItem, now: datetime) -> tuple[Event, ...]:
    if current.dealt is None:
        return ()
    return (KeyRestored(round=command.round, by=command.by, at=now),)
