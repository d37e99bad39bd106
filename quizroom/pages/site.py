"""The routes."""

import io
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

import segno
from flask import (
    Blueprint,
    Flask,
    Response,
    abort,
    jsonify,
    make_response,
    redirect,
    render_template,
    request,
)
from werkzeug.exceptions import HTTPException
from werkzeug.wrappers import Response as AnyResponse

from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.account import add_account, host_face
from quizroom.pages.blueprint import blueprint_grid
from quizroom.pages.bundle import bundle_of
from quizroom.pages.desk_rights import guard_desk, host_of_request
from quizroom.pages.gradebook import add_gradebook
from quizroom.pages.grading import Books, Grading
from quizroom.pages.groups import add_groups
from quizroom.pages.hand_over import add_hand_over
from quizroom.pages.health import Health, add_health
from quizroom.pages.host_forms import HostForms, set_host_cookie
from quizroom.pages.hosts import add_hosts
from quizroom.pages.me import MyData, add_me
from quizroom.pages.mine import add_mine
from quizroom.pages.privacy import Privacy, add_privacy, keeping_sentence
from quizroom.pages.records import Atlas, add_atlas
from quizroom.pages.report import ReportPages, add_reports
from quizroom.pages.rosters import add_rosters
from quizroom.pages.safety import refuse_null_characters, with_safety_headers, with_strict_transport
from quizroom.pages.sign_in import add_sign_in
from quizroom.protocol.blueprint import BlueprintGrid
from quizroom.protocol.codec import write
from quizroom.protocol.desk_settings import DeskSettings
from quizroom.protocol.group_messages import GroupSettings
from quizroom.service.blueprints import Blueprints
from quizroom.service.reports import Reports
from quizroom.service.reviews import tidy_door_code

DESK_CLOSED = (
    "This is the host's desk. Open it with the link that the server printed when it started, or have a new "
    "link printed: python3 -m quizroom desk-link. Hosts with a password sign in."
)
OWNERS_ONLY = "You help an owner of reviews; this is for owners alone. Ask the one whom you help."
KEY_SPENT = (
    "This link has been used or is too old; each works once. Have a new one printed: "
    "python3 -m quizroom desk-link"
)
GROUPS_OFF = "On this server only hosts open rooms. Ask whoever runs it to switch study groups on."

PROBLEMS = {
    403: (
        "Not done",
        "This form is too old, or was made for another browser. Load its page anew and send it again.",
    ),
    404: ("Nothing here", "There is no page at this address."),
    413: (
        "Too large",
        "This is larger than the server takes, so nothing of it was kept. Send something smaller.",
    ),
}

NOT_SHOWN = "The server could not show this page. Try again; if it stays so, tell whoever runs the server."
DEFAULT_ROUNDS = 10
SIGN_IN, TO_DESK = ("/sign-in", "Sign in"), ("/desk", "To the desk")


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """What the pages are made from."""

    manifest: Mapping[str, Any]
    catalogue: Catalogue
    host_forms: HostForms
    desk_settings: DeskSettings
    blueprints: Blueprints
    reports: Reports
    group_settings: GroupSettings
    my_data: MyData
    privacy: Privacy
    secure: bool
    """Whether the address is https, so that the cookie may insist on it."""
    health: Health
    books: Books


def add_pages(app: Flask, site: Site) -> None:
    """Give the app its routes and headers."""
    routes = Blueprint("pages", __name__, template_folder="templates")
    _add_open_pages(routes, site)
    _add_desk(routes, site)
    grading = Grading(
        entry=site.host_forms.entry, manifest=site.manifest, books=site.books, closed=lambda: _closed(site)
    )
    add_rosters(routes, grading)
    add_gradebook(routes, grading)
    for add in (add_hand_over, add_sign_in, add_account, add_hosts):
        add(routes, site.host_forms)
    add_reports(
        routes,
        ReportPages(
            entry=site.host_forms.entry,
            reports=site.reports,
            manifest=site.manifest,
            closed=lambda: _closed(site),
        ),
    )
    add_health(routes, site.health)
    add_groups(routes, site.group_settings, lambda: _group_page(site))
    add_me(routes, site.my_data)
    add_privacy(routes, site.privacy, site.manifest)
    add_mine(routes, site.manifest, site.desk_settings.join_address)
    add_atlas(routes, Atlas(catalogue=site.catalogue, manifest=site.manifest))
    app.register_blueprint(routes)
    app.before_request(refuse_null_characters)
    guard_desk(
        app,
        site.host_forms.entry,
        closed=lambda: _closed(site),
        owners_only=lambda: _message(site, "For owners", OWNERS_ONLY, status=403, way=TO_DESK),
    )
    app.after_request(with_safety_headers)
    if site.secure:
        app.after_request(with_strict_transport)
    app.register_error_handler(HTTPException, lambda error: _problem(site, error))


def join_address(base: str, door_code: str) -> str:
    """The address that the QR code holds."""
    return f"{base}/seat/{door_code}"


def _add_open_pages(routes: Blueprint, site: Site) -> None:
    @routes.get("/")
    def front() -> str:
        return _page(site, "front", "quizroom")

    @routes.get("/seat/<door_code>")
    def seat(door_code: str) -> str:
        return _page(site, "seat", "Your seat - quizroom", tidy_door_code(door_code)[:16])

    @routes.get("/wall/<door_code>")
    def wall(door_code: str) -> str:
        return _page(site, "wall", "Wall - quizroom", tidy_door_code(door_code)[:16])

    @routes.get("/qr/<door_code>.svg")
    def qr(door_code: str) -> Response:
        address = join_address(site.desk_settings.join_address, tidy_door_code(door_code)[:16])
        drawn = io.BytesIO()
        segno.make(address, error="m").save(drawn, kind="svg", scale=8, border=2, omitsize=True)
        return Response(drawn.getvalue(), mimetype="image/svg+xml")


def _add_desk(routes: Blueprint, site: Site) -> None:
    @routes.get("/desk")
    def desk() -> str:
        return _page(site, "desk", "Desk - quizroom")

    @routes.get("/desk/items")
    def own_items() -> str:
        return _page(site, "items", "Own items - quizroom")

    @routes.get("/desk/settings")
    def desk_settings() -> AnyResponse:
        return jsonify(write(replace(site.desk_settings, host=host_face(site.host_forms))))

    @routes.get("/desk/blueprint/<course>")
    def blueprint(course: str) -> AnyResponse:
        if course not in site.catalogue.courses:
            abort(404)
        return jsonify(write(_grid(site, course)))

    @routes.get("/desk/enter/<key>")
    def enter(key: str) -> AnyResponse:
        entry = site.host_forms.entry
        if host_of_request(entry):
            return redirect("/desk", 303)
        token = entry.spend(key)
        if token is None:
            return _message(site, "This link is used up", KEY_SPENT, status=403)
        response = redirect("/desk", 303)
        set_host_cookie(response, token, secure=site.secure)
        return response


def _grid(site: Site, course: str) -> BlueprintGrid:
    families = request.args.getlist("family") or None
    rounds = request.args.get("rounds", DEFAULT_ROUNDS, type=int)
    typed = request.args.get("typed", "1") != "0"
    return blueprint_grid(site.blueprints, course, families=families, rounds=rounds, typed=typed)


def _group_page(site: Site) -> str | AnyResponse:
    if not site.group_settings.open:
        return _message(site, "No groups here", GROUPS_OFF, status=403)
    return _page(site, "group", "Open a study group - quizroom")


def _page(site: Site, page: str, title: str, door_code: str = "") -> str:
    return render_template(
        "page.html",
        page=page,
        title=title,
        door_code=door_code,
        groups=site.group_settings.open,
        keeping=keeping_sentence(site.privacy.keeping),
        join_address=site.desk_settings.join_address,
        bundle=bundle_of(site.manifest, page),
    )


def _closed(site: Site) -> AnyResponse:
    return _message(site, "The desk is closed", DESK_CLOSED, status=403, way=SIGN_IN)


def _message(
    site: Site, heading: str, text: str, *, status: int, way: tuple[str, str] | None = None
) -> AnyResponse:
    shown = render_template(
        "message.html", heading=heading, text=text, way=way, bundle=bundle_of(site.manifest, "front")
    )
    return make_response(shown, status)


def _problem(site: Site, error: HTTPException) -> AnyResponse:
    status = error.code or 500
    heading, text = PROBLEMS.get(status, ("Something went wrong", NOT_SHOWN))
    return _message(site, heading, text, status=status)
