"""Class rosters of a host: read from a file, looked over, kept, replaced and deleted."""

from flask import Blueprint, jsonify, redirect, request, url_for
from werkzeug.wrappers import Response

from quizroom.exchange.roster_file import write_roster
from quizroom.exchange.roster_reading import MOST_BYTES, BadRoster, RosterSheet, read_roster, too_large
from quizroom.pages.grading import Grading, csv_answer, wants_mark
from quizroom.pages.unkept import unkept
from quizroom.service.roster_ports import Roster, folded_id

LONGEST_ROSTER_NAME = 120
NO_FILE = "Choose a file first."
NOT_SURE = "Nothing was deleted. Tick the box first if the names are to be gone for good."
NO_NAME = "Give the roster a name, such as the course and the term."


def add_rosters(routes: Blueprint, site: Grading) -> None:
    """Give the blueprint its pages."""

    @routes.get("/desk/rosters")
    def rosters() -> Response:
        return _listed(site, site.host())

    @routes.get("/desk/rosters.json")
    def roster_names() -> Response:
        lines = [
            {"id": line.id, "name": line.name, "people": line.people}
            for line in site.books.rosters.of(site.host())
        ]
        return unkept(jsonify(lines))

    @routes.post("/desk/rosters/preview")
    def preview() -> Response:
        if (request.content_length or 0) > 4 * MOST_BYTES:  # read no further: nothing of it is kept
            return _listed(site, site.host(), fault=too_large(MOST_BYTES))
        return _preview(site, site.host_of_form())

    @routes.post("/desk/rosters/keep")
    def keep() -> Response:
        return _keep(site, site.host_of_form())

    @routes.get("/desk/rosters/<roster>")
    def roster_page(roster: str) -> Response:
        host = site.host()
        return shown_roster(site, host, site.own_roster(host, roster))

    @routes.get("/desk/rosters/<roster>/roster.csv")
    def roster_file(roster: str) -> Response:
        kept = site.own_roster(site.host(), roster)
        return csv_answer(write_roster((one.row for one in kept.entries), bom=wants_mark()), kept.name)

    @routes.post("/desk/rosters/<roster>/delete")
    def delete(roster: str) -> Response:
        host = site.host_of_form()
        kept = site.own_roster(host, roster)
        if request.form.get("sure") != "1":
            return shown_roster(site, host, kept, fault=NOT_SURE)
        site.books.forget_roster(kept.id)
        return redirect(url_for("pages.rosters"), 303)


def _listed(site: Grading, host: str, *, fault: str = "", name: str = "") -> Response:
    status = 400 if fault else 200
    lines = site.books.rosters.of(host)
    return site.page("rosters.html", "Class rosters", status=status, rosters=lines, fault=fault, name=name)


def shown_roster(site: Grading, host: str, roster: Roster, *, fault: str = "") -> Response:
    """The page of a roster: who is on it, and the reviews by it."""
    return site.page(
        "roster.html",
        roster.name,
        status=400 if fault else 200,
        roster=roster,
        reviews=site.books.gradebooks.columns(host, roster.id),
        fault=fault,
    )


def _preview(site: Grading, host: str) -> Response:
    """What a file yields, with what is wrong in it; nothing is kept yet."""
    name, known = _name(), _replaced(site, host)
    try:
        sheet = _read(name or (known.name if known else ""))
    except BadRoster as bad:
        fault = str(bad)
        if known is not None:
            return shown_roster(site, host, known, fault=fault)
        return _listed(site, host, fault=fault, name=name)
    return site.page(
        "roster_preview.html",
        "Look it over",
        name=name or (known.name if known else ""),
        roster=known,
        sheet=sheet,
        gone=_gone(known, sheet),
        rows_as_text=write_roster(sheet.rows).decode(),
    )


def _read(name: str) -> RosterSheet:
    sent = request.files.get("file")
    if not name:
        raise BadRoster(NO_NAME)
    if sent is None or not sent.filename:
        raise BadRoster(NO_FILE)
    return read_roster(sent.stream.read(MOST_BYTES + 1))


def _keep(site: Grading, host: str) -> Response:
    """Keep exactly the rows that were looked over."""
    known = _replaced(site, host)
    try:
        # Written anew it may be a little longer than the file was.
        sheet = read_roster(request.form.get("rows", "").encode(), most_bytes=2 * MOST_BYTES)
    except BadRoster as bad:
        return _listed(site, host, fault=str(bad), name=_name())
    name = _name() or (known.name if known else "Class roster")
    kept = (
        site.books.rosters.add(host, name, sheet.rows)
        if known is None
        else site.books.rosters.change(known, name, sheet.rows)
    )
    return redirect(url_for("pages.roster_page", roster=kept.id), 303)


def _gone(known: Roster | None, sheet: RosterSheet) -> tuple[str, ...]:
    """Names of those who are on the roster now and would not be any more."""
    stay = {folded_id(row.id) for row in sheet.rows}
    entries = () if known is None else known.entries
    return tuple(one.row.name for one in entries if folded_id(one.row.id) not in stay)


def _replaced(site: Grading, host: str) -> Roster | None:
    """The roster that is to be replaced, if one is named."""
    named = request.form.get("roster", "")
    return site.own_roster(host, named) if named else None


def _name() -> str:
    return " ".join(request.form.get("name", "").split())[:LONGEST_ROSTER_NAME]
