"""Who may see what of the desk: every address, every role."""

import re
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from quizroom.pages import desk_rights
from quizroom.pages.desk_rights import DESK_RIGHTS, right_to
from tests.pages.helping import signed_in
from tests.pages.web import made

PAGES = Path(desk_rights.__file__).parent
ROUTE = re.compile(r"routes\.(?:get|post|put|patch|delete)\(\s*\"(/desk(?:/[^\"]*)?)\"")
RULES = sorted(rule.rule for rule in made().app.url_map.iter_rules() if rule.rule.startswith("/desk"))


OF_ASSISTANTS = {
    *("/desk", "/desk/settings", "/desk/blueprint/<course>", "/desk/hand-over", "/desk/leave"),
    *("/desk/account", "/desk/account/name", "/desk/account/password", "/desk/account/leave-everywhere"),
    *("/desk/report/<room>", "/desk/report/<room>/items.csv", "/desk/report/<room>/course"),
    "/desk/report/course/<course>",
}
"""What an assistant may see by the handbook (hosts.md): their own account, and reviews without names."""


def asked(browser: FlaskClient, rule: str, method: str) -> int:
    path = rule.replace("<course>", "no_such_list").replace("<key>", "no-key")
    return browser.open(path, method=method).status_code


def methods_of(rule: str) -> list[str]:
    found = (one.methods or set() for one in made().app.url_map.iter_rules() if one.rule == rule)
    return sorted(set().union(*found) - {"HEAD", "OPTIONS"})


def test_every_address_of_the_desk_is_in_the_table_and_no_other() -> None:
    # Read from the source, since some routes are added apart from the site that these tests make.
    sources = [path.read_text("utf-8") for path in PAGES.glob("*.py")]
    written = {rule for source in sources for rule in ROUTE.findall(source)}
    assert set(RULES) <= written
    assert written == DESK_RIGHTS.keys()


def test_the_table_lets_assistants_see_what_the_handbook_says_and_no_more() -> None:
    assert {rule for rule, right in DESK_RIGHTS.items() if right == "host"} == OF_ASSISTANTS
    assert {rule for rule, right in DESK_RIGHTS.items() if right == "anybody"} == {"/desk/enter/<key>"}


def test_what_is_not_in_the_table_is_for_owners() -> None:
    assert right_to("/desk/something-new") == "owner"
    assert right_to("/seat/<door_code>") == "anybody"
    assert right_to("/desktop") == "anybody"


@pytest.mark.parametrize("rule", [rule for rule in RULES if DESK_RIGHTS[rule] != "anybody"])
def test_a_stranger_sees_nothing_of_the_desk(rule: str) -> None:
    web = made()
    for method in methods_of(rule):
        answer = web.browser().open(rule.replace("<course>", "c"), method=method)
        assert answer.status_code == 403
        assert "/sign-in" in answer.text


@pytest.mark.parametrize("rule", [rule for rule in RULES if DESK_RIGHTS[rule] == "owner"])
def test_an_assistant_is_told_that_this_is_for_owners(rule: str) -> None:
    web = made()
    helper = signed_in(web, "T. Bracken", helps="owner")
    for method in methods_of(rule):
        answer = helper.open(rule, method=method)
        assert answer.status_code == 403
        assert "For owners" in answer.text


@pytest.mark.parametrize("rule", [rule for rule in RULES if DESK_RIGHTS[rule] == "host"])
def test_an_assistant_gets_the_rest_as_an_owner_does(rule: str) -> None:
    for method in methods_of(rule):
        web = made()
        helper, owner = signed_in(web, "T. Bracken", helps="owner"), web.host()
        assert asked(helper, rule, method) == asked(owner, rule, method)
