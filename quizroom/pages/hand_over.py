"""Handing the desk over, and closing it on a device."""

from flask import Blueprint, make_response, redirect
from werkzeug.wrappers import Response

from quizroom.pages.host_entry import COOKIE
from quizroom.pages.host_forms import HostForms, host_cookie, must_be_own_form


def add_hand_over(routes: Blueprint, forms: HostForms) -> None:
    """Give the blueprint the page and what its forms do."""

    @routes.get("/desk/hand-over")
    def hand_over() -> Response:
        return _shown(forms)

    @routes.post("/desk/hand-over")
    def make_link() -> Response:
        must_be_own_form()
        return _shown(forms, f"{forms.address}/desk/enter/{forms.entry.new_key(forms.me().id)}")

    @routes.post("/desk/leave")
    def leave() -> Response:
        must_be_own_form()
        forms.entry.leave(host_cookie())
        left = make_response(redirect("/", 303))
        left.delete_cookie(COOKIE)
        return left


def _shown(forms: HostForms, link: str = "") -> Response:
    return forms.shown(
        "hand_over.html", title="Hand over the desk - quizroom", link=link, proof=forms.proof()
    )
