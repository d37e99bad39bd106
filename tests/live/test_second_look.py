"""A player alone with a real server: what was acknowledged is kept, days pass, and it returns."""

import json
import time
from http.client import HTTPConnection
from typing import Any
from urllib.parse import urlsplit

from tests.live.lesson import Lesson, gathered
from tests.live.voices import Voice
from tests.pages.alone_web import answer_to
from tests.service.fakes import SetClock
from tests.serving import Server, StartServer

KEY = "abcdefghijklmn27"
MISSED = (1, 3)
Json = dict[str, Any]


def ask(server: Server, method: str, path: str, body: Json | None = None) -> Json:
    line = HTTPConnection(urlsplit(server.address).netloc, timeout=20)
    headers = {"Authorization": f"Bearer {KEY}", "Content-Type": "application/json"}
    line.request(method, f"/mine/api/{path}", None if body is None else json.dumps(body), headers)
    answer = line.getresponse()
    read: Json = json.loads(answer.read())
    line.close()
    assert answer.status == 200, read
    return read


def missed_some(server: Server) -> Lesson:
    """A review of three rounds in which ada, who keeps a history, is wrong in two."""
    lesson = gathered(server, players=(), rounds=3)
    lesson.seats["ada"] = Voice(server)
    lesson.seats["ada"].done(
        "enter_seat", door_code=lesson.door, handle="Ada", seat_key="secret key of ada", player_key=KEY
    )
    for number in (1, 2, 3):
        lesson.open_next()
        lesson.answer("ada", wrong=number in MISSED)
        lesson.step("close_round")
        lesson.step("show_record")
    return lesson


def test_what_was_missed_returns_after_a_kill_and_three_days(
    server: Server, start_server: StartServer
) -> None:
    lesson = missed_some(server)
    now = SetClock()
    looks = ask(server, "GET", f"second-look/{lesson.room}")["looks"]
    assert len(looks) == len(MISSED)
    ask(server, "PUT", "settings", far_off(days=90))
    sent = {"answers": [answer_to(look, now, right=place > 0) for place, look in enumerate(looks)]}
    came = ask(server, "POST", "looks", sent)
    assert [one["verdict"] for one in came["outcomes"]] == ["wrong", "right"]
    server.kill()
    lesson.hang_up()
    again = start_server(server.data, port=server.port)
    assert ask(again, "POST", "looks", sent) == came
    again.kill()
    later = start_server(server.data, port=server.port, settings={"QUIZROOM_DAYS_AHEAD": "3"})
    due = ask(later, "GET", "today")["looks"]
    assert [look["missed"]["stem"] for look in due] == [looks[0]["missed"]["stem"]]


def test_a_review_that_goes_on_tells_nothing_of_its_open_round(server: Server) -> None:
    lesson = gathered(server, players=(), rounds=2)
    lesson.seats["ada"] = Voice(server)
    lesson.seats["ada"].done(
        "enter_seat", door_code=lesson.door, handle="Ada", seat_key="secret key of ada", player_key=KEY
    )
    lesson.open_next()
    lesson.answer("ada", wrong=True)
    assert ask(server, "GET", f"second-look/{lesson.room}")["looks"] == []
    lesson.step("close_round")
    assert ask(server, "GET", f"second-look/{lesson.room}")["looks"] == []
    lesson.step("show_record")
    assert len(ask(server, "GET", f"second-look/{lesson.room}")["looks"]) == 1
    lesson.hang_up()


def far_off(*, days: int) -> Json:
    day = time.strftime("%Y-%m-%d", time.gmtime(time.time() + days * 24 * 3600))
    return {"course": "", "exam_date": day, "minutes_a_day": 15, "time_zone": "UTC"}
