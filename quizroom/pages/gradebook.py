"""The gradebook of a review: who sits where, and the files that a host takes away."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from flask import Blueprint, abort, redirect, request, url_for
from werkzeug.wrappers import Response

from quizroom.exchange.gradebook_file import gradebook_file, marks_cell
from quizroom.exchange.record_file import Seats, record_file
from quizroom.marking import marks_of_room
from quizroom.pages.grading import Grading, csv_answer, wants_mark
from quizroom.pages.rosters import shown_roster
from quizroom.protocol.sentences import SENTENCES
from quizroom.room.credit import MOST_MISSED_CLAIMS, may_choose_roster, tries_left
from quizroom.room.credit_commands import AssignEntry, SetRoster
from quizroom.room.own_time import can_keep_own_time
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.service.rooms import UnknownRoom
from quizroom.service.roster_ports import Roster, RosterRow
from quizroom.views.gradebook import ReviewMarks, review_marks
from quizroom.views.responses import Response as Said
from quizroom.views.responses import responses

NOT_FOR_CREDIT = (
    "This review is not for credit: nobody has said who they are, so there is no gradebook of it. Lay the "
    "next one out for credit, with a class roster."
)
TOO_LATE_FOR_CREDIT = (
    "A round has been opened. Whether a review is for credit, and by which roster, is settled before the "
    "first one: nobody may have played for practice what counts afterwards."
)
NO_ROSTER = (
    "The class roster of this review has been deleted, and with it all names. There is no gradebook any more."
)
BREATHE_EVERY = 500
NOTHING_YET = "No round has been closed yet, so there is nothing to write into a gradebook."


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """Somebody on the roster, with the seat they claimed, if any."""

    entry: str
    row: RosterRow
    player: str
    handle: str
    marks: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclaimed:
    """A seat that has not said who sits in it; `lost` if it claimed somebody who has left the roster."""

    player: str
    handle: str
    missed: int
    locked: bool
    lost: bool


def add_gradebook(routes: Blueprint, site: Grading) -> None:
    """Give the blueprint its pages and files."""

    @routes.get("/desk/gradebook/<room>")
    def gradebook(room: str) -> Response:
        host = site.host()
        return _shown(site, host, _own_room(site, host, room))

    @routes.post("/desk/gradebook/<room>")
    def assign(room: str) -> Response:
        host = site.host_of_form()
        return _assign(site, host, _own_room(site, host, room))

    @routes.post("/desk/gradebook/<room>/roster")
    def set_roster(room: str) -> Response:
        host = site.host_of_form()
        return _set_roster(site, host, _own_room(site, host, room))

    @routes.get("/desk/gradebook/<room>/gradebook.csv")
    def gradebook_csv(room: str) -> Response:
        host = site.host()
        return _gradebook_csv(site, host, _own_room(site, host, room))

    @routes.get("/desk/gradebook/<room>/record.csv")
    def record_csv(room: str) -> Response:
        host = site.host()
        return _record_csv(site, host, _own_room(site, host, room))

    @routes.get("/desk/rosters/<roster>/gradebook.csv")
    def course_csv(roster: str) -> Response:
        host = site.host()
        return _course_csv(site, host, site.own_roster(host, roster))


def _own_room(site: Grading, host: str, room: str) -> Room:
    try:
        found = site.books.rooms.fresh(room)
    except UnknownRoom:
        abort(404)
    if found.host != host:
        abort(404)
    return found


def _shown(site: Grading, host: str, room: Room, *, fault: str = "") -> Response:
    roster = site.books.rosters.own(host, room.plan.roster)
    column = review_marks(room, marks_of_room(room))
    lines = () if roster is None else tuple(_lines(room, roster, column))
    return site.page(
        "gradebook.html",
        f"Gradebook: {room.plan.title}",
        status=400 if fault else 200,
        fault=fault,
        room=room,
        roster=roster,
        why_not=_why_not(room, roster, column),
        column=column,
        lines=lines,
        unclaimed=_unclaimed(room, {line.player for line in lines if line.player}),
        most_tries=MOST_MISSED_CLAIMS,
        # Offered whoever has more time, or the page would tell that somebody has.
        keeps_time=can_keep_own_time(room.plan),
        rosters=site.books.rosters.of(host) if may_choose_roster(room) else (),
    )


def _why_not(room: Room, roster: Roster | None, column: ReviewMarks) -> str:
    """Why there is no gradebook to take away; empty if there is one."""
    if not room.plan.roster:
        return NOT_FOR_CREDIT
    if roster is None:
        return NO_ROSTER
    return "" if column.most else NOTHING_YET


def _lines(room: Room, roster: Roster, column: ReviewMarks) -> list[Line]:
    holders = {entry: player for player, entry in room.claims.items()}
    return [
        Line(
            entry=one.entry,
            row=one.row,
            player=holders.get(one.entry, ""),
            handle=room.players[holders[one.entry]].handle if one.entry in holders else "",
            marks=marks_cell(column.marks.get(one.entry)),
        )
        for one in roster.entries
    ]


def _unclaimed(room: Room, on_roster: set[str]) -> list[Unclaimed]:
    return [
        Unclaimed(
            player=player.id,
            handle=player.handle,
            missed=len(room.missed_claims.get(player.id, ())),
            locked=tries_left(room, player.id) == 0,
            lost=player.id in room.claims,
        )
        for player in sorted(room.players.values(), key=lambda one: one.handle.casefold())
        if player.id not in on_roster and player.key_hash
    ]


def _assign(site: Grading, host: str, room: Room) -> Response:
    roster, entry = site.books.rosters.own(host, room.plan.roster), request.form.get("entry", "")
    if entry and (roster is None or all(one.entry != entry for one in roster.entries)):
        return _shown(
            site, host, room, fault="That person is not on the roster any more. Look at the list again."
        )
    try:
        player = request.form.get("player", "")
        site.books.rooms.handle(room.id, AssignEntry(player=player, entry=entry, by=host))
    except Refused as refusal:
        return _shown(site, host, site.books.rooms.room(room.id), fault=SENTENCES[refusal.code])
    return redirect(url_for("pages.gradebook", room=room.id), 303)


def _set_roster(site: Grading, host: str, room: Room) -> Response:
    roster = request.form.get("roster", "")
    if roster:
        site.own_roster(host, roster)
    try:
        site.books.rooms.handle(room.id, SetRoster(roster=roster))
    except Refused:
        return _shown(site, host, site.books.rooms.room(room.id), fault=TOO_LATE_FOR_CREDIT)
    return redirect(url_for("pages.gradebook", room=room.id), 303)


def _gradebook_csv(site: Grading, host: str, room: Room) -> Response:
    roster = site.books.rosters.own(host, room.plan.roster)
    column = review_marks(room, marks_of_room(room))
    why_not = _why_not(room, roster, column)
    if why_not or roster is None:
        return _shown(site, host, room, fault=why_not)
    return csv_answer(
        gradebook_file(roster.entries, [column], bom=wants_mark()), f"gradebook {room.plan.title}"
    )


def _course_csv(site: Grading, host: str, roster: Roster) -> Response:
    """The gradebook over the reviews that are named, or all; those without a closed round have no column."""
    named = request.args.getlist("room")
    columns = [one for one in site.books.gradebooks.columns(host, roster.id, named or None) if one.most]
    if not columns:
        return shown_roster(site, host, roster, fault=NOTHING_YET)
    return csv_answer(gradebook_file(roster.entries, columns, bom=wants_mark()), f"gradebook {roster.name}")


def _record_csv(site: Grading, host: str, room: Room) -> Response:
    roster = site.books.rosters.own(host, room.plan.roster)
    rows = tuple(_breathing(site, responses(room, marks_of_room(room))))
    with_time = request.args.get("time", "") == "1"
    written = record_file(rows, _seats(room, roster), with_time=with_time, bom=wants_mark())
    return csv_answer(written, f"record {room.plan.title}")


def _breathing(site: Grading, rows: Iterator[Said]) -> Iterator[Said]:
    """The same rows, letting others go on in between: a class may be waiting for its answers to be taken."""
    for number, row in enumerate(rows, 1):
        if number % BREATHE_EVERY == 0:
            site.books.gradebooks.breathe()
        yield row


def _seats(room: Room, roster: Roster | None) -> Seats:
    people: Mapping[str, RosterRow] = {one.entry: one.row for one in (roster.entries if roster else ())}
    return Seats(
        numbers={player: number for number, player in enumerate(room.players, 1)},
        handles=None if room.plan.roster else {one.id: one.handle for one in room.players.values()},
        people={player: people[entry] for player, entry in room.claims.items() if entry in people},
    )
