"""Keeping pictures that hosts upload, and telling who may see one."""

import logging
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from quizroom.room.state import Room
from quizroom.service.own_ports import KeptPicture, PictureStore
from quizroom.service.ports import Clock, EventLog, NotStored
from quizroom.service.rooms import Rooms

logger = logging.getLogger(__name__)

MOST_PICTURES = 1000
"""Of one host."""
UNUSED_FOR = timedelta(days=2)
"""So long a picture may be in no item: it may belong to one that is being written."""


class TooManyPictures(Exception):
    """The host keeps as many pictures as the server allows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """What is to be kept of an upload: WebP, and its size in pixels."""

    body: bytes
    width: int
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Pictures:
    """The service; `new_name` gives at least 128 random bits, so that nobody guesses an address."""

    store: PictureStore
    rooms: Rooms
    log: EventLog
    clock: Clock
    new_name: Callable[[], str]

    def keep(self, host: str, drawing: Drawing) -> KeptPicture:
        """Keep a picture for a host under a name of its own.

        Raises:
            TooManyPictures: none can be added before others are gone.
            NotStored: the store refuses or fails.
        """
        now = self.clock.now()
        if self.store.count(host) >= MOST_PICTURES and not self.store.sweep(now - UNUSED_FOR):
            raise TooManyPictures
        picture = KeptPicture(
            name=self.new_name(),
            host=host,
            made_at=now,
            width=drawing.width,
            height=drawing.height,
            body=drawing.body,
        )
        self.store.keep(picture)
        return picture

    def shown(self, name: str, *, host: str) -> KeptPicture | None:
        """The picture, for its own host always, for others once it was in a round that was opened."""
        picture = self.store.find(name)
        if picture is None:
            return None
        return picture if picture.host == host or self._is_shown(name) else None

    def sweep(self) -> int:
        """Erase what has been in no item and no review for some time; how many pictures."""
        return self.store.sweep(self.clock.now() - UNUSED_FOR)

    def _is_shown(self, name: str) -> bool:
        rooms = (self.rooms.find(room) for room in self.log.rooms_with_picture(name))
        return any(has_shown(room, name) for room in rooms if room is not None)


def has_shown(room: Room, name: str) -> bool:
    """Whether a picture belongs to a round of the room that was opened."""
    pictures = (current.item.picture for current in room.rounds)
    return any(picture is not None and picture.name == name for picture in pictures)


def sweep_quietly(pictures: Pictures) -> None:
    """The server's own housekeeping: what fails is logged and tried again."""
    try:
        swept = pictures.sweep()
    except NotStored:
        logger.exception("pictures that are not in use could not be erased")
        return
    if swept:
        logger.info("erased pictures that were not in use", extra={"pictures": swept})
