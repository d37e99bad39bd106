"""All that a player's own page is given while a round's result is not known: the same whatever its key is.

Another round of the same review was missed and explained before, so that there is something to be told.
"""

import io
import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import Any

import pypdf
import pytest
from flask import Blueprint, Flask
from flask.testing import FlaskClient

from quizroom.pages.me import MyData, add_me
from quizroom.pages.mine_parts import mine_over, own_requests
from quizroom.pages.take_away import printed
from quizroom.questions.model import Item
from quizroom.room.commands import (
    CloseRound,
    EnterSeat,
    HoldResults,
    OpenDoor,
    OpenRound,
    PrepareReview,
    ShowRecord,
    ShowResult,
    SubmitAnswer,
)
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from quizroom.service.forgetting import Forgetting, Keeping
from quizroom.service.histories import Histories
from quizroom.service.players import Players, player_of
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.players import SqlPlayers
from quizroom.storage.rosters import SqlRosters
from quizroom.storage.wiping import SqlWiping
from tests.pages.alone_web import KEY
from tests.pages.test_mine_flags import ORDER
from tests.room.sample_items import matching, one_best, typed
from tests.service.alone import said
from tests.service.courses import knowledge, plan_of
from tests.service.dealing import reviews
from tests.service.fakes import Desk
from tests.views.twins import other_key

ASKED: tuple[tuple[str, str], ...] = (
    *(("GET", path) for path in ("me", "today", "second-look/room-1", "calendar")),
    *(("GET", path) for path in ("export.json", "export.csv", "sheet.pdf")),
    ("POST", "practice"),
)
ID = re.compile(r"[0-9a-f]{16,}")
"""Ids are drawn by lot."""
Told = dict[str, tuple[int, str]]
"""Status and words by address."""


@cache
def first() -> Item:
    """An item about muscles that the second look knows."""
    return reviews(Desk()).prepare(plan_of(1), host="owner", order="o").ahead[0]


def stages(item: Item) -> dict[str, tuple[Any, ...]]:
    """What happens until the result of the second round is shown; after each the page is asked."""
    choice, words = said(first(), right=False)
    wrong = SubmitAnswer(player="ada", round=1, choice=choice, typed=words)
    explained = (CloseRound(round=1, by_host=True), ShowRecord(round=1), HoldResults(on=True))
    return {
        "open": (OpenRound(round=1), wrong, *explained, OpenRound(round=2), answer(item), answer(item, "bo")),
        "held": (CloseRound(round=2, by_host=True),),
        "talking": (LetTalk(round=2), OpenAgain(round=2, by_host=True), answer(item, again=True)),
        "held again": (CloseAgain(round=2, by_host=True),),
        "shown": (ShowResult(round=2),),
    }


def told(item: Item) -> dict[str, Told]:
    """What each address answers at each stage."""
    engine = open_database("sqlite://")
    desk = Desk(SqlEventLog(engine))
    app = Flask("quizroom")
    app.register_blueprint(own_pages(engine, desk))
    mine = mine_over(engine, knowledge(), rooms=desk.rooms, log=desk.log, clock=desk.clock)
    apart: list[object] = []

    def run_apart(work: Callable[..., Any], *given: Any) -> Any:
        apart.append(work)
        return work(*given)

    app.register_blueprint(own_requests(engine, mine, "https://review.example", run_apart=run_apart))
    plan = replace(plan_of(2), timing="untimed")
    seats = (("ada", "Ada", player_of(KEY)), ("bo", "Bo", ""))
    entered = (EnterSeat(player=name, handle=one, key_hash=name, owner=owner) for name, one, owner in seats)
    prepare = PrepareReview(plan=plan, items=(first(), item), host="owner")
    do(desk, prepare, OpenDoor(door_code="CDFHJ"), *entered)
    found = {}
    for stage, steps in stages(item).items():
        do(desk, *steps)
        found[stage] = asked(app.test_client())
    engine.dispose()
    assert apart == [printed] * len(found), "sheets are printed in turn"
    return found


def asked(browser: FlaskClient) -> Told:
    """Every address, asked with the player's key."""
    key = {"Authorization": f"Bearer {KEY}"}
    answers = {
        path: browser.open(
            f"/mine/api/{path}", method=how, headers=key, json=ORDER if how == "POST" else None
        )
        for how, path in ASKED
    }
    return {path: (answer.status_code, read(answer)) for path, answer in answers.items()}


def do(desk: Desk, *steps: Any) -> None:
    """Carry these orders out."""
    for step in steps:
        desk.rooms.handle("room-1", step)


def answer(item: Item, player: str = "ada", **more: Any) -> SubmitAnswer:
    """One that fits the item and is the same whatever its key is."""
    choice = tuple(option.letter for option in item.options[: item.pick])
    words = () if choice else tuple(f"word {place}" for place in range(item.pick))
    return SubmitAnswer(player=player, round=2, choice=choice, typed=words, **more)


def own_pages(engine: Any, desk: Desk) -> Blueprint:
    """What tells, hands out and deletes."""
    players, rosters = SqlPlayers(engine), SqlRosters(engine)
    routes = Blueprint("me", __name__)
    forgetting = Forgetting(
        players=players,
        reviews=SqlReviews(engine),
        rosters=rosters,
        rooms=desk.rooms,
        wiping=SqlWiping(engine),
    )
    add_me(
        routes,
        MyData(
            players=Players(store=players),
            histories=Histories(players=players, log=desk.log, rosters=rosters, breathe=lambda: None),
            forgetting=forgetting,
            keeping=Keeping(reviews_days=400, players_days=400),
            clock=desk.clock,
        ),
    )
    return routes


def read(answer: Any) -> str:
    """The words of an answer; of a PDF those on its pages, for it holds the time at which it was made."""
    if answer.mimetype != "application/pdf":
        return ID.sub("an id", answer.get_data(as_text=True))
    return "\n".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(answer.data)).pages)


@pytest.mark.parametrize("item", [one_best(), typed(), matching()], ids=lambda item: item.format)
def test_no_page_file_or_sheet_of_a_player_depends_on_a_key_before_its_result_is_shown(item: Item) -> None:
    ours, twins = told(item), told(other_key(item, 1))
    shown, others = ours.pop("shown"), twins.pop("shown")
    # Without something missed there is no sheet (404): what was missed before is told all the time.
    assert all(status == 200 for heard in ours.values() for status, _ in heard.values())
    assert ours == twins
    differ = {path for path in shown if shown[path] != others[path]}
    assert {"export.json", "export.csv"} <= differ, "the same measure finds the key once it is shown"
