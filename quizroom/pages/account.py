"""A host's own account: name, password, and the desk on all devices."""

from collections.abc import Callable

from flask import Blueprint, make_response, redirect, request
from werkzeug.wrappers import Response

from quizroom.pages.host_entry import COOKIE
from quizroom.pages.host_forms import HostForms, must_be_own_form
from quizroom.protocol.desk_settings import HostFace
from quizroom.service.hosts import HostFault
from quizroom.service.passwords import SHORTEST_PASSWORD

RENAMED = "Your name is changed."
CHANGED = "Your password is changed. Every other device must sign in anew."


def add_account(routes: Blueprint, forms: HostForms) -> None:
    """Give the blueprint the page and what its forms do."""

    @routes.get("/desk/account")
    def account() -> Response:
        return _shown(forms)

    @routes.post("/desk/account/name")
    def rename() -> Response:
        must_be_own_form()
        return _done(forms, RENAMED, lambda: forms.hosts.rename(forms.me(), request.form.get("name", "")))

    @routes.post("/desk/account/password")
    def change_password() -> Response:
        must_be_own_form()
        me, given = forms.me(), request.form
        try:
            forms.hosts.change_password(me, old=given.get("old", ""), new=given.get("new", ""))
        except HostFault as fault:
            return _shown(forms, fault=str(fault), status=422)
        return forms.let_in(me, to="/desk/account?changed=1")

    @routes.post("/desk/account/leave-everywhere")
    def leave_everywhere() -> Response:
        must_be_own_form()
        forms.entry.accounts.drop_tokens_of(forms.me().id)
        left = make_response(redirect("/", 303))
        left.delete_cookie(COOKIE)
        return left


def host_face(forms: HostForms) -> HostFace:
    """Who sits at this desk, for the page."""
    me = forms.me()
    owner = forms.hosts.store.host(me.helps) if me.role == "assistant" else None
    return HostFace(name=me.name, role=me.role, helps=owner.name if owner else "")


def _done(forms: HostForms, said: str, do: Callable[[], object]) -> Response:
    try:
        do()
    except HostFault as fault:
        return _shown(forms, fault=str(fault), status=422)
    return _shown(forms, said=said)


def _shown(forms: HostForms, *, said: str = "", fault: str = "", status: int = 200) -> Response:
    return forms.shown(
        "account.html",
        title="Your account - quizroom",
        me=forms.me(),
        face=host_face(forms),
        said=said or (CHANGED if "changed" in request.args and not fault else ""),
        fault=fault,
        shortest=SHORTEST_PASSWORD,
        proof=forms.proof(),
        status=status,
    )
