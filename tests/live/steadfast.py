"""A room whose host and players go on whatever happens to the server, and remember what was acknowledged.

They do as the browser's outbox does: what has not been answered is said again, with the same id, on a new
line.
"""

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from tests.live.thin_line import LineGone, ThinLine

ROUNDS = 40
LOOKS_AGAIN_AFTER_S = 0.05
"""How long somebody waits who has found no server."""
AT_MOST_EVERY_S = 0.11
"""A connection has ten credits a second."""


@dataclass
class Answered:
    """What a player sent in one round, in order; `done` counts how many were acknowledged."""

    sent: list[str] = field(default_factory=list)
    done: int = 0
    refused: bool = False
    """Whether the last one came too late."""


@dataclass
class SteadfastRoom:
    """One room, its host and its players, each in a thread."""

    name: str
    port: Callable[[], int]
    cookie: str
    over: threading.Event = field(default_factory=threading.Event)
    turns: threading.Semaphore = field(default_factory=lambda: threading.Semaphore(0))
    """How often the host may still go on to the next round."""
    went_on_at: float = 0.0
    """When something was last acknowledged, by `time.monotonic`."""
    door: str = ""
    room: str = ""
    round: int = 0
    """The round that the host knows to be open; 0 if none is."""
    players: list["SteadfastPlayer"] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    desk: dict[str, Any] = field(default_factory=dict)
    line: ThinLine | None = None

    def lay_out(self, players: int) -> None:
        """Lay out the review, open the door, seat the players."""
        order = {
            "type": "prepare_review",
            "title": self.name,
            "course": "regional_gross_anatomy",
            "families": ["nerve"],
            "rounds": ROUNDS,
            "timing": "untimed",
            "typed": False,
            "standings": True,
            "seed": 5,
        }
        self.room = self.order("prepare", order)["desk"]["room"]
        self.order("door", {"type": "open_door", "round": 0})
        self.look()
        self.door = self.desk["public"]["door_code"]
        self.players = [SteadfastPlayer(self, f"{self.name} player {number}") for number in range(players)]

    def order(self, name: str, message: dict[str, Any]) -> dict[str, Any]:
        """The host orders until it is done."""
        message = {"id": f"{self.name} {name}", **message}
        while True:
            try:
                reply = self._host().ask(message)
            except LineGone:
                self._lose()
                continue
            if reply["result"] == "done":
                self.went_on_at = time.monotonic()
                return reply
            if reply["result"] == "refused":
                raise AssertionError(reply)
            time.sleep(0.02)

    def look(self) -> None:
        """The host looks at the desk."""
        self.desk = self.order("look", {"type": "show_view"})["desk"]

    def lead(self) -> None:
        """Open and close one round after the other, as `turns` come, until it is over."""
        try:
            for number in range(1, ROUNDS + 1):
                self.order(f"open {number}", {"type": "open_round", "round": number})
                self.round = number
                self.turns.acquire()
                if self.over.is_set():
                    break
                self.round = 0
                self.order(f"close {number}", {"type": "close_round", "round": number})
                self.order(f"show {number}", {"type": "show_record", "round": number})
        except AssertionError as refused:
            self.faults.append(f"host: {refused}")

    def goes_on_since(self) -> float:
        """When the last of the class came back to a seat, or something was last acknowledged, whichever was
        earlier.
        """
        return min(self.went_on_at, *(player.came_back_at for player in self.players))

    def end(self) -> None:
        """Nobody begins anything new."""
        self.over.set()
        self.turns.release()

    def leave(self) -> None:
        """Everybody hangs up."""
        for line in (self.line, *(player.line for player in self.players)):
            if line is not None:
                line.hang_up()

    def _lose(self) -> None:
        if self.line is not None:
            self.line.hang_up()
        self.line = None
        time.sleep(LOOKS_AGAIN_AFTER_S)

    def _host(self) -> ThinLine:
        if self.line is None:
            self.line = ThinLine(self.port(), self.cookie)
            if self.room:
                self.line.ask({"id": "desk", "type": "open_desk", "room": self.room})
        return self.line


@dataclass
class SteadfastPlayer:
    """A player who changes the own answer all the time."""

    room: SteadfastRoom
    name: str
    answers: dict[int, Answered] = field(default_factory=dict)
    came_back_at: float = 0.0
    went_on_at: float = 0.0
    """When an answer was last acknowledged."""
    line: ThinLine | None = None

    def play(self) -> None:
        """Answer until it is over."""
        waiting: dict[str, Any] | None = None
        while not self.room.over.is_set() or waiting is not None:
            try:
                line = self._seated()
                waiting = waiting or self._next()
                if waiting is not None and self._is_settled(waiting, line.ask(waiting)):
                    waiting = None
                time.sleep(AT_MOST_EVERY_S)
            except LineGone:
                self._lose()

    def _lose(self) -> None:
        if self.line is not None:
            self.line.hang_up()
        self.line = None
        time.sleep(LOOKS_AGAIN_AFTER_S)

    def _next(self) -> dict[str, Any] | None:
        number = self.room.round
        if not number or self.room.over.is_set():
            return None
        sent = self.answers.setdefault(number, Answered()).sent
        sent.append("ABC"[len(sent) % 3])
        identity = f"{self.name} {number} {len(sent)}"
        return {"id": identity, "type": "submit_answer", "round": number, "choice": [sent[-1]]}

    def _is_settled(self, message: dict[str, Any], reply: dict[str, Any]) -> bool:
        answered = self.answers[message["round"]]
        if reply["result"] == "done":
            answered.done = len(answered.sent)
            self.went_on_at = self.room.went_on_at = time.monotonic()
        elif reply["result"] == "refused" and reply["code"] not in ("too_late", "slow_down"):
            self.room.faults.append(f"{self.name}: {reply}")
        return bool(reply["result"] == "done" or reply["code"] == "too_late")

    def _seated(self) -> ThinLine:
        if self.line is not None:
            return self.line
        line = ThinLine(self.room.port())
        self.line = line
        seat = {"type": "enter_seat", "door_code": self.room.door, "handle": self.name, "seat_key": self.name}
        reply = line.ask({"id": "seat", **seat})
        if reply["result"] != "done":
            raise ConnectionError(reply["code"])
        self.came_back_at = time.monotonic()
        self._compare(reply["own"]["answer"])
        return line

    def _compare(self, shown: dict[str, Any] | None) -> None:
        """What the server shows after a return is what it had acknowledged, or what was on the way to it."""
        if shown is None or shown["round"] not in self.answers:
            return
        answered = self.answers[shown["round"]]
        fitting = answered.sent[answered.done - 1 : answered.done] + answered.sent[-1:]
        if "".join(shown["choice"]) not in fitting:
            self.room.faults.append(f"{self.name}: {answered} but shown {shown}")
