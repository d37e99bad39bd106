"""Class rosters on the host's pages: looked over before anything is kept, and for their host alone."""

import io
import re
from html import unescape

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from quizroom.exchange.roster_reading import read_roster
from quizroom.service.roster_ports import RosterRow
from tests.pages.web import made

CLASS = (
    "\ufeffname;id;section\r\nAda Alder;00042;Lab 1\r\nCem;;\r\nBo Birch;HH000102;\r\nBo Again;hh 000102;\r\n"
)


def proof_of(browser: FlaskClient) -> str:
    found = re.search(r'name="proof" value="(\w+)"', browser.get("/desk/rosters").text)
    assert found is not None
    return found[1]


def send(host: FlaskClient, raw: bytes | str, **fields: str) -> TestResponse:
    """Choose a file on the page of rosters."""
    content = io.BytesIO(raw.encode() if isinstance(raw, str) else raw)
    data = {"proof": proof_of(host), "name": "HHC-AN 140", "file": (content, "class.csv"), **fields}
    return host.post("/desk/rosters/preview", data=data)


def confirmed(host: FlaskClient, page: TestResponse) -> TestResponse:
    """Press the button under what was looked over, with exactly what the page holds."""
    form = page.text.partition('action="/desk/rosters/keep"')[2].partition("</form>")[0]
    fields = dict(re.findall(r'name="(\w+)" value="([^"]*)"', form))
    return host.post("/desk/rosters/keep", data={name: unescape(value) for name, value in fields.items()})


def test_a_file_is_looked_over_and_only_then_kept() -> None:
    web = made()
    host = web.host()
    page = send(host, CLASS)
    assert page.status_code == 200
    assert page.headers["Cache-Control"] == "no-store"
    assert "Keep these 2 people" in page.text
    assert "The id is missing" in page.text
    assert "stands in line 4 already" in page.text
    assert web.books.rosters.of("owner") == ()
    kept = confirmed(host, page)
    assert kept.status_code == 303
    (line,) = web.books.rosters.of("owner")
    assert (line.name, line.people, kept.location) == ("HHC-AN 140", 2, f"/desk/rosters/{line.id}")
    assert "Ada Alder" in host.get(kept.location).text
    assert host.get("/desk/rosters.json").json == [{"id": line.id, "name": "HHC-AN 140", "people": 2}]
    assert b"00042" in host.get(f"/desk/rosters/{line.id}/roster.csv").data


@pytest.mark.parametrize(
    "raw,fields,says",
    [
        ("id,name\n1,Müller\n".encode("latin-1"), {}, "not in UTF-8"),
        (b"", {}, "empty"),
        (CLASS, {"name": "  "}, "Give the roster a name"),
        ("a,b\n1,2\n", {}, "none is called"),
        (b"x" * 400_000, {}, "more than 300 kB"),
    ],
)
def test_a_file_that_cannot_be_read_is_refused_in_words(
    raw: bytes | str, fields: dict[str, str], says: str
) -> None:
    page = send(made().host(), raw, **fields)
    assert page.status_code == 400
    assert f'role="alert">{says}' in page.text or says in page.text.partition('role="alert">')[2][:200]


def test_a_file_far_too_large_is_not_even_read() -> None:
    host = made().host()
    page = host.post("/desk/rosters/preview", environ_overrides={"CONTENT_LENGTH": "1900000"})
    assert (page.status_code, "more than 300 kB" in page.text) == (400, True)


def test_no_file_is_said_too() -> None:
    host = made().host()
    page = host.post("/desk/rosters/preview", data={"proof": proof_of(host), "name": "AN"})
    assert (page.status_code, "Choose a file first" in page.text) == (400, True)


def test_replacing_says_who_will_be_gone_and_keeps_claims_of_the_others() -> None:
    web = made()
    host = web.host()
    rows = [RosterRow(id="00042", name="Ada Alder"), RosterRow(id="HH9", name="Gwen Gorse")]
    first = web.books.rosters.add("owner", "Old", rows)
    page = send(host, CLASS, roster=first.id, name="New")
    assert "Gwen Gorse" in page.text
    assert "1 will no longer be on the roster" in page.text
    confirmed(host, page)
    changed = web.books.rosters.own("owner", first.id)
    assert changed is not None
    assert (changed.name, changed.entries[0].entry) == ("New", first.entries[0].entry)


def test_a_deleted_roster_is_gone_and_its_files_are_to_be_wiped() -> None:
    web = made()
    host = web.host()
    roster = web.books.rosters.add("owner", "Lab", [RosterRow(id="1", name="Ada")])
    assert host.post(f"/desk/rosters/{roster.id}/delete").status_code == 403
    form = {"proof": proof_of(host)}
    asked = host.post(f"/desk/rosters/{roster.id}/delete", data=form)
    assert (asked.status_code, "Nothing was deleted" in asked.text) == (400, True)
    gone = host.post(f"/desk/rosters/{roster.id}/delete", data={**form, "sure": "1"})
    assert (gone.status_code, gone.location) == (303, "/desk/rosters")
    assert web.books.rosters.of("owner") == ()
    assert web.mine.forgetting.pending.due


@pytest.mark.parametrize("path", ["", "/{id}", "/{id}/roster.csv", "/{id}/gradebook.csv", ".json"])
def test_rosters_are_for_their_host_alone(path: str) -> None:
    web = made()
    roster = web.books.rosters.add("somebody else", "Theirs", [RosterRow(id="1", name="Zebedee")])
    address = f"/desk/rosters{path.format(id=roster.id)}"
    assert web.browser().get(address).status_code == 403
    shown = web.host().get(address)
    assert "Zebedee" not in shown.text
    assert shown.status_code == (404 if "{id}" in path else 200)


@pytest.mark.parametrize("path", ["preview", "keep"])
def test_a_form_that_another_site_made_does_nothing(path: str) -> None:
    web = made()
    sent = web.host().post(f"/desk/rosters/{path}", data={"name": "X", "rows": "id,name\r\n1,Ada\r\n"})
    assert sent.status_code == 403
    assert web.books.rosters.of("owner") == ()


def test_names_are_shown_as_text_whatever_they_hold() -> None:
    host = made().host()
    page = send(host, 'id,name\n1,"<script>alert(1)</script> ""x"""\n')
    assert "<script>alert" not in page.text
    assert confirmed(host, page).status_code == 303
    assert "<script>alert" not in host.get("/desk/rosters/id-1").text


def test_what_is_confirmed_is_what_was_shown() -> None:
    web = made()
    host = web.host()
    raw = 'id;name;section\n=7;"=1+1; ""x""";-2\n"0001";דנה אלון;"Lab\n2"\n'
    confirmed(host, send(host, raw))
    (line,) = web.books.rosters.of("owner")
    kept = web.books.rosters.own("owner", line.id)
    assert kept is not None
    assert tuple(one.row for one in kept.entries) == read_roster(raw.encode()).rows
