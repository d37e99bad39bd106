"""A client that does not read, by a real socket to a real server: nobody waits for it, what waits for it is
bounded, and it may come back.
"""

import json
import socket
from collections.abc import Iterator
from contextlib import ExitStack
from typing import Any

import pytest
import websocket

from quizroom.realtime.framed import MOST_WAITING
from tests.live.lesson import PLAYERS, Lesson, gathered
from tests.live.thin_line import LineGone
from tests.live.voices import Voice, host_voice
from tests.serving import Server

LITTLE_IS_KEPT = [(socket.SOL_SOCKET, socket.SO_RCVBUF, 8192), (socket.IPPROTO_TCP, socket.TCP_MAXSEG, 536)]
"""A small window and small segments, as of a poor line: with those of this machine's own lines the system
would keep megabytes.
"""
KEPT_BY_THE_SYSTEM = 1 << 20
"""Bytes that it may hold all the same, at most; measured: less than 400 000."""
ASKED = 30
"""How often the sleeper asks for the view; so much may be said at once."""
HOSTS = 3


class Sleeper:
    """A seat whose browser says things and reads nothing."""

    def __init__(self, lesson: Lesson, player: str) -> None:
        """Come back to the seat of a player, and read no more from then on."""
        address = f"ws://127.0.0.1:{lesson.server.port}/socket.io/?EIO=4&transport=websocket"
        self.line: Any = websocket.create_connection(address, timeout=10, sockopt=LITTLE_IS_KEPT)
        self.said = 0
        self.line.recv()
        self.line.send("40")
        self.line.recv()
        self.say("resume_seat", door_code=lesson.door, seat_key=f"secret key of {player}")
        assert '"done"' in self.line.recv()

    def say(self, kind: str, **fields: Any) -> None:
        """Say something and do not wait for the reply. Raises one of `LineGone`."""
        self.said += 1
        message = {"id": f"asleep {self.said}", "type": kind, **fields}
        self.line.send(f'42{self.said}["say",{json.dumps(message)}]')


@pytest.fixture
def lesson(server: Server) -> Iterator[Lesson]:
    """A class that has seen some records, which make its views long."""
    lesson = gathered(server, PLAYERS, course="upper_limb_regional")
    for _ in range(2):
        lesson.open_next()
        for player in PLAYERS:
            lesson.answer(player)
        lesson.step("close_round")
        lesson.step("show_record")
    yield lesson
    lesson.hang_up()


@pytest.fixture
def hosts(lesson: Lesson) -> Iterator[list[Voice]]:
    """The host's browsers: together they may say more in a moment than one."""
    with ExitStack() as leaving:
        made = [host_voice(lesson.server, lesson.cookie) for _ in range(HOSTS)]
        for host in made:
            leaving.callback(host.hang_up)
            host.done("open_desk", room=lesson.room)
        yield made


def tell_all(lesson: Lesson, host: Voice, change: str) -> int:
    """The host changes something, and all who read are told before anything else happens. How many bytes."""
    host.done(change, round=2)
    told = ""
    for reader in readers(lesson):
        heard = reader.last("public", lambda public: public["result"]["struck"] == (change == "strike_item"))
        told = json.dumps(heard)
        reader.heard.clear()
    return len(told)


def readers(lesson: Lesson) -> list[Voice]:
    assert lesson.wall is not None
    return [lesson.wall, *lesson.seats.values()]


def fall_behind(lesson: Lesson, hosts: list[Voice], sleeper: Sleeper) -> int:
    """Let the class go on until the sleeper is let go; how many bytes it had been told by then."""
    told = ASKED * len(json.dumps(lesson.seats["ada"].done("show_view")))
    for _ in range(ASKED):
        sleeper.say("show_view")
    while told <= MOST_WAITING + KEPT_BY_THE_SYSTEM:
        for host in hosts:
            told += tell_all(lesson, host, "strike_item") + tell_all(lesson, host, "restore_item")
            try:
                sleeper.say("probe_time")
            except LineGone:
                return told
    raise AssertionError(f"it was told {told} bytes, read none, and is still there")


def test_who_does_not_read_keeps_nobody_waiting_is_let_go_and_comes_back(
    lesson: Lesson, hosts: list[Voice]
) -> None:
    lesson.seats.pop("cem").hang_up()
    for reader in readers(lesson):
        reader.last("public", lambda public: public["round"] == 2 and public["records"])
        reader.heard.clear()
    sleeper = Sleeper(lesson, "cem")
    told = fall_behind(lesson, hosts, sleeper)
    assert told > MOST_WAITING  # it was let go for nothing else
    sleeper.line.shutdown()
    lesson.seats["cem"] = Voice(lesson.server)
    back = lesson.seats["cem"].done("resume_seat", door_code=lesson.door, seat_key="secret key of cem")
    other = lesson.seats["ada"].done("show_view")
    assert {**back["public"], "now": 0} == {**other["public"], "now": 0}
    assert back["own"]["answer"]["choice"] == lesson.said["cem", 2]["choice"]
    lesson.open_next()
    for player in PLAYERS:
        lesson.answer(player)
    lesson.step("close_round")
    for reader in readers(lesson):
        reader.last("public", lambda public: (public["round"], public["phase"]) == (3, "closed"))
    assert {len(each.answers) for each in lesson.logged().rounds} == {len(PLAYERS)}
