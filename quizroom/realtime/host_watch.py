"""Letting go of desks whose host has signed out, was removed, or has been away for too long."""

import logging
from collections.abc import Callable

from quizroom.realtime.seats import Seats
from quizroom.service.host_ports import Host
from quizroom.service.ports import NotStored

logger = logging.getLogger(__name__)

WATCH_HOSTS_EVERY_S = 5.0
"""Messages of hosts are checked one by one; this bounds how long a desk is still shown to who left."""


def close_desks_of_the_gone(
    seats: Seats, host_of: Callable[[str], Host | None], disconnect: Callable[[str], object]
) -> None:
    """End the connection of every desk whose session leads no more to the host who opened it."""
    for seat in seats.desks():
        try:
            host = host_of(seat.session)
        except NotStored:
            logger.exception("whose a desk is could not be read; it will be tried again")
            return
        if host is None or host.leads != seat.host:
            disconnect(seat.sid)
