"""What follows from orders about a review as a thing; pure, as `rules`."""

from datetime import datetime

from quizroom.room.events import Event
from quizroom.room.host_commands import HandOverReview, HostCommand
from quizroom.room.host_events import ReviewHandedOver
from quizroom.room.state import Room


def decide(room: Room, command: HostCommand, now: datetime) -> tuple[Event, ...]:
    """Return the events that carry out `command`; none when it was carried out before.

    Raises:
        Refused: with the code of the reason; the room is unchanged.
    """
    match command:
        case HandOverReview():
            return () if room.host == command.host else (ReviewHandedOver(host=command.host, at=now),)
