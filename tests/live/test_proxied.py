"""The deployment of the profile `scale` as processes: proxy with TLS, workers, PostgreSQL, Redis."""

import http.client
import ssl
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, replace
from email.message import Message
from functools import partial
from pathlib import Path

import pytest
import socketio

from quizroom.doctor.address import way_findings
from quizroom.settings import Settings
from tests.live.lesson import Lesson, gathered
from tests.live.proxied import left_over, nginx, proxy, site
from tests.live.voices import Voice
from tests.services import PostgreSql, Redis
from tests.serving import Server, StartServer


@dataclass
class Deployment:
    """Two workers, and the first of them as it is seen through the proxy."""

    workers: list[Server]
    seen: Server
    trusted: Path


@pytest.fixture
def deployment(
    start_server: StartServer,
    postgresql: PostgreSql,
    redis: Redis,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> Iterator[Deployment]:
    program = nginx()
    if program is None:
        pytest.skip("no nginx here: apt install nginx-light")
    shared = {"QUIZROOM_DATABASE_URL": postgresql.new_database(), "QUIZROOM_FANOUT_URL": redis.url}
    workers = [start_server(tmp_path / f"worker-{number}", settings=shared) for number in (1, 2)]
    with proxy(program, [worker.port for worker in workers]) as (address, trusted):
        trust(monkeypatch, trusted)
        yield Deployment(workers, replace(workers[0], address=address), trusted)


def trust(monkeypatch: pytest.MonkeyPatch, trusted: Path) -> None:
    """Let the libraries of clients trust a certificate."""
    for variable in ("SSL_CERT_FILE", "WEBSOCKET_CLIENT_CA_BUNDLE", "REQUESTS_CA_BUNDLE"):
        monkeypatch.setenv(variable, str(trusted))


@pytest.fixture
def lesson(deployment: Deployment) -> Iterator[Lesson]:
    """A class that comes by way of the proxy, its first round open."""
    lesson = gathered(deployment.seen, families=["nerve"], timing="untimed")
    lesson.open_next()
    yield lesson
    lesson.hang_up()


def fetched(deployment: Deployment, path: str) -> tuple[int, Message]:
    """Status and headers of a page by way of the proxy."""
    host = deployment.seen.address.removeprefix("https://")
    trust = ssl.create_default_context(cafile=str(deployment.trusted))
    with closing(http.client.HTTPSConnection(host, context=trust, timeout=10)) as connection:
        connection.request("GET", path)
        answer = connection.getresponse()
        answer.read()
        return answer.status, answer.headers


def test_a_class_plays_by_way_of_the_proxy_and_outlives_a_worker(
    deployment: Deployment, lesson: Lesson
) -> None:
    lesson.answer("ada")
    deployment.workers[1].kill()
    for player in ("bo", "cem"):
        lesson.seats[player] = Voice(deployment.seen)
        key = f"secret key of {player}"
        lesson.seats[player].done("resume_seat", door_code=lesson.door, seat_key=key)
        lesson.answer(player)
    lesson.host = Voice(deployment.seen, Cookie=f"quizroom_host={lesson.cookie}")
    lesson.host.done("open_desk", room=lesson.room)
    lesson.step("close_round")
    assert lesson.desk()["public"]["answered"] == 3
    assert {row["marks"] for row in lesson.desk()["roster"]} == {1.0}


def test_what_is_the_operators_is_not_shown_outside(deployment: Deployment) -> None:
    assert fetched(deployment, "/metrics")[0] == 404
    assert fetched(deployment, "/readyz")[0] == 200
    status, headers = fetched(deployment, "/")
    assert status == 200
    assert "default-src 'self'" in headers["Content-Security-Policy"]
    assert headers["Server"] == "nginx"


def test_long_polling_stays_with_one_worker(deployment: Deployment, lesson: Lesson) -> None:
    client = socketio.Client(reconnection=False)
    client.connect(f"{deployment.seen.address}?room={lesson.door}", transports=["polling"], wait_timeout=30)
    try:
        for number in range(10):
            said = {"id": f"p{number}", "type": "watch_wall", "door_code": lesson.door}
            assert client.call("say", said, timeout=10)["result"] == "done"
    finally:
        client.disconnect()


def test_a_page_of_another_site_is_refused_behind_the_proxy_too(
    deployment: Deployment, lesson: Lesson
) -> None:
    stranger = socketio.Client(reconnection=False)
    headers = {"Origin": "https://elsewhere.example", "Cookie": f"quizroom_host={lesson.cookie}"}
    with pytest.raises(socketio.exceptions.ConnectionError):
        stranger.connect(deployment.seen.address, headers=headers, transports=["websocket"], wait_timeout=30)
    own = Voice(deployment.seen)  # the library names the address that it connects to as its origin
    assert own.is_connected()
    own.hang_up()


def test_an_examination_finds_the_proxy_well_and_each_spoilt_one_at_fault(
    deployment: Deployment, monkeypatch: pytest.MonkeyPatch
) -> None:
    here = deployment.workers[0].address
    found = list(way_findings(Settings(), deployment.seen.address, here))
    assert [(one.kind, one.about) for one in found] == [
        ("well", "Address"),
        ("well", "Lines"),
        ("well", "Lines"),
    ]
    ports = [worker.port for worker in deployment.workers]
    for line, said in SPOILT.items():
        with proxy(nginx() or "", ports, partial(without, line)) as (address, trusted):
            trust(monkeypatch, trusted)
            bad = [one for one in way_findings(Settings(), address, here) if one.kind != "well"]
        assert [said in one.said for one in bad] == [True], (line, bad)


SPOILT = {
    "proxy_set_header Upgrade $http_upgrade;": "No websocket gets through",
    "proxy_set_header Host $http_host;": "A websocket of a browser is refused",
    "hash $arg_room consistent;": "Requests of one player reach several workers",
}
"""Lines that a proxy may lack, and what is found then."""


def without(line: str, configuration: str) -> str:
    """A configuration that lacks a line."""
    assert line in configuration
    return configuration.replace(line, "")


def test_nothing_of_the_composed_network_is_left_in_the_tested_configuration(tmp_path: Path) -> None:
    assert left_over(site([1, 2], 3, tmp_path)) == []
