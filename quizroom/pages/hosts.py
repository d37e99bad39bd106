"""The owners' page of hosts: who is one, who is invited, and letting somebody go."""

from collections.abc import Callable
from dataclasses import dataclass

from flask import Blueprint, request
from werkzeug.wrappers import Response

from quizroom.pages.host_forms import HostForms, must_be_own_form
from quizroom.service.host_ports import FIRST_OWNER, Host, HostRole
from quizroom.service.hosts import INVITATION_LIVES, NO_SUCH_HOST, HostFault

NOT_YOUR_ASSISTANT = "You can let in anew only who helps you. For others ask whoever runs the server."


@dataclass(frozen=True, slots=True, kw_only=True)
class HostLine:
    """A host in the list."""

    host: Host
    helps: str
    reviews: int
    may_go: bool
    may_reset: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a form has come to: a link to hand out, what was done, or why it was not."""

    link: str = ""
    link_for: str = ""
    said: str = ""
    fault: str = ""


def add_hosts(routes: Blueprint, forms: HostForms) -> None:
    """Give the blueprint the page and what its forms do."""

    @routes.get("/desk/hosts")
    def hosts() -> Response:
        return _shown(forms, Outcome())

    @routes.post("/desk/hosts/invite")
    def invite() -> Response:
        return _done(forms, _invite)

    @routes.post("/desk/hosts/withdraw")
    def withdraw() -> Response:
        return _done(forms, _withdraw)

    @routes.post("/desk/hosts/remove")
    def remove() -> Response:
        return _done(forms, _remove)

    @routes.post("/desk/hosts/reset")
    def reset() -> Response:
        return _done(forms, _reset)


def _done(forms: HostForms, do: Callable[[HostForms], Outcome]) -> Response:
    must_be_own_form()
    try:
        return _shown(forms, do(forms))
    except HostFault as fault:
        return _shown(forms, Outcome(fault=str(fault)), status=422)


def _invite(forms: HostForms) -> Outcome:
    me = forms.me()
    role: HostRole = "owner" if request.form.get("role") == "owner" else "assistant"
    key = forms.hosts.invite(me, role=role, helps=me.id)
    whom = "an owner" if role == "owner" else "your assistant"
    return Outcome(
        link=f"{forms.address}/invitation/{key}",
        link_for=f"Send this link to whom you want as {whom}. It works once, within "
        f"{INVITATION_LIVES.days} days; whoever opens it chooses a name and a password.",
    )


def _withdraw(forms: HostForms) -> Outcome:
    forms.hosts.store.withdraw(request.form.get("invitation", ""))
    return Outcome(said="The invitation is withdrawn.")


def _remove(forms: HostForms) -> Outcome:
    gone, me = _named(forms), forms.me()
    reviews = forms.hosts.remove(gone, heir=me, rooms=forms.rooms, log=forms.log)
    left = f" Their reviews, {reviews} of them, are yours now." if reviews else ""
    return Outcome(said=f"{gone.name} is no host any more.{left}")


def _reset(forms: HostForms) -> Outcome:
    host = _named(forms)
    if host.helps != forms.me().id:
        raise HostFault(NOT_YOUR_ASSISTANT)
    forms.hosts.reset(host)
    return Outcome(
        link=f"{forms.address}/desk/enter/{forms.entry.new_key(host.id)}",
        link_for=f"Send this link to {host.name}. It works once, within twelve hours; then they choose a new "
        "password. The old one, and every desk of theirs that was open, is closed.",
    )


def _named(forms: HostForms) -> Host:
    host = forms.hosts.store.host(request.form.get("host", ""))
    if host is None:
        raise HostFault(NO_SUCH_HOST)
    return host


def _shown(forms: HostForms, outcome: Outcome, *, status: int = 200) -> Response:
    everybody = {host.id: host for host in forms.hosts.store.all()}
    me = forms.me()
    return forms.shown(
        "hosts.html",
        title="Hosts - quizroom",
        me=me,
        lines=[_line(forms, host, me, everybody) for host in everybody.values()],
        invitations=[
            (one, everybody[one.helps].name if one.helps in everybody else "")
            for one in forms.hosts.store.invitations(forms.hosts.clock.now())
        ],
        outcome=outcome,
        proof=forms.proof(),
        status=status,
    )


def _line(forms: HostForms, host: Host, me: Host, everybody: dict[str, Host]) -> HostLine:
    return HostLine(
        host=host,
        helps=everybody[host.helps].name if host.helps in everybody else "",
        reviews=len(forms.log.rooms_of_host(host.id)),
        may_go=host.id not in (me.id, FIRST_OWNER),
        may_reset=host.helps == me.id,
    )
