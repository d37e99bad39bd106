"""The two servers that are measured: quizroom with a review, and the floor that repeats its bytes."""

import secrets
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Protocol

from quizroom.measuring.crowd import Crowd, Stalled
from quizroom.measuring.ears import SOCKET_IO, Ears, Step, said
from quizroom.measuring.frames import masked
from quizroom.measuring.processes import CannotMeasure, Running, started
from quizroom.rehearsal.entry import desk_cookie, desk_settings

HOST_STEPS = {"opening": "open_round", "closing": "close_round", "record": "show_record"}
READY = r"ready at http://\S+:(\d+)"
FLOOR_READY = r"floor listens on (\d+)"


@dataclass(slots=True)
class Bytes:
    """What quizroom sent, for the floor to send again."""

    reply_to_join: bytes = b""
    reply_to_answer: bytes = b""
    tally: bytes = b""
    public: dict[Step, bytes] = field(default_factory=dict)
    own: dict[Step, bytes] = field(default_factory=dict)


class Side(Protocol):
    """A server with its crowd, ready to be played."""

    server: Running
    crowd: Crowd
    ears: Ears

    def step(self, step: Step, number: int) -> None:
        """Let everybody be told of a step of the round."""

    def answer(self, number: int, letter: str) -> bytes:
        """The frame with which a member answers a round."""


def enter(member: int, door_code: str) -> bytes:
    """The words with which a player takes a seat."""
    # Letters for figures: some numbers look like rude words to the filter of handles.
    handle = "Player " + "".join("bcdhjrwyqz"[int(figure)] for figure in str(member))
    key = secrets.token_urlsafe(24)
    message = {"type": "enter_seat", "door_code": door_code, "handle": handle, "seat_key": key}
    return said({"id": f"e{member}", **message})


def submit(number: int, letter: str) -> bytes:
    """The words of an answer."""
    message = {"id": secrets.token_hex(16), "type": "submit_answer", "round": number, "choice": [letter]}
    return said(message, number)


@dataclass(slots=True)
class QuizroomSide:
    """The real server, with a desk of its own."""

    server: Running
    crowd: Crowd
    ears: Ears

    def host_cookie(self) -> str:
        """The cookie of a host, for the one link that the server has printed."""
        key = self.server.said.partition("/desk/enter/")[2].split()[0]
        return desk_cookie(f"http://127.0.0.1:{self.server.port}", key)

    def lay_out(self, size: int, rounds: int, cookie: str) -> None:
        """Prepare a review, open its door, and give every player the words to come in with."""
        address = f"http://127.0.0.1:{self.server.port}"
        courses = desk_settings(address, cookie)["courses"]
        course = max(courses, key=lambda each: (int(each["muscles"]), str(each["id"])))
        self.crowd.connect([self.ears.desk], cookie=cookie)
        self.crowd.until(lambda: self.ears.count["connected"] == 1, "the desk")
        desk = self.order(
            type="prepare_review",
            title="Bench",
            course=course["id"],
            families=["nerve"],
            rounds=rounds,
            timing="untimed",
            typed=False,
            seed=1,
        )["desk"]
        self.order(type="open_door", round=0)
        code = self.order(type="open_desk", room=desk["room"])["desk"]["public"]["door_code"]
        self.ears.first_words = {member: enter(member, code) for member in range(size)}

    def order(self, **message: Any) -> dict[str, Any]:
        """Say something at the desk and wait for the reply."""
        before = len(self.ears.desk_replies)
        self.crowd.say(self.ears.desk, masked(said({"id": secrets.token_hex(16), **message})))
        self.crowd.until(lambda: len(self.ears.desk_replies) > before, f"a reply to {message['type']}")
        reply = self.ears.desk_replies.pop()
        if reply["result"] != "done":
            raise Stalled(f"the server refused {message['type']}: {reply['text']}")
        return reply

    def step(self, step: Step, number: int) -> None:
        """Let the host do it."""
        message = {"id": secrets.token_hex(16), "type": HOST_STEPS[step], "round": number}
        self.crowd.say(self.ears.desk, masked(said(message)))

    def answer(self, number: int, letter: str) -> bytes:
        """As a browser says it."""
        return masked(submit(number, letter))


@dataclass(slots=True)
class FloorSide:
    """Plain websockets; `told` holds the bytes that quizroom sent."""

    server: Running
    crowd: Crowd
    ears: Ears
    told: Bytes

    def lay_out(self, size: int) -> None:
        """Tell it what to answer, and give every member the words to come in with."""
        self.crowd.connect([self.ears.desk])
        self.crowd.until(lambda: True, "the desk")
        ready = {b"R": self.told.reply_to_join, b"K": self.told.reply_to_answer, b"T": self.told.tally}
        for kind, payload in ready.items():
            self.crowd.say(self.ears.desk, masked(kind + payload))
        self.ears.first_words = {member: enter(member, "CDFHJ") for member in range(size)}

    def step(self, step: Step, number: int) -> None:  # noqa: ARG002 - quizroom's side needs it
        """Broadcast the same bytes; where every player gets a view of the own, send as many."""
        self.crowd.say(self.ears.desk, masked(b"B" + self.told.public[step]))
        if step in self.told.own:
            self.crowd.say(self.ears.desk, masked(b"O" + self.told.own[step]))

    def answer(self, number: int, letter: str) -> bytes:
        """The same bytes after a letter that says what they are."""
        return masked(b"A" + submit(number, letter))


@contextmanager
def quizroom_side(size: int, *, rounds: int, folder: Path, cores: set[int]) -> Iterator[QuizroomSide]:
    """A server of its own for one session, with a review whose door is open."""
    arguments = ("quizroom", "serve", "--port", "0", "--data", str(folder / "data"))
    settings = {"QUIZROOM_CAPACITY": str(max(size, 1)), "QUIZROOM_HOST": "127.0.0.1"}
    with started(arguments, cores=cores, ready=READY, folder=folder, settings=settings) as server:
        ears = Ears(path=SOCKET_IO, desk=size)
        side = QuizroomSide(server=server, crowd=Crowd(server.port, ears), ears=ears)
        try:
            side.lay_out(size, rounds, side.host_cookie())
            yield side
        finally:
            side.crowd.hang_up()


@contextmanager
def floor_side(
    size: int, told: Bytes, *, gather_ms: int, folder: Path, cores: set[int]
) -> Iterator[FloorSide]:
    """The floor for one session."""
    try:
        import websockets  # noqa: F401, PLC0415 - an optional package: the extra `bench`
    except ImportError as error:
        raise CannotMeasure("The floor needs websockets: pip install 'quizroom[bench]'") from error
    arguments = ("quizroom.measuring.floor", str(folder), str(gather_ms))
    with started(arguments, cores=cores, ready=FLOOR_READY, folder=folder, settings={}) as server:
        ears = Ears(path="/", desk=size, is_floor=True)
        side = FloorSide(server=server, crowd=Crowd(server.port, ears), ears=ears, told=told)
        try:
            side.lay_out(size)
            yield side
        finally:
            side.crowd.hang_up()
