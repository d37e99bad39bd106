"""Coming in: with a name and a password, or by an invitation."""

from flask import Blueprint, request
from werkzeug.wrappers import Response

from quizroom.pages.host_forms import FORM_COOKIE, HostForms, must_be_own_form
from quizroom.service.host_ports import Invitation
from quizroom.service.hosts import INVITATION_GONE, HostFault
from quizroom.service.passwords import SHORTEST_PASSWORD


def add_sign_in(routes: Blueprint, forms: HostForms) -> None:
    """Give the blueprint the pages at which nobody is a host yet."""

    @routes.get("/sign-in")
    def sign_in() -> Response:
        return _sign_in(forms)

    @routes.post("/sign-in")
    def signed_in() -> Response:
        must_be_own_form(FORM_COOKIE)
        name = request.form.get("name", "")
        try:
            host = forms.hosts.sign_in(name, request.form.get("password", ""))
        except HostFault as fault:
            return _sign_in(forms, name=name, fault=str(fault), status=403)
        return forms.let_in(host)

    @routes.get("/invitation/<key>")
    def invitation(key: str) -> Response:
        return _invitation(forms, key)

    @routes.post("/invitation/<key>")
    def accepted(key: str) -> Response:
        must_be_own_form(FORM_COOKIE)
        name, password = request.form.get("name", ""), request.form.get("password", "")
        try:
            host = forms.hosts.accept(key, name=name, password=password)
        except HostFault as fault:
            return _invitation(forms, key, name=name, fault=str(fault), status=422)
        return forms.let_in(host)


def _sign_in(forms: HostForms, *, name: str = "", fault: str = "", status: int = 200) -> Response:
    return forms.for_newcomer(
        lambda proof: forms.shown(
            "sign_in.html", title="Sign in - quizroom", name=name, fault=fault, proof=proof, status=status
        )
    )


def _invitation(
    forms: HostForms, key: str, *, name: str = "", fault: str = "", status: int = 200
) -> Response:
    found = forms.hosts.invitation(key)
    if found is None:
        return forms.shown(
            "message.html", heading="This invitation is over", text=INVITATION_GONE, status=403
        )
    return forms.for_newcomer(
        lambda proof: forms.shown(
            "invitation.html",
            title="Become a host - quizroom",
            what=_what_it_offers(forms, found),
            name=name,
            fault=fault,
            shortest=SHORTEST_PASSWORD,
            proof=proof,
            status=status,
        )
    )


def _what_it_offers(forms: HostForms, invitation: Invitation) -> str:
    if invitation.role == "owner":
        return "You will have reviews of your own on this server, and may invite others."
    owner = forms.hosts.store.host(invitation.helps)
    return f"You will help {owner.name if owner else 'a host'}: see and run the reviews they have laid out."
