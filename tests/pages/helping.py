"""Hosts with a name and a password, by way of the pages themselves."""

import re

from flask.testing import FlaskClient

from tests.pages.web import Web

PASSWORD = "bursa ochre lantern Tuesday"  # noqa: S105 - of nobody
PROOF = re.compile(r'name="proof" value="(\w+)"')
LINK = re.compile(r'value="http://192\.0\.2\.7:8000(/[\w/-]+)"')


def proof_on(browser: FlaskClient, path: str) -> str:
    """The proof that the forms of a page hold for this browser."""
    found = PROOF.search(browser.get(path).text)
    assert found is not None
    return found[1]


def link_in(page: str) -> str:
    """The path of the link that a page shows to be handed out."""
    found = LINK.search(page)
    assert found is not None
    return found[1]


def invited(web: Web, owner: FlaskClient, role: str) -> str:
    """The path of an invitation that an owner makes."""
    del web
    form = {"proof": proof_on(owner, "/desk/hosts"), "role": role}
    return link_in(owner.post("/desk/hosts/invite", data=form).text)


def signed_in(web: Web, name: str, *, helps: str = "") -> FlaskClient:
    """The browser of somebody who accepted an invitation of the first owner; `helps` makes them assist."""
    path = invited(web, web.host(), "assistant" if helps else "owner")
    browser = web.browser()
    form = {"proof": proof_on(browser, path), "name": name, "password": PASSWORD}
    assert browser.post(path, data=form).location == "/desk"
    return browser
