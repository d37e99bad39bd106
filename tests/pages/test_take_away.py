"""The study sheet and the calendar feed, over HTTP."""

import io
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date, timedelta
from zoneinfo import ZoneInfo

import pypdf
import pytest
import vobject
from flask import Blueprint, Flask
from flask.testing import FlaskClient

from quizroom.exchange.calendar import Sitting
from quizroom.exchange.study_rows import StudyEntry, study_entry
from quizroom.knowledge.compose import record_of
from quizroom.pages.take_away import PlayersPlan, TakeAway, add_take_away, printed
from quizroom.storage.feeds import MemoryFeeds
from tests.service.fakes import SetClock
from tests.shipped import content

ADDRESS = "https://review.hamatehill.example"


@dataclass
class Table:
    """A player with what was missed and what is planned; everything else is real."""

    missed: dict[str, list[StudyEntry]] = field(default_factory=dict)
    days: dict[int, int] = field(default_factory=dict)
    clock: SetClock = field(default_factory=SetClock)
    feeds: MemoryFeeds = field(default_factory=MemoryFeeds)
    secrets: list[str] = field(default_factory=lambda: [f"secret-{number}" + "s" * 20 for number in range(9)])

    def entries(self, player: str, room: str) -> Iterable[StudyEntry]:
        return self.missed.get(room, []) if player == "ada" else []

    def plan(self, _player: str) -> PlayersPlan:
        today = self.clock.now().date()
        sittings = [Sitting(day=today + timedelta(days=day), minutes=some) for day, some in self.days.items()]
        return PlayersPlan(today=today, zone=ZoneInfo("Europe/Berlin"), sittings=sittings)

    def browser(self, player: str = "ada") -> FlaskClient:
        app, routes = Flask(__name__), Blueprint("mine", __name__)
        site = TakeAway(
            player=lambda: player,
            welcome=lambda: player,
            missed=self.entries,
            plan=self.plan,
            feeds=self.feeds,
            clock=self.clock,
            new_secret=lambda: self.secrets.pop(0),
            address=lambda: ADDRESS,
            print_sheet=printed,
        )
        add_take_away(routes, site)
        app.register_blueprint(routes)
        return app.test_client()


@pytest.fixture
def table() -> Table:
    entry = study_entry(record_of(content(), "brachialis"), frozenset({"nerve"}))
    return Table(missed={"": [entry], "room-1": [entry]}, days={0: 12, 3: 20})


def path_of_new_feed(browser: FlaskClient, **wanted: str) -> str:
    address: str = browser.post("/mine/api/calendar", json=wanted).json["address"]  # type: ignore[index] # JSON has any shape
    assert address.startswith(f"{ADDRESS}/calendar/")
    return address.removeprefix(ADDRESS)


@pytest.mark.parametrize("paper,width", [("a4", 595), ("letter", 612)])
def test_a_sheet_of_what_was_missed_is_printed(table: Table, paper: str, width: int) -> None:
    answer = table.browser().get(f"/mine/api/sheet.pdf?paper={paper}&room=room-1")
    assert answer.mimetype == "application/pdf"
    assert "no-store" in answer.headers["Cache-Control"]
    pages = pypdf.PdfReader(io.BytesIO(answer.data)).pages
    assert round(float(pages[0].mediabox.width)) == width
    assert "Nerve · missed" in pages[0].extract_text()
    assert "musculocutaneous nerve" in pages[1].extract_text()


def test_what_cannot_be_printed_is_told_in_a_sentence(table: Table) -> None:
    assert table.browser().get("/mine/api/sheet.pdf?paper=foolscap").status_code == 400
    nothing = table.browser().get("/mine/api/sheet.pdf?room=room-2")
    assert (nothing.status_code, nothing.json) == (
        404,
        {"problem": "Nothing was missed, so there is nothing to print."},
    )


def test_the_plan_is_read_as_a_calendar_by_its_secret(table: Table) -> None:
    path = path_of_new_feed(table.browser(), at="07:30")
    answer = table.browser("nobody").get(path)
    assert answer.headers["Content-Type"] == "text/calendar; charset=utf-8"
    events = vobject.readOne(answer.text).vevent_list
    assert [event.duration.value for event in events] == [timedelta(minutes=12), timedelta(minutes=20)]
    local = [event.dtstart.value.astimezone(ZoneInfo("Europe/Berlin")) for event in events]
    assert [(moment.hour, moment.minute) for moment in local] == [(7, 30), (7, 30)]
    assert [moment.date() for moment in local] == [day_of(table, 0), day_of(table, 3)]


def day_of(table: Table, ahead: int) -> date:
    return table.clock.now().date() + timedelta(days=ahead)


def test_two_readings_are_equal_until_the_plan_changes(table: Table) -> None:
    path, reader = path_of_new_feed(table.browser()), table.browser("nobody")
    first = reader.get(path).data
    table.clock.move(3600)
    assert reader.get(path).data == first
    table.days = {0: 12}
    events = vobject.readOne(reader.get(path).text).vevent_list
    assert [(event.status.value, event.sequence.value) for event in events] == [
        ("CONFIRMED", "0"),
        ("CANCELLED", "1"),
    ]


def test_there_are_no_marks_and_no_names_in_it(table: Table) -> None:
    text = table.browser().get(path_of_new_feed(table.browser())).text
    for private in ("ada", "brachialis", "nerve", "missed", "mark", "%"):
        assert private not in text.lower().replace("date", "")


def test_a_revoked_or_replaced_secret_opens_nothing(table: Table) -> None:
    browser = table.browser()
    first = path_of_new_feed(browser)
    second = path_of_new_feed(browser)
    assert browser.get(first).status_code == 404
    assert browser.get(second).status_code == 200
    assert browser.delete("/mine/api/calendar").json == {"on": False}
    assert browser.get(second).status_code == 404
    assert browser.get("/mine/api/calendar").json == {"on": False, "at": "18:00"}


@pytest.mark.parametrize("at", ["25:00", "7:30", "noon", "", 730, None])
def test_a_time_of_day_that_is_none_is_refused(table: Table, at: object) -> None:
    refused = table.browser().post("/mine/api/calendar", json={"at": at})
    assert refused.status_code == 400
    assert "18:00" in refused.json["problem"]  # type: ignore[index] # JSON has any shape
    assert table.feeds.feed_of_player("ada") is None


@pytest.mark.parametrize("body", [b"[" * 100_000, b'{"at":"18:00"', b'{"at":NaN}', b'"18:00"'])
def test_a_body_that_is_no_plain_json_is_refused_in_a_sentence(table: Table, body: bytes) -> None:
    refused = table.browser().post("/mine/api/calendar", data=body, content_type="application/json")
    assert refused.status_code == 400
    assert "18:00" in refused.json["problem"]  # type: ignore[index] # JSON has any shape


def test_only_the_hash_of_the_secret_is_kept(table: Table) -> None:
    path = path_of_new_feed(table.browser())
    secret = path.removeprefix("/calendar/").removesuffix(".ics")
    assert secret not in str(vars(table.feeds))
