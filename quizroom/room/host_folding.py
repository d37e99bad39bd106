"""A room after an event about the review as a thing."""

from dataclasses import replace

from quizroom.room.host_events import HostEvent, ReviewHandedOver
from quizroom.room.state import Room


def after(room: Room, event: HostEvent) -> Room:
    """The room after `event`."""
    match event:
        case ReviewHandedOver():
            return replace(room, host=event.host)
