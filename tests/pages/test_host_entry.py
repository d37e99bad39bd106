"""How a host gets in, and that nobody else does."""

from datetime import timedelta
from hashlib import sha256

import pytest

from quizroom.pages.host_entry import COOKIE, session_of_cookie_header
from quizroom.service.host_ports import FIRST_OWNER
from tests.pages.web import made

TWELVE_HOURS_S = 12 * 3600


def test_a_link_to_the_desk_works_once() -> None:
    web = made()
    link = f"/desk/enter/{web.entry.new_key()}"
    first = web.browser().get(link)
    assert (first.status_code, first.location) == (303, "/desk")
    second = web.browser().get(link)
    assert second.status_code == 403
    assert COOKIE not in str(second.headers)
    assert "desk-link" in second.text


def test_a_link_is_good_for_twelve_hours() -> None:
    for seconds, status in ((TWELVE_HOURS_S - 1, 303), (TWELVE_HOURS_S, 403)):
        web = made()
        link = f"/desk/enter/{web.entry.new_key()}"
        web.clock.move(seconds)
        assert web.browser().get(link).status_code == status


@pytest.mark.parametrize("key", ["secret-0x", "SECRET-0", "secret-1", "x" * 5000])
def test_another_key_opens_nothing(key: str) -> None:
    web = made()
    assert web.entry.new_key() == "secret-0"
    assert web.browser().get(f"/desk/enter/{key}").status_code == 403
    assert web.browser().get("/desk/enter/%00").status_code == 404  # no address holds the null character
    assert web.browser().get("/desk/enter/secret-0").status_code == 303


def test_a_host_who_is_in_does_not_use_up_another_link() -> None:
    web = made()
    host = web.host()
    key = web.entry.new_key()
    assert host.get(f"/desk/enter/{key}").location == "/desk"
    assert web.browser().get(f"/desk/enter/{key}").status_code == 303


@pytest.mark.parametrize("secure", [True, False])
def test_the_cookie_is_for_the_server_alone(secure: bool) -> None:  # noqa: FBT001 - a parameter of the test
    web = made(secure=secure)
    cookie = web.browser().get(f"/desk/enter/{web.entry.new_key()}").headers["Set-Cookie"]
    flags = {part.strip() for part in cookie.split(";")}
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= flags
    assert ("Secure" in flags) == secure


@pytest.mark.parametrize("path", ["/desk", "/desk/settings"])
@pytest.mark.parametrize("cookie", ["", "forged", "secret-0", "owner"])
def test_the_desk_is_closed_to_whoever_has_no_good_cookie(path: str, cookie: str) -> None:
    web = made()
    web.host()  # its link was secret-0, its cookie secret-1
    browser = web.browser()
    browser.set_cookie(COOKIE, cookie)
    answer = browser.get(path)
    assert answer.status_code == 403
    assert "This is the host&#39;s desk." in answer.text
    assert "join_address" not in answer.text


def test_the_host_gets_the_desk_and_its_settings() -> None:
    host = made().host()
    assert 'data-page="desk"' in host.get("/desk").text
    settings = host.get("/desk/settings").get_json()
    assert settings["join_address"] == "http://192.0.2.7:8000"
    assert settings["courses"][0]["id"] == "c"
    assert settings["families"][:2] == ["origin", "insertion"]


@pytest.mark.parametrize(
    "header,host",
    [
        ("", ""),
        (f"{COOKIE}=secret-1", FIRST_OWNER),
        (f"a=b; {COOKIE}=secret-1; c=d", FIRST_OWNER),
        (f"{COOKIE}=secret-0", ""),
        (f"{COOKIE}=", ""),
        (f"x{COOKIE}=secret-1", ""),
        (f"{COOKIE}=secret-1x", ""),
        ("=;;;\x00\xff", ""),
        (f"{COOKIE}", ""),
        ("a[]=b; " + "x" * 9000, ""),
    ],
)
def test_a_connection_proves_its_host_by_the_cookie_header(header: str, host: str) -> None:
    web = made()
    web.host()
    proved = web.entry.host_of_session(session_of_cookie_header(header))
    assert (proved.id if proved else "") == host


def test_the_store_keeps_hashes_only() -> None:
    web = made()
    web.entry.new_key()
    now = web.clock.now()
    assert web.accounts.spend_entry_key("secret-0", now) is None
    assert web.accounts.spend_entry_key(sha256(b"secret-0").hexdigest(), now) == FIRST_OWNER
    web.host()
    before = now - timedelta(seconds=1)
    assert web.accounts.host_of_token("secret-2", made_after=before) is None
    kept = sha256(b"secret-2").hexdigest()
    assert web.accounts.host_of_token(kept, made_after=before) == FIRST_OWNER
