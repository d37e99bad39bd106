"""What follows from orders about a review as a thing; pure, as `rules`."""

from datetime import datetime

from quizroom.room.events import Event
from quizroom.room.host_commands import ChangeReview, HandOverReview, HostCommand, MoveItem, RenameReview
from quizroom.room.host_events import ItemMoved, ReviewChanged, ReviewHandedOver, ReviewRenamed
from quizroom.room.host_folding import plan_after
from quizroom.room.laying_out import refuse_unless_at
from quizroom.room.refusals import Refused
from quizroom.room.state import Room

LONGEST_TITLE = 120


def decide(room: Room, command: HostCommand, now: datetime) -> tuple[Event, ...]:
    """Return the events that carry out `command`; none when it was carried out before.

    Raises:
        Refused: with the code of the reason; the room is unchanged.
    """
    match command:
        case HandOverReview():
            return () if room.host == command.host else (ReviewHandedOver(host=command.host, at=now),)
        case RenameReview():
            return _rename(room, command, now)
        case ChangeReview():
            return _change(room, command, now)
        case MoveItem():
            return _move(room, command)


def tidy_title(raw: str) -> str:
    """A title as it is kept: single spaces, at most 120 characters."""
    return " ".join(raw.split())[:LONGEST_TITLE].rstrip()


def _rename(room: Room, command: RenameReview, now: datetime) -> tuple[Event, ...]:
    title = tidy_title(command.title)
    if not title:
        raise Refused("no_title")
    return () if title == room.plan.title else (ReviewRenamed(title=title, at=now),)


def _change(room: Room, command: ChangeReview, now: datetime) -> tuple[Event, ...]:
    changed = ReviewChanged(
        timing=command.timing,
        seconds=command.seconds,
        certainty=command.certainty,
        at=now,
        players_take_time=command.players_take_time,
    )
    if plan_after(room.plan, changed) == room.plan:
        return ()
    if room.phase != "preparing":
        raise Refused("wrong_phase")
    return (changed,)


def _move(room: Room, command: MoveItem) -> tuple[Event, ...]:
    if room.phase == "finished":
        raise Refused("finished")
    if not 0 <= command.to < len(room.ahead):
        raise Refused("no_such_item")
    if room.ahead[command.to].id == command.item:
        return ()
    refuse_unless_at(room, command.position, command.item)
    return (ItemMoved(position=command.position, to=command.to),)
