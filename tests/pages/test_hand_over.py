"""Handing the desk over and closing it: only by a form of one's own, only with the cookie."""

import re

import pytest
from flask.testing import FlaskClient

from tests.pages.web import JOIN, Web, made

LINK = re.compile(rf"{re.escape(JOIN)}/desk/enter/([\w-]+)")


def proof_of(browser: FlaskClient) -> str:
    found = re.search(r'name="proof" value="(\w+)"', browser.get("/desk/hand-over").text)
    assert found is not None
    return found[1]


def test_another_device_gets_the_desk_by_a_link_of_its_own() -> None:
    web = made()
    host = web.host()
    page = host.post("/desk/hand-over", data={"proof": proof_of(host)})
    key = LINK.search(page.text)
    assert key is not None
    assert page.headers["Cache-Control"] == "no-store"
    other = web.browser()
    assert other.get(f"/desk/enter/{key[1]}").location == "/desk"
    assert other.get("/desk").status_code == host.get("/desk").status_code == 200
    assert web.browser().get(f"/desk/enter/{key[1]}").status_code == 403


def test_a_desk_that_was_closed_on_a_device_is_closed_there_alone() -> None:
    web = made()
    leaving, staying = web.host(), web.host()
    stolen = leaving.get_cookie("quizroom_host")
    assert stolen is not None
    left = leaving.post("/desk/leave", data={"proof": proof_of(leaving)})
    assert (left.status_code, left.location) == (303, "/")
    assert leaving.get("/desk").status_code == 403
    assert staying.get("/desk").status_code == 200
    thief = web.browser()
    thief.set_cookie("quizroom_host", stolen.value)
    assert thief.get("/desk").status_code == 403


@pytest.mark.parametrize("path", ["/desk/hand-over", "/desk/leave"])
@pytest.mark.parametrize("proof", [None, "", "0" * 64, "é"])
def test_a_form_that_another_site_made_does_nothing(path: str, proof: str | None) -> None:
    web = made()
    host = web.host()
    sent = host.post(path, data={} if proof is None else {"proof": proof})
    assert sent.status_code == 403
    assert LINK.search(sent.text) is None
    assert host.get("/desk").status_code == 200


def test_the_proof_of_one_browser_is_no_proof_for_another() -> None:
    web = made()
    one, other = web.host(), web.host()
    assert one.post("/desk/leave", data={"proof": proof_of(other)}).status_code == 403


@pytest.mark.parametrize("path", ["/desk/hand-over", "/desk/leave"])
def test_without_the_cookie_the_desk_is_closed(path: str) -> None:
    web: Web = made()
    assert web.browser().post(path, data={"proof": "0" * 64}).status_code == 403
    assert web.browser().get("/desk/hand-over").status_code == 403


def test_https_is_insisted_on_where_the_address_has_it() -> None:
    assert "Strict-Transport-Security" not in made().browser().get("/").headers
    assert made(secure=True).browser().get("/").headers["Strict-Transport-Security"] == "max-age=31536000"
