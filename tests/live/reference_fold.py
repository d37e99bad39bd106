"""The log of a review read a second time, with nothing of the program: from the stored bytes to answers and
marks.
"""

import json
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import create_engine, text


@dataclass
class Reference:
    """What a log of items with one best answer adds up to."""

    keys: list[list[str]] = field(default_factory=list)
    handles: dict[str, str] = field(default_factory=dict)
    counted_from: dict[str, int] = field(default_factory=dict)
    opened: int = 0
    open_now: bool = False
    said: dict[tuple[str, int], list[str]] = field(default_factory=dict)
    """All letters that a player (by handle) chose in a round, in order."""

    def marks(self) -> dict[str, tuple[int, int]]:
        """Marks of each handle, out of how many: closed rounds, one mark for the key."""
        closed = range(1, self.opened + (0 if self.open_now else 1))
        return {
            self.handles[player]: (
                sum(self.said.get((self.handles[player], n), [""])[-1:] == self.keys[n - 1] for n in closed),
                sum(n >= first for n in closed),
            )
            for player, first in self.counted_from.items()
        }


def reference(bodies: Iterable[bytes]) -> Reference:
    """Fold stored events, oldest first."""
    folded = Reference()
    for body in bodies:
        stored = json.loads(body)
        _take(folded, stored["kind"], stored["event"])
    return folded


def _take(folded: Reference, kind: str, event: dict[str, Any]) -> None:
    match kind:
        case "ReviewPrepared":
            folded.keys = [item["key"] for item in event["items"]]
        case "SeatEntered":
            folded.handles[event["player"]] = event["handle"]
            folded.counted_from[event["player"]] = event["from_round"]
        case "RoundOpened":
            folded.opened, folded.open_now = event["round"], True
        case "RoundClosed":
            folded.open_now = False
        case "AnswerAccepted":
            where = folded.handles[event["player"]], event["round"]
            folded.said.setdefault(where, []).extend(event["choice"])
        case _:
            pass


def stored_bodies(store: str, room: str) -> list[bytes]:
    """The stored events of a room, by a plain query."""
    engine = create_engine(store)
    try:
        with engine.connect() as connection:
            query = text("SELECT body FROM events WHERE room = :room ORDER BY version")
            return [bytes(body) for body in connection.execute(query, {"room": room}).scalars()]
    finally:
        engine.dispose()
