"""Which addresses of the desk need a host, and which of them an owner: the one table of who may see what.

An address below /desk that is not named here is for owners alone; a test demands that each is named.
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Literal

from flask import Flask, request
from werkzeug.wrappers import Response

from quizroom.pages.host_entry import COOKIE, HostEntry
from quizroom.service.host_ports import Host

DeskRight = Literal["anybody", "host", "owner"]

DESK_RIGHTS: Mapping[str, DeskRight] = MappingProxyType(
    {
        "/desk": "host",
        "/desk/settings": "host",
        "/desk/blueprint/<course>": "host",
        "/desk/hand-over": "host",
        "/desk/leave": "host",
        "/desk/enter/<key>": "anybody",
        "/desk/account": "host",
        "/desk/account/name": "host",
        "/desk/account/password": "host",
        "/desk/account/leave-everywhere": "host",
        "/desk/items": "owner",
        "/desk/own/check": "owner",
        "/desk/own/items": "owner",
        "/desk/own/items/<item>": "owner",
        "/desk/own/items/<item>/copy": "owner",
        "/desk/own/pictures": "owner",
        "/desk/review-file": "owner",
        "/desk/review-file/check": "owner",
        "/desk/review-file/<room>": "owner",
        "/desk/rosters": "owner",
        "/desk/rosters.json": "owner",
        "/desk/rosters/preview": "owner",
        "/desk/rosters/keep": "owner",
        "/desk/rosters/<roster>": "owner",
        "/desk/rosters/<roster>/roster.csv": "owner",
        "/desk/rosters/<roster>/delete": "owner",
        "/desk/rosters/<roster>/gradebook.csv": "owner",
        "/desk/gradebook/<room>": "owner",
        "/desk/gradebook/<room>/roster": "owner",
        "/desk/gradebook/<room>/gradebook.csv": "owner",
        "/desk/gradebook/<room>/record.csv": "owner",
        "/desk/report/<room>": "host",
        "/desk/report/<room>/items.csv": "host",
        "/desk/report/<room>/course": "host",
        "/desk/report/course/<course>": "host",
        "/desk/hosts": "owner",
        "/desk/hosts/invite": "owner",
        "/desk/hosts/withdraw": "owner",
        "/desk/hosts/remove": "owner",
        "/desk/hosts/reset": "owner",
    }
)


def guard_desk(
    app: Flask, entry: HostEntry, *, closed: Callable[[], Response], owners_only: Callable[[], Response]
) -> None:
    """Judge every request below /desk before anything answers it."""

    @app.before_request
    def judge() -> Response | None:
        rule = request.url_rule.rule if request.url_rule else ""
        right = right_to(rule)
        if right == "anybody":
            return None
        host = host_of_request(entry)
        if host is None:
            return closed()
        return owners_only() if right == "owner" and host.role != "owner" else None


def right_to(rule: str) -> DeskRight:
    """Whom a route lets in; what is not below /desk is not judged here."""
    if rule != "/desk" and not rule.startswith("/desk/"):
        return "anybody"
    return DESK_RIGHTS.get(rule, "owner")


def host_of_request(entry: HostEntry) -> Host | None:
    """The host whose browser asks, if it is one."""
    return entry.host_of_token(request.cookies.get(COOKIE, ""))
