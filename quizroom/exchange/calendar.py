"""The return plan as a calendar (iCalendar, RFC 5545): when to sit down and for how long, nothing else.

A feed is read again and again, so what was told once must be taken back when the plan changes:
a day that falls out of the plan is told as cancelled until it is past, and each change raises the
sequence number of its event. What was told is kept as `Told`, by which a new reading is compared.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

if TYPE_CHECKING:
    from icalendar import Event

PRODUCT = "-//quizroom//return plan//EN"
REFRESH = timedelta(hours=6)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sitting:
    """A day on which the return plan wants some minutes."""

    day: date
    minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What the feed last said about a day; `sequence` counts its changes, from 0."""

    day: date
    minutes: int
    sequence: int
    cancelled: bool
    changed_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Feed:
    """Whose calendar it is, without a name. `id` makes events unique; `at` is the local time to sit down."""

    id: str
    domain: str
    at: time
    zone: ZoneInfo
    page: str
    """Address of the page on which the player goes over what is due; it holds no key."""


def revise(
    told: Iterable[Told], sittings: Iterable[Sitting], *, today: date, now: datetime
) -> tuple[Told, ...]:
    """What the feed says from now on: the plan, and what must be taken back. In order of days.

    Days before today are left as they were told, and forgotten if they had been cancelled.
    """
    before = {entry.day: entry for entry in told}
    wanted = {
        sitting.day: sitting.minutes for sitting in sittings if sitting.day >= today and sitting.minutes > 0
    }
    past = [entry for entry in before.values() if entry.day < today and not entry.cancelled]
    ahead = [
        _entry(day, before.get(day), wanted.get(day), now)
        for day in sorted(wanted.keys() | {day for day in before if day >= today})
    ]
    return tuple(sorted((*past, *ahead), key=lambda entry: entry.day))


def write_feed(feed: Feed, told: Sequence[Told]) -> bytes:
    """The calendar as it goes over the wire: UTF-8, CRLF, lines folded at 75 octets (RFC 5545, 3.1)."""
    from icalendar import Calendar  # noqa: PLC0415 - takes 90 ms; only who has a feed pays

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("name", "Second look")
    calendar.add("refresh-interval", REFRESH, parameters={"VALUE": "DURATION"})
    for entry in told:
        calendar.add_component(_event(feed, entry))
    return bytes(calendar.to_ical())


def _entry(day: date, before: Told | None, minutes: int | None, now: datetime) -> Told:
    if before is None:
        return Told(day=day, minutes=minutes or 0, sequence=0, cancelled=False, changed_at=now)
    cancelled = minutes is None
    wanted = before.minutes if minutes is None else minutes
    if (before.minutes, before.cancelled) == (wanted, cancelled):
        return before
    return replace(before, minutes=wanted, cancelled=cancelled, sequence=before.sequence + 1, changed_at=now)


def _event(feed: Feed, entry: Told) -> "Event":
    from icalendar import Event  # noqa: PLC0415 - likewise

    event = Event()
    event.add("uid", f"{entry.day.isoformat()}-{feed.id}@{feed.domain}")
    event.add("dtstamp", entry.changed_at.astimezone(UTC))
    event.add("last-modified", entry.changed_at.astimezone(UTC))
    event.add("sequence", entry.sequence)
    # The zone's own rules give the moment, so that no zone table has to be sent along.
    event.add("dtstart", datetime.combine(entry.day, feed.at, tzinfo=feed.zone).astimezone(UTC))
    event.add("duration", timedelta(minutes=entry.minutes))
    event.add("summary", f"Second look, {entry.minutes} min")
    event.add("description", "Go over what is due today, on the device that holds your key.")
    event.add("url", feed.page)
    event.add("status", "CANCELLED" if entry.cancelled else "CONFIRMED")
    event.add("transp", "TRANSPARENT")
    return event
