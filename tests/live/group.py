"""Members of a study group: programs that play by themselves, over any line."""

import threading
import time
from dataclasses import dataclass, field
from typing import Any

from quizroom.protocol.codec import read_message
from quizroom.rehearsal.line import Line, Reply, new_message_id
from quizroom.room.state import Room
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from tests.live.voices import logged_room
from tests.serving import Server

LOOK_EVERY_S = 0.1
PATIENCE_S = 120.0


@dataclass
class Member:
    """One player and what the pages last showed. Whatever is said is said again until it is answered."""

    address: str
    name: str
    seen: dict[str, Any] = field(default_factory=dict)
    acknowledged: dict[int, list[str]] = field(default_factory=dict)
    """The choice of each round that the server has confirmed."""

    def __post_init__(self) -> None:
        """Have a line, not yet used."""
        self.line = Line(self.address, hear=self._hear)

    def say(self, kind: str, **fields: Any) -> Reply:
        """Say a message until it is done or refused."""
        return self.line.say(read_message({"id": new_message_id(), "type": kind, **fields}))

    def open_group(self, **plan: Any) -> str:
        """Open a room; its door code."""
        wanted = {"course": "arm_and_forearm", "rounds": 3, "timing": "untimed", "typed": False}
        reply = self.say("open_group", handle=self.name, seat_key=self.key, **(wanted | plan))
        assert reply["result"] == "done", reply
        return self._seated(reply)

    def come_in(self, door_code: str) -> str:
        """Take a seat."""
        reply = self.say("enter_seat", door_code=door_code, handle=self.name, seat_key=self.key)
        assert reply["result"] == "done", reply
        return self._seated(reply)

    @property
    def key(self) -> str:
        """The seat's secret."""
        return f"a long enough secret of {self.name}"

    @property
    def phase(self) -> str:
        """Where the review is, as last seen."""
        phase: str = self.seen["public"]["phase"]
        return phase

    @property
    def round(self) -> int:
        """The current round, as last seen."""
        number: int = self.seen["public"]["round"]
        return number

    def look(self) -> None:
        """Ask for the views anew."""
        self.say("show_view")

    def ready(self) -> None:
        """Be ready for what comes next."""
        self.say("say_ready", round=self.round)

    def answer(self) -> None:
        """Choose the first letters; remember what was confirmed."""
        item = self.seen["public"]["item"]
        choice = [option["letter"] for option in item["options"]][: item["pick"]]
        reply = self.say("submit_answer", round=item["round"], choice=choice)
        if reply["result"] == "done":
            self.acknowledged[item["round"]] = choice

    def play(self, *, until_round: int = 1000) -> None:
        """Do what a diligent player does, until the end or until this round has opened."""
        give_up_at = time.monotonic() + PATIENCE_S
        while time.monotonic() < give_up_at:
            self.look()
            if self.phase == "finished" or self.round >= until_round:
                return
            self._do_next()
            time.sleep(LOOK_EVERY_S)
        raise AssertionError(f"{self.name} is still in {self.phase} of round {self.round}")

    def _do_next(self) -> None:
        own = self.seen["own"]
        if self.phase == "answering" and self.round not in self.acknowledged:
            self.answer()
        elif self.phase in ("gathering", "explained") and not own["group"]["ready"]:
            self.ready()

    def _seated(self, reply: Reply) -> str:
        door_code: str = reply["public"]["door_code"]
        self.line.greeting = read_message(
            {"id": "back", "type": "resume_seat", "door_code": door_code, "seat_key": self.key}
        )
        return door_code

    def _hear(self, event: str, data: Any) -> None:
        if event in ("public", "own"):
            known = self.seen.get(event)
            if known is None or known["version"] <= data["version"]:
                self.seen[event] = data


def all_play(*members: Member, until_round: int = 1000) -> None:
    """Everybody plays at once, each on a thread of their own."""
    failures: list[BaseException] = []

    def play(member: Member) -> None:
        try:
            member.play(until_round=until_round)
        except BaseException as failure:  # noqa: BLE001 - the test must fail, not only the thread
            failures.append(failure)

    threads = [threading.Thread(target=play, args=(member,)) for member in members]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []


def room_behind(server: Server, door_code: str) -> Room:
    """The room as a reader of the log alone finds it."""
    engine = open_database(server.database_url)
    try:
        room = SqlEventLog(engine).room_of_door(door_code)
    finally:
        engine.dispose()
    assert room is not None
    return logged_room(server, room)


def wait_for_phase(member: Member, phase: str, *, wait_s: float = 30.0) -> None:
    """Look until the review is there."""
    end = time.monotonic() + wait_s
    while time.monotonic() < end:
        member.look()
        if member.phase == phase:
            return
        time.sleep(LOOK_EVERY_S)
    raise AssertionError(f"not {phase} in {wait_s} s, but {member.phase}")
