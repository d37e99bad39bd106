"""The routes: what they show, and that no page can be turned against its reader."""

import re

import pytest
import segno
from werkzeug.test import TestResponse

from quizroom.pages.site import join_address
from tests.pages.web import JOIN, Web, made

OPEN_PAGES = ("/", "/mine", "/seat/CDFHJ", "/wall/CDFHJ", "/records", "/records/deltoid")
ALL_ANSWERS = (
    *OPEN_PAGES,
    "/healthz",
    "/qr/CDFHJ.svg",
    "/desk",
    "/desk/settings",
    "/desk/blueprint/intro_upper_limb",
    "/desk/enter/x",
    "/nothing",
)


@pytest.fixture(scope="module")
def web() -> Web:
    return made()


def got(web: Web, path: str) -> TestResponse:
    return web.browser().get(path)


@pytest.mark.parametrize("path", OPEN_PAGES)
def test_an_open_page_is_shown_to_anybody(web: Web, path: str) -> None:
    answer = got(web, path)
    assert answer.status_code == 200
    assert answer.mimetype == "text/html"
    assert answer.text.startswith('<!doctype html>\n<html lang="en">')


@pytest.mark.parametrize("page,path", [("front", "/"), ("seat", "/seat/CDFHJ"), ("wall", "/wall/CDFHJ")])
def test_a_page_names_itself_and_its_files(web: Web, page: str, path: str) -> None:
    text = got(web, path).text
    assert f'data-page="{page}"' in text
    assert f'<script type="module" src="/static/assets/{page}.js"></script>' in text
    assert text.count("/static/assets/shared.css") == text.count("/static/assets/shared.js") == 1
    assert "<noscript>" in text


@pytest.mark.parametrize("said", ["cdfhj", "CDF-HJ", "%20cdfhj%20", "c.d.f.h.j"])
def test_the_door_code_of_an_address_is_tidied(web: Web, said: str) -> None:
    assert 'data-door-code="CDFHJ"' in got(web, f"/seat/{said}").text
    assert 'data-door-code="CDFHJ"' in got(web, f"/wall/{said}").text


def test_an_address_cannot_smuggle_markup_into_a_page(web: Web) -> None:
    text = got(web, "/seat/%22%3E%3Cscript%3Ealert(1)%3C%2Fscript%3E").text
    assert "alert(1)" not in text
    assert "<script>" not in text.lower()


@pytest.mark.parametrize("path", ALL_ANSWERS)
def test_every_answer_carries_the_safety_headers(web: Web, path: str) -> None:
    headers = got(web, path).headers
    policy = headers["Content-Security-Policy"]
    assert "default-src 'self'" in policy
    assert "frame-ancestors 'none'" in policy
    assert not re.search(r"unsafe|\*|http:|blob:|script-src", policy)
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"
    assert "Server-Timing" not in headers


@pytest.mark.parametrize("path", ["/desk/settings", "/desk/enter/x", "/desk/report/x", "/mine/api/me"])
def test_what_is_for_one_alone_is_kept_by_no_browser_and_no_proxy(web: Web, path: str) -> None:
    assert "no-store" in got(web, path).headers["Cache-Control"]
    assert "no-store" in web.host().get(path).headers["Cache-Control"]


@pytest.mark.parametrize("path", ["/seat/%00", "/records/%00", "/records?q=%00", "/desk/report/a%00b"])
def test_an_address_with_a_null_character_leads_nowhere(web: Web, path: str) -> None:
    # PostgreSQL refuses the character (its documentation, 8.3), so that asking it would look like a failure.
    assert web.host().get(path).status_code == 404


@pytest.mark.parametrize("path", ALL_ANSWERS)
def test_no_page_holds_anything_inline_that_the_policy_forbids(web: Web, path: str) -> None:
    answer = got(web, path)
    if answer.mimetype == "text/html":
        assert not re.search(r"<script(?![^>]*\bsrc=)", answer.text)
        assert not re.search(r"<style|\sstyle=|\son\w+=|javascript:", answer.text)


def test_the_picture_holds_the_address_that_phones_need(web: Web) -> None:
    answer = got(web, "/qr/cdf-hj.svg")
    assert answer.mimetype == "image/svg+xml"
    assert join_address(JOIN, "CDFHJ") == "http://192.0.2.7:8000/seat/CDFHJ"
    drawn = segno.make("http://192.0.2.7:8000/seat/CDFHJ", error="m")
    path = re.search(r' d="([^"]+)"', answer.text)
    same = re.search(r' d="([^"]+)"', drawn.svg_inline(scale=8, border=2, omitsize=True))
    assert path is not None
    assert same is not None
    assert path[1] == same[1]
    other = segno.make("http://192.0.2.7:8000/seat/CDFHK", error="m").svg_inline(scale=8, border=2)
    assert path[1] not in other


@pytest.mark.parametrize(
    "path", ["/nothing", "/seat/", "/wall", "/static/nothing.js", "/desk/nothing", "/records/x"]
)
def test_where_nothing_is_a_page_says_so(web: Web, path: str) -> None:
    answer = got(web, path)
    assert answer.status_code == 404
    assert "There is no page at this address." in answer.text
    assert 'href="/"' in answer.text


def test_another_method_is_refused(web: Web) -> None:
    assert web.browser().post("/desk").status_code == 405


def test_a_page_that_fails_shows_no_insides() -> None:
    web = made()

    @web.app.get("/broken")
    def broken() -> str:
        raise RuntimeError("the insides")

    answer = got(web, "/broken")
    assert answer.status_code == 500
    assert "The server could not show this page." in answer.text
    assert "insides" not in answer.text


def test_whoever_watches_the_server_is_told_that_it_is_well(web: Web) -> None:
    assert got(web, "/healthz").get_json() == {"status": "ok"}
