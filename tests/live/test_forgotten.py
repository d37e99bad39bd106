"""A player deletes everything while a review goes on: no table, file, log or later backup holds a trace."""

import json
from collections.abc import Iterator
from http.client import HTTPConnection
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from sqlalchemy import select

from quizroom.service.players import player_of
from quizroom.storage.database import open_database
from quizroom.storage.tables import metadata
from tests.cli.test_commands import run
from tests.live.lesson import Lesson, gathered
from tests.live.voices import Voice
from tests.serving import Server

KEY = "abcdefghijklmn27"
HANDLE = "Quartz Lunate"
SEAT_KEY = "secret key of nobody else at all"


@pytest.fixture
def lesson(server: Server) -> Iterator[Lesson]:
    """A class of which one player keeps a history."""
    lesson = gathered(server)
    yield lesson
    lesson.hang_up()


def ask(server: Server, method: str, path: str, body: Any = None) -> tuple[int, Any]:
    """One request to the player's own addresses."""
    connection = HTTPConnection(urlsplit(server.address).netloc, timeout=20)
    headers = {"Authorization": f"Bearer {KEY}", "Content-Type": "application/json"}
    try:
        connection.request(method, f"/mine/api/{path}", None if body is None else json.dumps(body), headers)
        answer = connection.getresponse()
        read = answer.read()
    finally:
        connection.close()
    return answer.status, json.loads(read)


def history_made(lesson: Lesson) -> Voice:
    """The player sits down with the key, answers a round wrongly, practises, and looks at a missed item."""
    seat = Voice(lesson.server)
    seat.done("enter_seat", door_code=lesson.door, handle=HANDLE, seat_key=SEAT_KEY, player_key=KEY)
    lesson.seats["quartz"] = seat
    lesson.open_next()
    lesson.answer("quartz", wrong=True)
    for player in ("ada", "bo", "cem"):
        lesson.answer(player)
    lesson.step("close_round")
    lesson.step("show_record")
    status, today = ask(lesson.server, "GET", "today")
    assert (status, today["missed_reviews"][0]["missed"]) == (200, 1)
    settings = today["settings"] | {"minutes_a_day": 7, "time_zone": "Europe/Paris"}
    assert ask(lesson.server, "PUT", "settings", settings)[0] == 200
    status, second = ask(lesson.server, "GET", f"second-look/{lesson.room}")
    assert (status, len(second["looks"])) == (200, 1)
    return seat


def traces(data: Path, log: Path) -> list[str]:
    """What of the player is still found in any file."""
    kept = b"".join(path.read_bytes() for path in data.rglob("*") if path.is_file()) + log.read_bytes()
    marks = {"handle": HANDLE, "key": KEY, "hash": player_of(KEY), "seat key": SEAT_KEY}
    return [name for name, mark in marks.items() if mark.encode() in kept]


def restored_backup(server: Server, folder: Path) -> Path:
    """A data folder into which a backup of now was put back."""
    backup, fresh = folder / "now.gz", folder / "fresh"
    assert run("backup", str(backup), "--data", str(server.data)).exit_code == 0
    assert run("restore", str(backup), "--data", str(fresh)).exit_code == 0
    return fresh


def rows_about(server: Server) -> list[str]:
    """Tables in which something refers to the player."""
    engine = open_database(server.database_url)
    try:
        with engine.connect() as connection:
            return [
                str(table.name)
                for table in metadata.sorted_tables
                if any(player_of(KEY) in map(str, row) for row in connection.execute(select(table)))
            ]
    finally:
        engine.dispose()


def test_after_deleting_nothing_is_left_and_the_class_goes_on(lesson: Lesson, tmp_path: Path) -> None:
    seat = history_made(lesson)
    server = lesson.server
    assert traces(server.data, server.log) == ["handle", "hash"]
    assert {"players", "player_seats", "looks", "plan_settings"} <= set(rows_about(server))
    assert ask(server, "DELETE", "me") == (200, ask(server, "GET", "me")[1])
    assert traces(server.data, server.log) == []
    assert rows_about(server) == []
    assert seat.done("show_view")["own"]["handle"] == "Former player 1"
    assert "Former player 1" in {row["handle"] for row in lesson.desk()["roster"]}
    assert traces(restored_backup(server, tmp_path), server.log) == []
    lesson.open_next()
    lesson.answer("ada")
    assert lesson.step("close_round")["result"] == "done"


def test_deleting_while_a_round_is_open_empties_the_tables_at_once(lesson: Lesson) -> None:
    history_made(lesson)
    lesson.open_next()
    assert ask(lesson.server, "DELETE", "me")[0] == 200
    assert rows_about(lesson.server) == []
    assert lesson.answer("ada")["result"] == "done"


def test_what_is_handed_out_is_what_was_played(lesson: Lesson) -> None:
    history_made(lesson)
    status, history = ask(lesson.server, "GET", "export.json")
    assert status == 200
    assert [len(review["rounds"]) for review in history["reviews"]] == [1]
    assert history["reviews"][0]["rounds"][0]["verdict"] in ("wrong", "part")
    assert history["kept"]["plan_settings"][0]["minutes_a_day"] == 7
    assert len(history["kept"]["looks"]) == 1
