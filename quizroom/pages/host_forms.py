"""Forms about hosts: proof that they are one's own, and the cookie that a browser gets or gives back."""

import hmac
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from flask import abort, make_response, redirect, render_template, request
from werkzeug.wrappers import Response

from quizroom.pages.bundle import bundle_of
from quizroom.pages.host_entry import COOKIE, SESSION_LIVES, HostEntry, form_proof
from quizroom.pages.unkept import unkept
from quizroom.service.host_ports import Host
from quizroom.service.hosts import Hosts
from quizroom.service.ports import EventLog
from quizroom.service.rooms import Rooms

FORM_COOKIE = "quizroom_form"
"""Ties a form to the browser for which it was made, where nobody is signed in yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HostForms:
    """What the pages about hosts are made from."""

    entry: HostEntry
    hosts: Hosts
    rooms: Rooms
    log: EventLog
    manifest: Mapping[str, Any]
    address: str
    secure: bool

    def shown(self, template: str, *, status: int = 200, **given: Any) -> Response:
        """A page that no browser may keep, for it holds a proof."""
        text = render_template(template, bundle=bundle_of(self.manifest, "grading"), **given)
        return unkept(make_response(text, status))

    def me(self) -> Host:
        """The host who asks; the guard of the desk has seen that there is one."""
        return self.entry.host_of_token(host_cookie()) or abort(403)

    def proof(self) -> str:
        """What a form of the desk must hold."""
        return form_proof(host_cookie())

    def let_in(self, host: Host, to: str = "/desk") -> Response:
        """Open the desk in this browser by a fresh cookie; an older one opens nothing any more."""
        token = self.entry.begin(host.id, instead_of=host_cookie())
        answer = make_response(redirect(to, 303))
        set_host_cookie(answer, token, secure=self.secure)
        answer.delete_cookie(FORM_COOKIE)
        return answer

    def for_newcomer(self, show: Callable[[str], Response]) -> Response:
        """A form for somebody without a cookie of the desk, tied to their browser by another one."""
        secret = request.cookies.get(FORM_COOKIE) or self.hosts.new_secret()
        page = show(form_proof(secret))
        page.set_cookie(FORM_COOKIE, secret, httponly=True, samesite="Strict", secure=self.secure)
        return page


def set_host_cookie(answer: Response, token: str, *, secure: bool) -> None:
    """Let a browser open the desk."""
    life = int(SESSION_LIVES.total_seconds())
    answer.set_cookie(COOKIE, token, httponly=True, samesite="Lax", secure=secure, max_age=life)


def host_cookie() -> str:
    """The token of this browser, if it has one."""
    return request.cookies.get(COOKIE, "")


def must_be_own_form(cookie: str = COOKIE) -> None:
    """End with 403 unless the form was made for this browser."""
    secret = request.cookies.get(cookie, "")
    given = request.form.get("proof", "").encode()
    if not secret or not hmac.compare_digest(given, form_proof(secret).encode()):
        abort(403)
