"""The return plan as a calendar, held against RFC 5545 and read back by a parser that did not write it."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import vobject
from hypothesis import given
from hypothesis import strategies as st

from quizroom.exchange.calendar import Feed, Sitting, Told, revise, write_feed

NOW = datetime(2031, 10, 20, 9, 30, tzinfo=UTC)
TODAY = NOW.date()
FEED = Feed(
    id="7f3a",
    domain="hamatehill.example",
    at=time(18, 0),
    zone=ZoneInfo("America/Chicago"),
    page="https://review.hamatehill.example/mine",
)

days = st.dates(date(2031, 10, 1), date(2031, 11, 30))
plans = st.dictionaries(days, st.integers(0, 60)).map(
    lambda found: [Sitting(day=day, minutes=minutes) for day, minutes in found.items()]
)


def plan(*minutes: int) -> list[Sitting]:
    return [Sitting(day=TODAY + timedelta(days=n), minutes=some) for n, some in enumerate(minutes)]


def read(feed: Feed, told: tuple[Told, ...]) -> list[vobject.base.Component]:
    calendar = vobject.readOne(write_feed(feed, told).decode())
    assert calendar.version.value == "2.0"
    assert calendar.prodid.value
    return list(getattr(calendar, "vevent_list", []))


def test_each_day_of_the_plan_is_an_event_at_the_players_own_time() -> None:
    # Daylight saving time ends on the first Sunday of November (US Energy Policy Act of 2005): here the 2nd.
    sittings = [Sitting(day=date(2031, 11, 1), minutes=12), Sitting(day=date(2031, 11, 3), minutes=20)]
    events = read(FEED, revise((), sittings, today=TODAY, now=NOW))
    assert [event.dtstart.value for event in events] == [
        datetime(2031, 11, 1, 23, 0, tzinfo=UTC),
        datetime(2031, 11, 4, 0, 0, tzinfo=UTC),
    ]
    assert [event.duration.value for event in events] == [timedelta(minutes=12), timedelta(minutes=20)]
    assert all(event.dtstamp.value == NOW for event in events)


def test_a_day_that_falls_out_is_cancelled_and_a_change_raises_the_sequence() -> None:
    first = revise((), plan(10, 20, 30), today=TODAY, now=NOW)
    second = revise(first, plan(10, 25), today=TODAY, now=NOW + timedelta(hours=1))
    events = read(FEED, second)
    assert [event.sequence.value for event in events] == ["0", "1", "1"]
    assert [event.status.value for event in events] == ["CONFIRMED", "CONFIRMED", "CANCELLED"]
    assert [event.uid.value for event in events] == [event.uid.value for event in read(FEED, first)]


def test_a_cancelled_day_comes_back_with_a_higher_sequence() -> None:
    told = revise((), plan(10), today=TODAY, now=NOW)
    told = revise(told, [], today=TODAY, now=NOW)
    told = revise(told, plan(10), today=TODAY, now=NOW)
    assert [(entry.sequence, entry.cancelled) for entry in told] == [(2, False)]


def test_cancelled_days_are_forgotten_once_they_are_past_and_kept_days_stay() -> None:
    told = revise(revise((), plan(10, 10), today=TODAY, now=NOW), plan(10), today=TODAY, now=NOW)
    later = revise(told, [], today=TODAY + timedelta(days=2), now=NOW)
    assert [entry.day for entry in later] == [TODAY]


def test_lines_end_with_crlf_and_are_folded_at_75_octets() -> None:
    # RFC 5545, section 3.1.
    feed = Feed(
        id=FEED.id, domain=FEED.domain, at=FEED.at, zone=FEED.zone, page="https://long.example/" + "ü" * 200
    )
    written = write_feed(feed, revise((), plan(10), today=TODAY, now=NOW))
    lines = written.split(b"\r\n")
    assert b"\n" not in written.replace(b"\r\n", b"")
    assert max(map(len, lines)) <= 75
    assert written.endswith(b"END:VCALENDAR\r\n")


@given(first=plans, second=plans)
def test_two_readings_agree_on_what_stands(first: list[Sitting], second: list[Sitting]) -> None:
    told = revise(revise((), first, today=TODAY, now=NOW), second, today=TODAY, now=NOW)
    wanted = {sitting.day: sitting.minutes for sitting in second if sitting.day >= TODAY and sitting.minutes}
    assert {entry.day: entry.minutes for entry in told if not entry.cancelled} == wanted
    assert revise(told, second, today=TODAY, now=NOW + timedelta(days=1)) == told


@given(first=plans, second=plans)
def test_no_sequence_ever_falls(first: list[Sitting], second: list[Sitting]) -> None:
    before = revise((), first, today=TODAY, now=NOW)
    after = {entry.day: entry for entry in revise(before, second, today=TODAY, now=NOW)}
    assert all(after[entry.day].sequence >= entry.sequence for entry in before if entry.day in after)
    assert {entry.day for entry in before} <= after.keys()
