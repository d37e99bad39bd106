"""What members of the crowd hear and say. Both servers send the same bytes, so one pair of ears fits both."""

import json
from collections import Counter
from dataclasses import dataclass, field
from typing import Any, Literal

from quizroom.measuring.frames import masked

SOCKET_IO = "/socket.io/?EIO=4&transport=websocket"
KINDS = {b'42["pub': "public", b'42["own': "own", b'42["tal': "tally", b'42["des': "desk"}


def said(message: dict[str, Any], number: int = 0) -> bytes:
    """A message as a Socket.IO event that asks for an acknowledgement (Socket.IO protocol, revision 5)."""
    return f"42{number}{json.dumps(['say', message], separators=(',', ':'))}".encode()


@dataclass(slots=True)
class Ears:
    """Counts what comes by kind, keeps when the last of each kind came, and one of each as it was.

    The desk is the member with the highest number; what it hears is never counted for players.
    """

    path: str
    desk: int
    first_words: dict[int, bytes] = field(default_factory=dict)
    """What each member says to take a seat."""
    count: Counter[str] = field(default_factory=Counter)
    last_at: dict[str, float] = field(default_factory=dict)
    sample: dict[str, bytes] = field(default_factory=dict)
    reply_at: dict[int, float] = field(default_factory=dict)
    desk_replies: list[dict[str, Any]] = field(default_factory=list)
    refusals: list[bytes] = field(default_factory=list)
    is_floor: bool = False

    def greeted(self, member: int) -> bytes | None:
        """The floor's members speak first; a Socket.IO server says first that the line is open."""
        words = self.first_words.get(member)
        return masked(b"J" + words) if self.is_floor and words is not None else None

    def heard(self, member: int, payload: bytes, at: float) -> bytes | None:
        """Count a message; say what the protocol wants to be said."""
        if member != self.desk and (kind := KINDS.get(payload[:7])):
            self.count[kind] += 1
            self.last_at[kind], self.sample[kind] = at, payload
            return None
        return self._answer(member, payload, at)

    def clear(self) -> None:
        """Begin to count anew."""
        self.count.clear()
        self.reply_at.clear()

    def _answer(self, member: int, payload: bytes, at: float) -> bytes | None:
        match payload[:2]:
            case b"2":
                return masked(b"3")
            case b"43":
                self._reply(member, payload, at)
            case b"40":
                words = self.first_words.get(member)
                if words is not None:
                    return masked(words)
                self.count["connected"] += 1
            case head if head[:1] == b"0":
                return masked(b"40")
        return None

    def _reply(self, member: int, payload: bytes, at: float) -> None:
        if member == self.desk:
            self.desk_replies.append(json.loads(payload[payload.index(b"[") :])[0])
            return
        self.count["reply"] += 1
        self.reply_at[member], self.sample["reply"] = at, payload
        if b'"result":"done"' not in payload:
            self.refusals.append(payload[:300])


Step = Literal["opening", "closing", "record"]
