"""What people think of an item: strikes, keys and rulings of the host, flags of players."""

from datetime import datetime

from quizroom.room import flags, rekeying, rounds
from quizroom.room.change_commands import ChangeCommand, RekeyItem
from quizroom.room.commands import RestoreItem, RuleOnWords, StrikeItem
from quizroom.room.events import Event
from quizroom.room.state import Room

JudgingCommand = StrikeItem | RestoreItem | RuleOnWords | ChangeCommand


def decide(room: Room, command: JudgingCommand, now: datetime) -> tuple[Event, ...]:
    """The events of such an order, during the round or any time after."""
    match command:
        case StrikeItem():
            return rounds.strike(room, command, now)
        case RestoreItem():
            return rounds.restore(room, command, now)
        case RuleOnWords():
            return rounds.rule_on_words(room, command, now)
        case RekeyItem():
            return rekeying.rekey(room, command, now)
        case _:
            return flags.decide(room, command, now)
