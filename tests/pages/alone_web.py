"""The requests of a player's own page, over an embedded database and a review with three misses."""

from dataclasses import dataclass
from typing import Any

from flask import Flask
from flask.testing import FlaskClient

from quizroom.pages.mine_api import mine_blueprint
from quizroom.pages.mine_parts import mine_over
from quizroom.room.commands import CloseRound, EndReview, EnterSeat, OpenRound, ShowRecord, SubmitAnswer
from quizroom.service.players import player_of
from quizroom.service.rooms import Rooms
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from tests.service.alone import said
from tests.service.courses import knowledge, plan_of
from tests.service.dealing import reviews
from tests.service.fakes import Desk, SetClock

KEY = "abcdefghijklmn27"
OTHER_KEY = "zyxwvutsrqponm27"
MISSED = (2, 4, 5)
Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Page:
    """A browser with a key, and the clock of the server."""

    browser: FlaskClient
    clock: SetClock
    room: str
    rooms: Rooms
    key: str = KEY

    def ask(self, method: str, path: str, body: Json | None = None, *, status: int = 200) -> Json:
        """One request with the key; its answer must have this status."""
        headers = {"Authorization": f"Bearer {self.key}"}
        answer = self.browser.open(f"/mine/api/{path}", method=method, json=body, headers=headers)
        assert answer.status_code == status, answer.text
        read: Json = answer.get_json()
        return read


def page() -> Page:
    """A page whose player missed `MISSED` in a review that is over."""
    engine = open_database("sqlite://")
    desk = Desk(SqlEventLog(engine))
    room = _played(desk)
    app = Flask("quizroom")
    mine = mine_over(engine, knowledge(), rooms=desk.rooms, log=desk.log, clock=desk.clock)
    app.register_blueprint(mine_blueprint(mine))
    return Page(app.test_client(), desk.clock, room, desk.rooms)


def answer_to(look: Json, clock: SetClock, *, right: bool) -> Json:
    """What a browser sends for a look."""
    face, solution = look["face"], look["solution"]
    choice, typed = _said(face, solution, right=right)
    return {
        "look": look["id"],
        "choice": choice,
        "typed": typed,
        "certainty": None,
        "took_ms": 9000,
        "answered_at": round(clock.now().timestamp() * 1000),
    }


def _said(face: Json, solution: Json, *, right: bool) -> tuple[list[str], list[str]]:
    if face["format"] in ("typed", "free_list"):
        terms = [one["text"] for one in solution["accepted"]][: face["pick"]]
        return [], terms if right else ["nothing known"]
    if right:
        return solution["key"], []
    if face["format"] in ("ordering", "matching"):
        return [*solution["key"][1:], solution["key"][0]], []
    wrong = [option["letter"] for option in solution["options"] if not option["is_key"]]
    return wrong[: face["pick"]], []


def _played(desk: Desk) -> str:
    service = reviews(desk)
    plan = plan_of(6)
    room = service.open_door(service.prepare(plan, host="owner", order="o"))
    owner = player_of(KEY)
    desk.rooms.handle(room.id, EnterSeat(player="ada", handle="Ada", key_hash="0" * 64, owner=owner))
    for number in range(1, plan.rounds + 1):
        room = desk.rooms.handle(room.id, OpenRound(round=number))
        desk.clock.move(15)
        choice, typed = said(room.rounds[-1].item, right=number not in MISSED)
        desk.rooms.handle(room.id, SubmitAnswer(player="ada", round=number, choice=choice, typed=typed))
        desk.rooms.handle(room.id, CloseRound(round=number, by_host=True))
        desk.rooms.handle(room.id, ShowRecord(round=number))
    return desk.rooms.handle(room.id, EndReview()).id
