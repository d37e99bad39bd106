"""Hosts on their pages: invited, signing in and out, changing passwords, being removed."""

import re
from datetime import timedelta

import pytest

from quizroom.pages.host_entry import COOKIE, SESSION_LIVES
from quizroom.room.commands import PrepareReview
from quizroom.service.host_ports import FIRST_OWNER
from quizroom.service.hosts import FIRST_STAYS, NAME_TAKEN, NOT_YOURSELF, TOO_MANY, WRONG
from quizroom.service.passwords import LONGEST_PASSWORD, TOO_PLAIN, TOO_SHORT
from tests.pages.helping import PASSWORD, invited, link_in, proof_on, signed_in
from tests.pages.web import Web, made
from tests.room.samples import preparation

ANOTHER = "six plain cartilage words"


def host_id(web: Web, name: str) -> str:
    host = web.hosts.store.named(name)
    assert host is not None
    return host.id


def test_who_is_invited_chooses_a_name_and_a_password_and_is_at_the_desk() -> None:
    web = made()
    helper = signed_in(web, "T. Bracken", helps=FIRST_OWNER)
    assert helper.get("/desk").status_code == 200
    host = helper.get("/desk/settings").get_json()["host"]
    assert host == {"name": "T. Bracken", "role": "assistant", "helps": "Host"}
    assert helper.get("/desk/hosts").status_code == 403


def test_an_invitation_that_is_looked_at_is_not_used_up_and_works_once() -> None:
    web = made()
    path = invited(web, web.host(), "owner")
    for _ in range(3):  # programs that look at links for a preview
        assert web.browser().get(path).status_code == 200
    for name, status in (("Dr. M. Sorrel", 303), ("Dr. Q. Yarrow", 403)):
        browser = web.browser()
        proof = proof_on(browser, path) if status == 303 else "x"
        sent = browser.post(path, data={"proof": proof, "name": name, "password": PASSWORD})
        assert sent.status_code == status
    assert web.browser().get(path).status_code == 403


def test_an_invitation_is_good_for_three_days_and_can_be_withdrawn() -> None:
    web = made()
    owner = web.host()
    late, withdrawn = invited(web, owner, "owner"), invited(web, owner, "assistant")
    page = owner.get("/desk/hosts").text
    assert page.count("Withdraw") == 2
    last = re.findall(r'name="invitation" value="(\w+)"', page)[-1]
    form = {"proof": proof_on(owner, "/desk/hosts"), "invitation": last}
    assert owner.post("/desk/hosts/withdraw", data=form).status_code == 200
    gone = [path for path in (late, withdrawn) if web.browser().get(path).status_code == 403]
    assert len(gone) == 1
    web.clock.move(3 * 24 * 3600)
    assert web.browser().get(late).status_code == 403


@pytest.mark.parametrize(
    "name,password,fault",
    [
        ("T. Bracken", "short", TOO_SHORT),
        ("T. Bracken", "T. Bracken T. Bracken", TOO_PLAIN),
        ("", PASSWORD, "A name has 1 to 40 characters"),
        ("x" * 41, PASSWORD, "A name has 1 to 40 characters"),
        ("hOST", PASSWORD, NAME_TAKEN),
    ],
)
def test_what_will_not_do_is_told_and_the_invitation_stays(name: str, password: str, fault: str) -> None:
    web = made()
    path = invited(web, web.host(), "owner")
    browser = web.browser()
    form = {"proof": proof_on(browser, path), "name": name, "password": password}
    told = browser.post(path, data=form)
    assert told.status_code == 422
    assert fault in told.text
    assert password not in told.text or password == name
    assert browser.post(path, data=form | {"name": "T. B.", "password": PASSWORD}).status_code == 303


def test_name_and_password_open_the_desk_on_any_device() -> None:
    web = made()
    signed_in(web, "Dr. M. Sorrel")
    browser = web.browser()
    proof = proof_on(browser, "/sign-in")
    wrong = browser.post("/sign-in", data={"proof": proof, "name": "dr. m. sorrel", "password": ANOTHER})
    assert (wrong.status_code, COOKIE in str(wrong.headers)) == (403, False)
    assert WRONG in wrong.text
    right = browser.post("/sign-in", data={"proof": proof, "name": " dr. m. SORREL ", "password": PASSWORD})
    assert right.location == "/desk"
    (shown,) = web.browser().get("/sign-in").headers.getlist("Set-Cookie")
    assert {"HttpOnly", "SameSite=Strict", "Path=/"} <= {part.strip() for part in shown.split(";")}
    flags = {part.strip() for part in right.headers["Set-Cookie"].split(";")}
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= flags
    assert browser.get("/desk/settings").get_json()["host"]["name"] == "Dr. M. Sorrel"


@pytest.mark.parametrize("password", [ANOTHER, "", "long" * 100_000])
def test_an_unknown_name_is_told_the_same_after_the_same_work(password: str) -> None:
    web = made()
    signed_in(web, "Dr. M. Sorrel")
    told, work = [], []
    for name in ("Dr. M. Sorrel", "Nobody", "Host"):
        browser = web.browser()
        form = {"proof": proof_on(browser, "/sign-in"), "name": name, "password": password}
        before = web.passwords.checked, web.passwords.letters
        told.append(browser.post("/sign-in", data=form).text.replace(f'value="{name}"', ""))
        work.append((web.passwords.checked - before[0], web.passwords.letters - before[1]))
    assert len({re.sub(r'value="\w{64}"', "", text) for text in told}) == 1
    assert work == [(1, min(len(password), LONGEST_PASSWORD + 1))] * 3


def test_tries_are_limited_for_each_name_and_come_back_with_time() -> None:
    web = made()
    signed_in(web, "Dr. M. Sorrel")
    browser = web.browser()
    proof = proof_on(browser, "/sign-in")

    def tried(password: str) -> tuple[int, bool]:
        form = {"proof": proof, "name": "Dr. M. Sorrel", "password": password}
        answer = browser.post("/sign-in", data=form)
        return answer.status_code, TOO_MANY in answer.text

    assert [tried(ANOTHER) for _ in range(10)] == [(403, False)] * 10
    assert tried(PASSWORD) == (403, True)
    web.clock.move(301)
    assert tried(PASSWORD) == (303, False)


@pytest.mark.parametrize("path", ["/sign-in", "/invitation"])
def test_a_form_for_coming_in_that_another_site_made_does_nothing(path: str) -> None:
    web = made()
    signed_in(web, "Dr. M. Sorrel")
    path = path if path == "/sign-in" else invited(web, web.host(), "owner")
    form = {"name": "Dr. M. Sorrel", "password": PASSWORD, "proof": proof_on(web.browser(), path)}
    another = web.browser()
    assert another.post(path, data=form).status_code == 403
    another.get(path)
    assert another.post(path, data=form).status_code == 403


def test_signing_in_makes_a_fresh_cookie_and_ends_the_one_before() -> None:
    web = made()
    browser = signed_in(web, "Dr. M. Sorrel")
    old = browser.get_cookie(COOKIE)
    form = {"proof": proof_on(browser, "/sign-in"), "name": "Dr. M. Sorrel", "password": PASSWORD}
    browser.post("/sign-in", data=form)
    new = browser.get_cookie(COOKIE)
    assert old is not None
    assert new is not None
    assert old.value != new.value
    assert web.entry.host_of_token(old.value) is None
    assert web.entry.host_of_token(new.value) is not None


def test_a_cookie_ends_after_a_term() -> None:
    web = made()
    host = web.host()
    web.clock.move((SESSION_LIVES - timedelta(seconds=1)).total_seconds())
    assert host.get("/desk").status_code == 200
    web.clock.move(1)
    assert host.get("/desk").status_code == 403


def test_who_runs_a_server_alone_needs_no_password_and_may_set_one() -> None:
    web = made()
    host = web.host()
    page = host.get("/desk/account").text
    assert "Set a password" in page
    proof = proof_on(host, "/desk/account")
    assert host.post("/desk/account/name", data={"proof": proof, "name": "Dr. M. Sorrel"}).status_code == 200
    changed = host.post("/desk/account/password", data={"proof": proof, "new": PASSWORD})
    assert changed.location == "/desk/account?changed=1"
    browser = web.browser()
    form = {"proof": proof_on(browser, "/sign-in"), "name": "Dr. M. Sorrel", "password": PASSWORD}
    assert browser.post("/sign-in", data=form).location == "/desk"


def test_another_password_needs_the_one_so_far_and_signs_all_other_devices_out() -> None:
    web = made()
    browser, other = signed_in(web, "Dr. M. Sorrel"), web.browser()
    form = {"proof": proof_on(other, "/sign-in"), "name": "Dr. M. Sorrel", "password": PASSWORD}
    other.post("/sign-in", data=form)
    proof = proof_on(browser, "/desk/account")
    wrong = browser.post("/desk/account/password", data={"proof": proof, "old": ANOTHER, "new": ANOTHER})
    assert wrong.status_code == 422
    assert other.get("/desk").status_code == 200
    right = browser.post("/desk/account/password", data={"proof": proof, "old": PASSWORD, "new": ANOTHER})
    assert right.status_code == 303
    assert (browser.get("/desk").status_code, other.get("/desk").status_code) == (200, 403)


def test_a_host_can_sign_out_everywhere() -> None:
    web = made()
    one, other = web.host(), web.host()
    colleague = signed_in(web, "Dr. M. Sorrel")
    left = one.post("/desk/account/leave-everywhere", data={"proof": proof_on(one, "/desk/account")})
    assert left.location == "/"
    statuses = [browser.get("/desk").status_code for browser in (one, other, colleague)]
    assert statuses == [403, 403, 200]


def test_handing_over_opens_the_desk_of_who_hands_over() -> None:
    web = made()
    helper = signed_in(web, "T. Bracken", helps=FIRST_OWNER)
    page = helper.post("/desk/hand-over", data={"proof": proof_on(helper, "/desk/hand-over")}).text
    other = web.browser()
    other.get(link_in(page))
    assert other.get("/desk/settings").get_json()["host"]["name"] == "T. Bracken"


def test_an_assistant_who_forgot_the_password_is_let_in_anew_by_their_owner() -> None:
    web = made()
    owner, helper = web.host(), signed_in(web, "T. Bracken", helps=FIRST_OWNER)
    form = {"proof": proof_on(owner, "/desk/hosts"), "host": host_id(web, "T. Bracken")}
    path = link_in(owner.post("/desk/hosts/reset", data=form).text)
    assert helper.get("/desk").status_code == 403
    browser = web.browser()
    assert browser.get(path).location == "/desk"
    proof = proof_on(browser, "/desk/account")
    assert browser.post("/desk/account/password", data={"proof": proof, "new": ANOTHER}).status_code == 303


def test_an_owner_lets_nobody_else_in_anew() -> None:
    web = made()
    owner = web.host()
    signed_in(web, "Dr. M. Sorrel")
    form = {"proof": proof_on(owner, "/desk/hosts"), "host": host_id(web, "Dr. M. Sorrel")}
    refused = owner.post("/desk/hosts/reset", data=form)
    assert refused.status_code == 422
    assert "/desk/enter/" not in refused.text


def test_the_reviews_of_who_is_removed_go_to_the_owner_who_removes() -> None:
    web = made()
    owner, colleague = web.host(), signed_in(web, "Dr. M. Sorrel")
    theirs = host_id(web, "Dr. M. Sorrel")
    command: PrepareReview = preparation(host=theirs)
    web.rooms.handle("room-9", command)
    path = invited(web, colleague, "assistant")
    helper = web.browser()
    form = {"proof": proof_on(helper, path), "name": "R. Teasel", "password": PASSWORD}
    helper.post(path, data=form)
    form = {"proof": proof_on(owner, "/desk/hosts"), "host": theirs}
    said = owner.post("/desk/hosts/remove", data=form).text
    assert "Their reviews, 1 of them, are yours now." in said
    assert web.rooms.room("room-9").host == FIRST_OWNER
    assert web.mine.histories.log.rooms_of_host(FIRST_OWNER) == ("room-9",)
    assert colleague.get("/desk").status_code == 403
    assert helper.get("/desk/settings").get_json()["host"]["helps"] == "Host"
    assert owner.post("/desk/hosts/remove", data=form).status_code == 422


@pytest.mark.parametrize("whom,fault", [("first", FIRST_STAYS), ("self", NOT_YOURSELF)])
def test_the_first_owner_stays_and_nobody_removes_themself(whom: str, fault: str) -> None:
    web = made()
    colleague = signed_in(web, "Dr. M. Sorrel")
    host = FIRST_OWNER if whom == "first" else host_id(web, "Dr. M. Sorrel")
    form = {"proof": proof_on(colleague, "/desk/hosts"), "host": host}
    refused = colleague.post("/desk/hosts/remove", data=form)
    assert refused.status_code == 422
    assert fault in refused.text
    assert len(web.hosts.store.all()) == 2


@pytest.mark.parametrize(
    "path", ["hosts/invite", "hosts/withdraw", "hosts/remove", "hosts/reset", "account/name"]
)
def test_a_form_about_hosts_that_another_site_made_does_nothing(path: str) -> None:
    web = made()
    owner = web.host()
    form = {"role": "owner", "host": "x", "name": "Dr. M. Sorrel", "proof": "0" * 64}
    assert owner.post(f"/desk/{path}", data=form).status_code == 403
    assert (len(web.hosts.store.all()), web.hosts.store.invitations(web.clock.now())) == (1, ())


@pytest.mark.parametrize("path", ["/sign-in", "/desk/account", "/desk/hosts"])
def test_no_browser_keeps_these_pages(path: str) -> None:
    assert made().host().get(path).headers["Cache-Control"] == "no-store"
