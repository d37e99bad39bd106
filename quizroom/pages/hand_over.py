"""Handing the desk over, and closing it on a device: the only forms that change something."""

import hmac
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, abort, make_response, redirect, render_template, request
from werkzeug.wrappers import Response

from quizroom.pages.bundle import bundle_of
from quizroom.pages.host_entry import COOKIE, HostEntry, form_proof


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOver:
    """What the page needs; `closed` shows that the desk is closed."""

    entry: HostEntry
    manifest: Mapping[str, Any]
    address: str
    closed: Callable[[], Response]


def add_hand_over(routes: Blueprint, site: HandOver) -> None:
    """Give the blueprint the page and what its forms do."""

    @routes.get("/desk/hand-over")
    def hand_over() -> Response:
        return _shown(site) if _token(site) else site.closed()

    @routes.post("/desk/hand-over")
    def make_link() -> Response:
        if not _token(site):
            return site.closed()
        _must_be_own_form()
        return _shown(site, f"{site.address}/desk/enter/{site.entry.new_key()}")

    @routes.post("/desk/leave")
    def leave() -> Response:
        if not _token(site):
            return site.closed()
        _must_be_own_form()
        site.entry.leave(_cookie())
        left = make_response(redirect("/", 303))
        left.delete_cookie(COOKIE)
        return left


def _token(site: HandOver) -> str:
    return site.entry.host_of_token(_cookie()) and _cookie()


def _cookie() -> str:
    return request.cookies.get(COOKIE, "")


def _must_be_own_form() -> None:
    if not hmac.compare_digest(request.form.get("proof", "").encode(), form_proof(_cookie()).encode()):
        abort(403)


def _shown(site: HandOver, link: str = "") -> Response:
    shown = make_response(
        render_template(
            "hand_over.html",
            title="Hand over the desk - quizroom",
            link=link,
            proof=form_proof(_cookie()),
            bundle=bundle_of(site.manifest, "front"),
        )
    )
    shown.headers["Cache-Control"] = "no-store"
    return shown
