"""The report of a review and of a course: for its host alone, with the published numbers on the page."""

import csv
import io
import re
from dataclasses import replace
from html import unescape

import pytest

from quizroom.pages.host_entry import COOKIE
from quizroom.pages.report_words import day, decimal, deserved, percent, place_on_scale, points
from quizroom.room.commands import (
    CloseRound,
    Command,
    EndReview,
    OpenDoor,
    OpenRound,
    RenamePlayer,
    RestoreItem,
    ShowResult,
    StrikeItem,
)
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from tests.analysis.wuensch import CONDITIONAL, CORRECTED, PROX, D, P, wuensch_orders
from tests.pages.web import Web, made
from tests.room.sample_items import one_best
from tests.room.samples import NOON, plan, preparation, says, seat

ROOM, COURSE = "wuensch", "hhc_kn_232"
REPORT = f"/desk/report/{ROOM}"


@pytest.fixture(scope="module")
def web() -> Web:
    """A site on which Wuensch's data have been played."""
    web, second = made(), 0.0
    for at, order in wuensch_orders():
        web.clock.move(at - second)
        second = at
        web.rooms.handle(ROOM, order)
    web.rooms.handle("not mine", preparation(host="somebody else"))
    return web


def text_of(html: str) -> str:
    """What a reader gets: no tags, single spaces."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).split())


def test_the_published_statistics_are_on_the_page(web: Web) -> None:
    page = text_of(web.host().get(REPORT).text)
    assert "Cronbach’s alpha 0.696 95 %: 0.31 to 0.91" in page
    assert "KR-20 0.696" in page
    assert "KR-21 0.684" in page
    assert "Standard error of a total 1.40 marks with N \N{MINUS SIGN} 1; 1.33 with N" in page
    assert "Alpha if twice as long 0.821" in page
    assert "Mean total 6.6 of 10" in page
    for number in range(10):
        told = f"r {decimal(CORRECTED[number])} D {decimal(D[number])} too few people"
        assert re.search(f"{percent(P[number])} [0-9]+–[0-9]+ % {re.escape(told)}", page), told
        assert f"Rasch {decimal(CONDITIONAL[number])} ±" in page
        assert f"{decimal(PROX[number])} ±" in page


def test_small_classes_are_told_what_their_numbers_cannot_say(web: Web) -> None:
    page = text_of(web.host().get(REPORT).text)
    assert "10 people answered." in page
    assert "No verdict on an item is given with fewer than 20 people." in page
    assert "this class cannot tell which of the items are harder" in page


def test_the_sheets_as_csv_hold_the_numbers_to_four_places(web: Web) -> None:
    answer = web.host().get(f"{REPORT}/items.csv")
    assert "attachment" in answer.headers["Content-Disposition"]
    rows = list(csv.DictReader(io.StringIO(answer.get_data().decode("utf-8-sig"))))
    assert [float(row["difficulty"]) for row in rows] == P
    assert [float(row["corrected_point_biserial"]) for row in rows] == CORRECTED
    assert [round(float(row["discrimination_27"]), 3) for row in rows] == D
    assert [float(row["rasch_prox"]) for row in rows] == PROX
    assert [float(row["rasch_conditional"]) for row in rows] == pytest.approx(CONDITIONAL, abs=1.1e-4)
    assert {(row["verdict"], row["functioning_distractors"]) for row in rows} == {("", "")}
    assert answer.get_data().count(b"\r\n") == 11


def test_a_strike_after_the_end_is_on_the_page_at_once(web: Web) -> None:
    web.rooms.handle(ROOM, StrikeItem(round=9))
    page = text_of(web.host().get(REPORT).text)
    assert "Left out because struck: round 9." in page
    assert "What was changed Round Change By 9 Struck: out of all marks" in page
    assert 'id="round-9"' not in web.host().get(REPORT).text
    web.rooms.handle(ROOM, RestoreItem(round=9))
    assert 'id="round-9"' in web.host().get(REPORT).text


@pytest.mark.parametrize("address", [REPORT, f"{REPORT}/items.csv", f"/desk/report/course/{COURSE}"])
def test_reports_are_for_the_host_alone(web: Web, address: str) -> None:
    assert web.host().get(address).status_code == 200
    assert web.host().get(address).headers["Cache-Control"] == "no-store"
    stranger = web.browser()
    assert stranger.get(address).status_code == 403
    stranger.set_cookie(COOKIE, "made-up")
    assert stranger.get(address).status_code == 403


@pytest.mark.parametrize(
    "address",
    [
        "/desk/report/no-room",
        "/desk/report/not mine",
        "/desk/report/course/none",
        "/desk/report/no-room/course",
    ],
)
def test_there_is_no_report_of_what_is_not_there_or_another_hosts(web: Web, address: str) -> None:
    assert web.host().get(address).status_code == 404


def test_from_a_review_the_way_leads_to_the_report_of_its_course(web: Web) -> None:
    answer = web.host().get(f"{REPORT}/course")
    assert (answer.status_code, answer.location) == (302, f"/desk/report/course/{COURSE}")
    assert web.browser().get(f"{REPORT}/course").status_code == 403


def test_the_course_names_its_reviews_and_what_to_explain_again(web: Web) -> None:
    html = web.host().get(f"/desk/report/course/{COURSE}").text
    page = text_of(html)
    assert "HHC-KN 232 Muscles and Movement 1 review · 3 September 2031" in page
    assert f'href="{REPORT}#round-9"' in html
    assert "last asked on 3 September 2031" in page
    assert "J no. 1 10 of 10" in page


def test_talk_and_certainty_have_sections_of_their_own() -> None:
    """Two of four right first, three after the talk: of the half that was missing a half was gained."""
    site = made()
    plans = replace(plan(), holds_results=True, certainty=True)
    orders: list[Command] = [preparation(one_best(), by=plans), OpenDoor(door_code="CDFHJ")]
    orders += [*map(seat, "abcd"), OpenRound(round=1)]
    first = [replace(says(who, "B" if who in "ab" else "A"), certainty=3) for who in "abcd"]
    again = [replace(says(who, "B" if who in "abc" else "A"), again=True) for who in "abcd"]
    orders += [*first, CloseRound(round=1, by_host=True), LetTalk(round=1), OpenAgain(round=1, by_host=True)]
    for order in [*orders, *again, CloseAgain(round=1, by_host=True), ShowResult(round=1), EndReview()]:
        site.clock.move(5)
        site.rooms.handle(ROOM, order)
    page = text_of(site.host().get(REPORT).text)
    assert "Round 1 first 50 % 2 of 4 after the talk 75 % 3 of 4 gain 0.50 1 to right, 0 to wrong –" in page
    assert "Every item with its numbers" in page
    assert "50 % 15–85 %" in page
    assert "3 4 2 · 50 % too certain" in page
    assert "2 people took radial nerve for it. 2 were certain and wrong." in page


def test_handles_are_written_as_text(web: Web) -> None:
    web.rooms.handle(ROOM, RenamePlayer(player="A", handle="<b>Bo & Co</b>"))
    html = web.host().get(REPORT).text
    assert "&lt;b&gt;Bo &amp; Co&lt;/b&gt;" in html
    assert "<b>Bo" not in html


def test_numbers_are_written_as_people_read_them() -> None:
    assert (decimal(-0.1236), decimal(-0.0001), decimal(None)) == ("\N{MINUS SIGN}0.12", "0.00", "–")
    assert (percent(0.345), percent(-0.5), percent(None)) == ("34 %", "\N{MINUS SIGN}50 %", "–")
    assert (points(0.081), points(-0.02), points(0.0)) == ("+8 points", "\N{MINUS SIGN}2 points", "0 points")
    assert (day(NOON), day(None)) == ("3 September 2031", "")
    assert [place_on_scale(at) for at in (-9, 0, 2)] == ["0.0%", "50.0%", "75.0%"]
    assert [deserved(2, right) for right in (0.5, 0.7, 0.9)] == ["too certain", "yes", "not certain enough"]
