"""What a calendar feed has said, as it is kept between two readings."""

from collections.abc import Sequence
from datetime import date, datetime

import orjson

from quizroom.exchange.calendar import Told


def write_told(told: Sequence[Told]) -> bytes:
    """As JSON: day, minutes, sequence, cancelled, and when it changed."""
    return orjson.dumps([[t.day, t.minutes, t.sequence, t.cancelled, t.changed_at] for t in told])


def read_told(kept: bytes) -> tuple[Told, ...]:
    """The reverse; nothing at all was told by a feed that is new."""
    return tuple(
        Told(
            day=date.fromisoformat(day),
            minutes=minutes,
            sequence=sequence,
            cancelled=cancelled,
            changed_at=datetime.fromisoformat(changed_at),
        )
        for day, minutes, sequence, cancelled, changed_at in orjson.loads(kept or b"[]")
    )
