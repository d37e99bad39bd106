"""Orders about seats and who sits in them."""

from datetime import datetime

from quizroom.room.commands import EnterSeat, RemovePlayer, RenamePlayer
from quizroom.room.events import Event, PlayerRemoved, PlayerRenamed, SeatEntered
from quizroom.room.handles import is_good_handle, tidy_handle
from quizroom.room.refusals import Refused
from quizroom.room.roster import roster_of
from quizroom.room.state import Player, Room


def enter(room: Room, command: EnterSeat, now: datetime) -> tuple[Event, ...]:
    """Seat a new player; who comes at round n is counted from round n."""
    if player_of_key(room, command.key_hash) is not None:
        return ()
    if room.phase == "preparing":
        raise Refused("door_shut")
    if room.phase == "finished":
        raise Refused("finished")
    if command.player in room.players:
        raise Refused("seat_taken")
    handle = _free_handle(room, command.handle, player="")
    if len(room.players) >= room.plan.capacity:
        raise Refused("room_full")
    return (
        SeatEntered(
            player=command.player,
            handle=handle,
            key_hash=command.key_hash,
            from_round=first_counted_round(room),
            owner=command.owner,
            at=now,
        ),
    )


def rename(room: Room, command: RenamePlayer) -> tuple[Event, ...]:
    """Give a player another handle."""
    _refuse_stranger(room, command.player)
    handle = _free_handle(room, command.handle, player=command.player)
    if handle == room.players[command.player].handle:
        return ()
    return (PlayerRenamed(player=command.player, handle=handle),)


def remove(room: Room, command: RemovePlayer, now: datetime) -> tuple[Event, ...]:
    """Send a player out."""
    _refuse_stranger(room, command.player)
    return (PlayerRemoved(player=command.player, by=command.by, at=now),)


def player_of_key(room: Room, key_hash: str) -> Player | None:
    """The player whose seat key has this hash, if any."""
    return roster_of(room.players).of_key(key_hash)


def first_counted_round(room: Room) -> int:
    """The round in which somebody entering now begins: the open one, else the next.

    Who comes while benches are at stations begins behind them, since some stations have passed.
    """
    if room.stations is not None:
        return room.stations.first + len(room.stations.items)
    return len(room.rounds) if room.phase == "answering" else len(room.rounds) + 1


def _free_handle(room: Room, raw: str, *, player: str) -> str:
    handle = tidy_handle(raw)
    if not is_good_handle(handle):
        raise Refused("bad_handle")
    holder = roster_of(room.players).of_handle(handle)
    if holder is not None and holder.id != player:
        raise Refused("handle_taken")
    return handle


def _refuse_stranger(room: Room, player: str) -> None:
    if player not in room.players:
        raise Refused("no_such_player")
