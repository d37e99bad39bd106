"""A player on a bad line, who does what the browser's page does: says again what was not answered, takes
the newest of the views, and asks for a view when a count shows that one was missed (`web/src/line`).
"""

import threading
import time
from collections.abc import Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from typing import Any

from tests.live.at_work import at_work
from tests.live.steadfast import Answered
from tests.live.thin_line import LineGone, ThinLine

PATIENCE_S = 1.5
"""The page waits for eight seconds; a shorter wait only means more repeats."""
ANSWERS_A_ROUND = 2


@dataclass
class Weathered:
    """One player, in a thread of their own."""

    name: str
    door: str
    port: int
    seen: dict[str, Any] = field(default_factory=dict)
    """The newest public view."""
    own: dict[str, Any] = field(default_factory=dict)
    """The newest of what this player alone is shown."""
    answers: dict[int, Answered] = field(default_factory=dict)
    faults: list[str] = field(default_factory=list)
    over: threading.Event = field(default_factory=threading.Event)
    repeats: int = 0
    lines: int = 0
    _missed: bool = False
    _line: ThinLine | None = None

    def play(self) -> None:
        """Answer each round twice, and look, until it is over."""
        while not self.over.is_set():
            try:
                self._once()
            except TimeoutError:
                self.repeats += 1
            except LineGone:
                self._lose()
        self._lose()

    def _once(self) -> None:
        line = self._seated()
        if self._missed:
            self._take_reply(line.ask({"id": "view", "type": "show_view"}, PATIENCE_S))
            self._missed = False
        waiting = self._waiting()
        if waiting is None:
            line.listen(0.1)
            return
        reply = line.ask(waiting, PATIENCE_S)
        answered = self.answers[waiting["round"]]
        if reply["result"] == "done":
            answered.done = len(answered.sent)
        elif reply["code"] in ("too_late", "not_answering"):
            answered.refused = True
        else:
            self.faults.append(f"{self.name}: {reply}")

    def _waiting(self) -> dict[str, Any] | None:
        """What is still to be said: an answer that was not acknowledged, or the next one."""
        for number, answered in self.answers.items():
            if answered.done < len(answered.sent) and not answered.refused:
                return self._message(number, answered)
        if self.seen.get("phase") != "answering":
            return None
        answered = self.answers.setdefault(self.seen["round"], Answered())
        if len(answered.sent) >= ANSWERS_A_ROUND or answered.refused:
            return None
        answered.sent.append("ABC"[len(answered.sent)])
        return self._message(self.seen["round"], answered)

    def _message(self, number: int, answered: Answered) -> dict[str, Any]:
        identity = f"{self.name} {number} {len(answered.sent)}"
        return {"id": identity, "type": "submit_answer", "round": number, "choice": answered.sent[-1:]}

    def _seated(self) -> ThinLine:
        if self._line is None:
            self.lines += 1
            line = ThinLine(self.port, hear=self._hear, open_within_s=PATIENCE_S)
            seat = {"type": "enter_seat", "door_code": self.door, "handle": self.name, "seat_key": self.name}
            try:
                reply = line.ask({"id": "seat", **seat}, PATIENCE_S)
            except LineGone:
                line.hang_up()
                raise
            if reply["result"] != "done":
                self.faults.append(f"{self.name}: {reply}")
            self._line = line
            self._take_reply(reply)
        return self._line

    def _hear(self, event: str, told: dict[str, Any]) -> None:
        if event == "public":
            self._take(told)
        elif event == "own":
            self._take_own(told)
        elif event == "tally":
            known = self.seen.get("phase"), self.seen.get("round")
            self._missed = self._missed or known != (told["phase"], told["round"])

    def _take_reply(self, reply: dict[str, Any]) -> None:
        self._take(reply["public"])
        self._take_own(reply["own"])

    def _take_own(self, own: dict[str, Any]) -> None:
        if own["version"] >= self.own.get("version", 0):
            self.own = own

    def _take(self, public: dict[str, Any]) -> None:
        if public["version"] >= self.seen.get("version", 0):
            self.seen = public

    def _lose(self) -> None:
        if self._line is not None:
            self._line.hang_up()
        self._line = None
        time.sleep(0.02)


def weathered(players: Sequence[Weathered]) -> AbstractContextManager[None]:
    """All of them play meanwhile."""

    def end() -> None:
        for player in players:
            player.over.set()

    return at_work([player.play for player in players], end)
