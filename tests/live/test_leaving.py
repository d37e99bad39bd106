"""A server that is told to end (SIGTERM) lets go in order, and its log tells of no person."""

import json
import signal
import urllib.error
import urllib.request
from contextlib import closing
from datetime import UTC, datetime
from http.client import HTTPConnection
from pathlib import Path

import pytest

from quizroom.storage.accounts import SqlHeartbeat
from quizroom.storage.database import open_database
from tests import serving
from tests.live.lesson import Lesson, gathered, marks_by_handle
from tests.serving import Server, StartServer


def test_it_ends_cleanly_and_the_review_goes_on_elsewhere(server: Server, start_server: StartServer) -> None:
    lesson = gathered(server)
    lesson.open_next()
    for player in ("ada", "bo"):
        lesson.answer(player)
    told_at = datetime.now(UTC)
    assert end(server) == 0
    assert noted_at(server) >= told_at
    assert "Ended as asked" in server.log.read_text(encoding="utf-8")
    lesson.restart(start_server)
    assert lesson.desk()["public"]["phase"] == "answering"
    assert lesson.desk()["public"]["answered"] == 2
    assert marks_by_handle(lesson.logged()).keys() == {"Ada", "Bo", "Cem"}
    lesson.hang_up()


def noted_at(server: Server) -> datetime:
    """Until when the server is known to have been alive."""
    engine = open_database(server.database_url)
    at = SqlHeartbeat(engine).last_beat()
    engine.dispose()
    assert at is not None
    return at


def end(server: Server) -> int:
    """Tell it to end, as a service manager does; its exit code."""
    server.process.send_signal(signal.SIGTERM)
    return server.process.wait(timeout=10)


def test_new_people_find_no_server_once_it_leaves(server: Server) -> None:
    assert fetched(server, "/readyz") == {"status": "ready", "faults": [], "remarks": []}
    end(server)
    with pytest.raises(urllib.error.URLError):
        fetched(server, "/readyz")


def test_whoever_still_has_a_line_hears_that_the_server_leaves(server: Server) -> None:
    with closing(HTTPConnection("127.0.0.1", server.port, timeout=5)) as kept:
        assert readiness(kept) == (200, [])
        server.process.send_signal(signal.SIGTERM)
        told = readiness(kept)
        while told[0] == 200:
            told = readiness(kept)
        assert told == (503, ["This server is about to end."])
    assert server.process.wait(timeout=10) == 0


def readiness(kept: HTTPConnection) -> tuple[int, list[str]]:
    """Ask by a connection that is kept, as a proxy does."""
    kept.request("GET", "/readyz")
    reply = kept.getresponse()
    return reply.status, json.loads(reply.read())["faults"]


def fetched(server: Server, path: str) -> object:
    return json.loads(got(server, path))


def got(server: Server, path: str) -> bytes:
    with urllib.request.urlopen(server.address + path, timeout=5) as response:  # noqa: S310 - our own server
        body: bytes = response.read()
        return body


def test_a_log_for_machines_has_steps_and_no_people(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("QUIZROOM_LOG_FORMAT", "json")
    monkeypatch.setenv("QUIZROOM_METRICS", "true")
    server = serving.start(tmp_path / "data")
    lesson = played(server)
    metrics = got(server, "/metrics").decode()
    end(server)
    said = server.log.read_text(encoding="utf-8")
    steps = [json.loads(line) for line in said.splitlines() if not line.startswith(ON_STANDARD_OUTPUT)]
    assert [step["step"] for step in steps if step["message"] == "review step"] == [
        "ReviewPrepared",
        "DoorOpened",
        "RoundOpened",
        "RoundClosed",
        "RecordShown",
        "ReviewEnded",
    ]
    assert 'quizroom_replies_total{result="done",type="submit_answer"} 3.0' in metrics
    assert "quizroom_commit_seconds_count" in metrics
    for secret in (*lesson.seats, *(name.title() for name in lesson.seats), "secret key", "127.0.0.1:"):
        assert secret not in metrics
        assert not [line for line in steps if secret in str(line)]


ON_STANDARD_OUTPUT = (
    "quizroom is ready",
    "Players join",
    "The host's desk",
    "         ",
    "Data lies in",
    "Ended as asked",
)
"""What the command says to whoever starts it; the log is all the rest."""


def played(server: Server) -> Lesson:
    lesson = gathered(server)
    lesson.open_next()
    for player in ("ada", "bo", "cem"):
        lesson.answer(player)
    for step in ("close_round", "show_record", "end_review"):
        lesson.step(step)
    lesson.hang_up()
    return lesson
