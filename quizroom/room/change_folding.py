"""What keys changed by the host, and flags, change in one round."""

from dataclasses import replace

from quizroom.questions.rekeying import Rekeying, rekeyed
from quizroom.room.change_events import (
    ChangeEvent,
    FlagsSettled,
    FlagTakenBack,
    ItemFlagged,
    ItemRekeyed,
    KeyRestored,
)
from quizroom.room.flag_state import Flag
from quizroom.room.state import Room, Round


def after(room: Room, event: ChangeEvent) -> Room:
    """The room with the round that `event` is about changed."""
    changed = _changed(room.rounds[event.round - 1], event)
    return replace(room, rounds=(*room.rounds[: event.round - 1], changed, *room.rounds[event.round :]))


def without_flag(current: Round, player: str) -> Round:
    """The round without this player's flag."""
    if player not in current.flags:
        return current
    return replace(current, flags={key: flag for key, flag in current.flags.items() if key != player})


def without_flag_text(current: Round, player: str) -> Round:
    """The round with nothing of what this player wrote with a flag."""
    flag = current.flags.get(player)
    if flag is None:
        return current
    return replace(current, flags={**current.flags, player: replace(flag, text="")})


def _changed(current: Round, event: ChangeEvent) -> Round:
    match event:
        case ItemRekeyed():
            dealt = current.dealt or current.item
            wish = Rekeying(key=event.key, terms=event.terms, reason=event.reason)
            return replace(current, item=rekeyed(dealt, wish), dealt=dealt)
        case KeyRestored():
            return replace(current, item=current.dealt or current.item, dealt=None)
        case ItemFlagged():
            times = current.flags[event.player].times + 1 if event.player in current.flags else 1
            flag = Flag(text=event.text, asked=event.asked, at=event.at, times=times)
            return replace(current, flags={**current.flags, event.player: flag})
        case FlagTakenBack():
            flag = current.flags[event.player]
            down = replace(flag, up=False, text="", asked="", times=flag.times + 1)
            return replace(current, flags={**current.flags, event.player: down})
        case FlagsSettled():
            # Flags that were taken back are left as they are.
            flags = {
                player: replace(flag, settled=event.settled) if flag.up else flag
                for player, flag in current.flags.items()
            }
            return replace(current, flags=flags)
