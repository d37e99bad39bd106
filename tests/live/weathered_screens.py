"""A wall and a desk on a bad line, which only look: as their pages do, they take the newest of what is
shown, and ask for a view when a count shows that one was missed.
"""

import threading
import time
from collections.abc import Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from typing import Any

from tests.live.at_work import at_work
from tests.live.thin_line import LineGone, ThinLine
from tests.live.weathered import PATIENCE_S


@dataclass
class WeatheredScreen:
    """One screen, in a thread of its own."""

    port: int
    place: dict[str, Any]
    """What is said first on every line."""
    cookie: str = ""
    public: dict[str, Any] = field(default_factory=dict)
    """The newest public view."""
    desk: dict[str, Any] = field(default_factory=dict)
    """The newest view of a desk."""
    over: threading.Event = field(default_factory=threading.Event)
    lines: int = 0
    _missed: bool = False
    _line: ThinLine | None = None

    def look(self) -> None:
        """Look until it is over."""
        while not self.over.is_set():
            try:
                self._once()
            except TimeoutError:
                pass  # it is asked again
            except LineGone:
                self._lose()
        self._lose()

    def _once(self) -> None:
        line = self._placed()
        if self._missed:
            self._take(line.ask({"id": "view", "type": "show_view"}, PATIENCE_S))
            self._missed = False
        line.listen(0.1)

    def _placed(self) -> ThinLine:
        if self._line is None:
            self.lines += 1
            line = ThinLine(self.port, self.cookie, hear=self._hear, open_within_s=PATIENCE_S)
            try:
                self._take(line.ask({"id": "place", **self.place}, PATIENCE_S))
            except LineGone:
                line.hang_up()
                raise
            self._line = line
        return self._line

    def _hear(self, event: str, told: dict[str, Any]) -> None:
        if event in ("public", "desk"):
            self._take({event: told})
        elif event == "tally":
            known = self.public.get("phase"), self.public.get("round")
            self._missed = self._missed or known != (told["phase"], told["round"])

    def _take(self, shown: dict[str, Any]) -> None:
        if desk := shown.get("desk"):
            self.desk = newer(self.desk, desk)
            self.public = newer(self.public, desk["public"])
        if public := shown.get("public"):
            self.public = newer(self.public, public)

    def _lose(self) -> None:
        if self._line is not None:
            self._line.hang_up()
        self._line = None
        time.sleep(0.02)


def looked_at(screens: Sequence[WeatheredScreen]) -> AbstractContextManager[None]:
    """Screens that are on meanwhile."""

    def end() -> None:
        for screen in screens:
            screen.over.set()

    return at_work([screen.look for screen in screens], end)


def newer(known: dict[str, Any], shown: dict[str, Any]) -> dict[str, Any]:
    """Which of two views of the same counts."""
    return shown if shown["version"] >= known.get("version", 0) else known
