"""What the host's pages about rosters and gradebooks share: for whom they are, and what they are made from.

These pages alone hold names. Nothing of them is kept by a browser, and no other page loads from them.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from flask import abort, make_response, render_template, request
from werkzeug.wrappers import Response as AnyResponse

from quizroom.pages.bundle import bundle_of
from quizroom.pages.host_entry import HostEntry, form_proof
from quizroom.pages.host_forms import host_cookie, must_be_own_form
from quizroom.pages.unkept import download, unkept
from quizroom.service.gradebooks import Gradebooks
from quizroom.service.rooms import Rooms
from quizroom.service.roster_ports import Roster
from quizroom.service.rosters import Rosters


@dataclass(frozen=True, slots=True, kw_only=True)
class Books:
    """Rosters, gradebooks, and the rooms that they are about; `forget_roster` erases a roster."""

    rosters: Rosters
    gradebooks: Gradebooks
    rooms: Rooms
    forget_roster: Callable[[str], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Grading:
    """What the pages need; `closed` shows that the desk is closed."""

    entry: HostEntry
    manifest: Mapping[str, Any]
    books: Books
    closed: Callable[[], AnyResponse]

    def host(self) -> str:
        """The host who asks; anybody else is sent away."""
        host = self.entry.host_of_token(host_cookie())
        if host is None:
            abort(self.closed())
        return host.leads

    def host_of_form(self) -> str:
        """The host who sent a form; a form that another site made is refused."""
        host = self.host()
        must_be_own_form()
        return host

    def own_roster(self, host: str, roster: str) -> Roster:
        """A roster of this host; there is no page for any other."""
        found = self.books.rosters.own(host, roster)
        if found is None:
            abort(404)
        return found

    def page(self, template: str, title: str, *, status: int = 200, **shown: Any) -> AnyResponse:
        """A page that nobody keeps."""
        made = render_template(
            template,
            title=f"{title} - quizroom",
            heading=title,
            proof=form_proof(host_cookie()),
            bundle=bundle_of(self.manifest, "grading"),
            **shown,
        )
        return unkept(make_response(made, status))


def csv_answer(content: bytes, name: str) -> AnyResponse:
    """A CSV file to be saved under a name made of letters that every system takes."""
    plain = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:60] or "class"
    return download(content, "text/csv; charset=utf-8; header=present", f"{plain}.csv")


def wants_mark() -> bool:
    """Whether a byte order mark is to stand before the file."""
    return request.args.get("bom", "") == "1"
