"""What a player takes away: the study sheet on paper, and the return plan in a calendar."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, time
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo

import orjson
from flask import Blueprint, Response, abort, jsonify, request
from werkzeug.wrappers import Response as AnyResponse

from quizroom.exchange.calendar import Feed, Sitting, revise, write_feed
from quizroom.exchange.feed_memory import read_told, write_told
from quizroom.exchange.study_rows import StudyEntry
from quizroom.exchange.study_sheet import NothingToPrint, Paper, study_sheet
from quizroom.pages.mine_entry import problem
from quizroom.pages.unkept import download, unkept
from quizroom.service.feed_ports import FeedStore, KeptFeed
from quizroom.service.hashing import hash_of_secret
from quizroom.service.ports import Clock

USUAL_TIME = "18:00"
TIME = re.compile(r"([01]\d|2[0-3]):[0-5]\d")
NO_SUCH_PAPER = "Choose a4 or letter as paper."
NO_SUCH_TIME = "Give the time of day as hours and minutes, such as 18:00."
PAPER_NAMES: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayersPlan:
    """The days of a player's return plan from today on, in the player's own time zone."""

    today: date
    zone: ZoneInfo
    sittings: Sequence[Sitting]


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeAway:
    """What the addresses need.

    `player` gives whose key came with a request, `welcome` the same for one that writes; `missed` the records
    that a player missed, in one review or in all; `plan` the return plan; `print_sheet` the sheet of entries.
    """

    player: Callable[[], str]
    welcome: Callable[[], str]
    missed: Callable[[str, str], Iterable[StudyEntry]]
    plan: Callable[[str], PlayersPlan]
    feeds: FeedStore
    clock: Clock
    new_secret: Callable[[], str]
    address: Callable[[], str]
    print_sheet: Callable[[Sequence[StudyEntry], Paper], bytes]


def add_take_away(routes: Blueprint, site: TakeAway) -> None:
    """Give the blueprint the addresses."""

    @routes.get("/mine/api/sheet.pdf")
    def sheet() -> AnyResponse:
        return _sheet(site, site.player())

    @routes.get("/mine/api/calendar")
    def calendar() -> Response:
        kept = site.feeds.feed_of_player(site.player())
        return jsonify(on=kept is not None, at=kept.at if kept else USUAL_TIME)

    @routes.post("/mine/api/calendar")
    def open_calendar() -> Response:
        return _open_feed(site, site.welcome())

    @routes.delete("/mine/api/calendar")
    def close_calendar() -> Response:
        site.feeds.close_feed(site.player())
        return jsonify(on=False)

    @routes.get("/calendar/<secret>.ics")
    def feed(secret: str) -> Response:
        return _feed(site, secret)


def printed(entries: Sequence[StudyEntry], paper: Paper) -> bytes:
    """The sheet as a PDF. It takes a while. Raises `NothingToPrint`."""
    return study_sheet(entries, title="Study sheet: what was missed", paper=paper)


def _sheet(site: TakeAway, player: str) -> AnyResponse:
    paper = PAPER_NAMES.get(request.args.get("paper", "a4"))
    if paper is None:
        return problem(NO_SUCH_PAPER, 400)
    entries = tuple(site.missed(player, request.args.get("room", "")))
    try:
        pdf = site.print_sheet(entries, paper)
    except NothingToPrint as nothing:
        return problem(str(nothing), 404)
    return download(pdf, "application/pdf", "study-sheet.pdf")


def _open_feed(site: TakeAway, player: str) -> Response:
    at = _wanted_time(request.get_data())
    if not isinstance(at, str) or not TIME.fullmatch(at):
        abort(problem(NO_SUCH_TIME, 400))
    secret = site.new_secret()
    known = KeptFeed(player=player, id=site.new_secret()[:12], at=at, told=b"")
    site.feeds.open_feed(known, hash_of_secret(secret), site.clock.now())
    return unkept(jsonify(on=True, at=at, address=f"{site.address()}/calendar/{secret}.ics"))


def _wanted_time(body: bytes) -> object:
    """What the body says under `at`. Read by a reader that no depth of nesting can trip."""
    try:
        wanted = orjson.loads(body or b"{}")
    except orjson.JSONDecodeError:
        return ""
    return wanted.get("at", USUAL_TIME) if isinstance(wanted, dict) else ""


def _feed(site: TakeAway, secret: str) -> Response:
    kept = site.feeds.feed_of_secret(hash_of_secret(secret))
    if kept is None:
        abort(404)
    plan = site.plan(kept.player)
    before = read_told(kept.told)
    told = revise(before, plan.sittings, today=plan.today, now=site.clock.now())
    if told != before:
        site.feeds.keep_told(kept.player, write_told(told))
    feed = Feed(
        id=kept.id,
        domain=urlsplit(site.address()).hostname or "quizroom",
        at=time.fromisoformat(kept.at),
        zone=plan.zone,
        page=f"{site.address()}/mine",
    )
    return unkept(Response(write_feed(feed, told), content_type="text/calendar; charset=utf-8"))
